/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.steps;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.WholeLines;
import org.faultwright.analysis.faults.KeptArrows;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.faults.ShowingText;
import org.faultwright.analysis.paths.RunningOn;
import org.faultwright.analysis.rules.Reference;
import org.faultwright.analysis.rules.References;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Writes what somebody does to the drawn steps of one graph as a change of its text. Comments stay; nothing is laid out anew. */
public final class StepEdits {
    private final Document document;
    private final StepGraph graph;

    /** @param document a text without reading problems @param graph the procedure itself or one of its own routines */
    public StepEdits(Document document, StepGraph graph) {
        this.document = document;
        this.graph = graph;
    }

    /**
     * Lets a result lead to another step.
     *
     * @param outcome   the index of the result in its step
     * @param otherwise whether the arrow is meant that is taken once the bound of the result is used up
     * @param to        the name of a step or exit
     */
    public StepChange turn(Step from, int outcome, boolean otherwise, String to) {
        String target = ClosingStep.written(to);
        Optional<Name> arrow = arrow(from, outcome, otherwise);
        Optional<String> refused = refusal(from, outcome, otherwise);
        if (refused.isPresent()) {
            return new StepChange.Refused(refused.get());
        }
        if (graph.writtenSteps().stream().noneMatch(step -> step.name().text().equals(target)) && graph.exits().stream()
                .noneMatch(exit -> exit.text().equals(target)) && graph.leadsToFaults().stream().noneMatch(fault -> fault.name().text().equals(target))) {
            return new StepChange.Refused("\"" + to + "\" is no step of " + called() + "; a result leads to a step of the same one.");
        }
        if (ClosingStep.written(arrow.get().text()).equals(target)) {
            return new StepChange.Refused(result(from, outcome) + " leads to \"" + target + "\" already.");
        }
        Map<String, List<String>> arrows = ArrowTargets.of(graph);
        arrows.get(from.name().text()).set(ArrowTargets.place(outcome, otherwise), target);
        return new StepChange.Offered(new Fix("Let " + result(from, outcome) + " lead to \"" + target + "\"",
                List.of(leading(from, outcome, otherwise, target))),
                graph.name().text(), arrows);
    }

    /** Puts a step between a result and the step that it leads to; a conclusion ends the way there. */
    public StepChange insert(Step from, int outcome, boolean otherwise, NewStep step) {
        Optional<String> refused = refusal(from, outcome, otherwise).or(() -> taken(step.name()));
        if (refused.isPresent()) {
            return new StepChange.Refused(refused.get());
        }
        Name arrow = arrow(from, outcome, otherwise).orElseThrow();
        String target = ClosingStep.written(arrow.text());
        Map<String, List<String>> arrows = ArrowTargets.of(graph);
        arrows.get(from.name().text()).set(ArrowTargets.place(outcome, otherwise), step.name());
        arrows.put(step.name(), step.leads(target));
        return new StepChange.Offered(kept(new Fix("Insert \"" + step.name() + "\"", List.of(leading(from, outcome, otherwise, step.name()),
                behind(from, step, target)))), graph.name().text(), arrows);
    }

    /** Writes a step behind another one. Nothing leads to it yet; it leads on as the first result of the other does. */
    public StepChange add(Step behind, NewStep step) {
        Optional<String> refused = closing(behind).or(() -> taken(step.name()));
        if (refused.isPresent()) {
            return new StepChange.Refused(refused.get());
        }
        String target = behind.outcomes().stream().flatMap(outcome -> outcome.target().stream()).findFirst().map(Name::text)
                .map(ClosingStep::written).orElse(behind.name().text());
        Map<String, List<String>> arrows = ArrowTargets.of(graph);
        arrows.put(step.name(), step.leads(target));
        return new StepChange.Offered(kept(new Fix("Add \"" + step.name() + "\"", List.of(behind(behind, step, target)))), graph.name().text(), arrows);
    }

    /** Takes a step out. What led to it leads to the step behind it, where there is only one; faults and examples say no more of it. */
    public StepChange takeOut(Step step) {
        String name = step.name().text();
        Set<String> follow = followers(step);
        Map<String, List<String>> arrows = ArrowTargets.of(graph);
        List<String> own = arrows.remove(name);
        boolean isLedTo = arrows.values().stream().anyMatch(targets -> targets.contains(name));
        Optional<String> refused = closing(step).or(() -> isLedTo ? refusal(step, follow) : Optional.empty()).or(() -> namedElsewhere(step));
        if (refused.isPresent() || own == null) {
            return new StepChange.Refused(refused.orElse("There are two steps named \"" + name + "\"; name one of them otherwise first."));
        }
        String follower = follow.stream().findFirst().orElse("");
        arrows.values().forEach(targets -> targets.replaceAll(target -> target.equals(name) ? follower : target));
        List<Fix.Edit> edits = new ArrayList<>();
        leadingTo(name).stream().filter(at -> at.length() > 0).forEach(at -> edits.add(new Fix.Edit(at, follower)));
        RunningOn.arrows(graph).stream().filter(arrow -> arrow.below() == step).forEach(arrow -> edits.add(KeptArrows.written(arrow, follower)));
        begin(step, follower).ifPresent(edits::add);
        if (document instanceof Procedure procedure && graph == document) {
            procedure.faults().forEach(fault -> edits.addAll(ShowingText.without(fault.written(), showing -> isOf(showing, name))));
            procedure.examples().forEach(example -> edits.addAll(ShowingText.without(example, showing -> isOf(showing, name))));
        }
        SourceRange gone = WholeLines.of(step.at());
        edits.add(new Fix.Edit(gone, Remarks.keptFrom(gone.text(), indent(step))));
        return new StepChange.Offered(kept(new Fix("Take out \"" + name + "\"", List.copyOf(edits))), graph.name().text(), arrows);
    }

    private Fix kept(Fix fix) {
        List<Fix.Edit> edits = new ArrayList<>(KeptArrows.kept(document, fix).edits());
        // what was asked for stays the last of the list
        Fix.Edit own = fix.edits().get(fix.edits().size() - 1);
        if (edits.stream().noneMatch(edit -> edit != own && edit.at().offset() == own.at().offset())) {
            edits.remove(own);
            edits.add(own);
        }
        return new Fix(fix.title(), List.copyOf(edits));
    }

    // ---- why not

    private Optional<String> refusal(Step from, int outcome, boolean otherwise) {
        if (closing(from).isPresent()) {
            return closing(from);
        }
        Optional<Name> arrow = arrow(from, outcome, otherwise);
        if (arrow.isEmpty()) {
            return Optional.of("\"" + from.name() + "\" has no such result that leads on; choose another one.");
        }
        boolean shared = !from.outcomes().get(outcome).isUnderstood() && targets(from).filter(other -> other.at().offset() == arrow.get().at().offset()).count() > 1;
        return shared ? Optional.of("Several results of \"" + from.name() + "\" share that arrow; give each its own line in the text first.")
                : Optional.empty();
    }

    private Optional<String> closing(Step step) {
        return ClosingStep.is(step) ? Optional.of("That step is put in by \"closes by\" and stands nowhere in the text; change the routine that closes.")
                : step.isUnderstood() ? Optional.of("That conclusion follows from fault \"" + step.name() + "\" and stands nowhere else in the text: let the results that lead to it lead elsewhere, or change the fault.")
                : Optional.empty();
    }

    private Optional<String> refusal(Step step, Set<String> follow) {
        String name = step.name().text();
        if (step instanceof Step.Conclude) {
            return Optional.of("\"" + name + "\" is a conclusion: let the results that lead to it lead elsewhere first, then take it out.");
        }
        if (follow.size() != 1) {
            return Optional.of("\"" + name + "\" leads to " + (follow.isEmpty() ? "no step" : follow.size() + " (" + String.join(", ", follow) + ")")
                    + ": let its results lead to one step, then take it out.");
        }
        if (follow.contains(name)) {
            return Optional.of("\"" + name + "\" leads to itself: let the results that lead to it lead elsewhere first, then take it out.");
        }
        boolean begins = graph.first().filter(first -> first == step).isPresent();
        return begins && graph.exits().stream().anyMatch(exit -> follow.contains(exit.text()))
                ? Optional.of("\"" + name + "\" is where " + called() + " begins, and behind it nothing is left to do.") : Optional.empty();
    }

    /** As a remedy, in a formula, as the end of an example: what is said there would say something else. */
    private Optional<String> namedElsewhere(Step step) {
        Set<Integer> handled = new HashSet<>();
        leadingTo(step.name().text()).forEach(at -> handled.add(at.offset()));
        step.outcomes().forEach(outcome -> outcome.target().ifPresent(own -> handled.add(own.at().offset())));
        graph.begin().ifPresent(begin -> handled.add(begin.at().offset()));
        if (document instanceof Procedure procedure) {
            Stream.concat(procedure.faults().stream().flatMap(fault -> fault.shows().stream()),
                    procedure.examples().stream().flatMap(example -> example.shows().stream()))
                    .forEach(showing -> handled.add(showing.step().at().offset()));
        }
        return References.of(new Subject(document, Optional.empty())).stream()
                .filter(one -> one.declared().filter(declared -> declared.at().equals(step.name().at())).isPresent())
                .map(Reference::name).filter(one -> !handled.contains(one.at().offset())).filter(one -> one.at().offset() < step.at().offset()
                        || one.at().offset() >= step.at().end()).findFirst()
                .map(one -> "Line " + one.at().line() + " names \"" + step.name() + "\": change that first, then take the step out.");
    }

    private Optional<String> taken(String name) {
        Stream<String> names = Stream.of(graph.writtenSteps().stream().map(step -> step.name().text()), graph.exits().stream().map(Name::text),
                document.scope().routines().stream().map(one -> one.name().text()), document.scope().conditions().stream().map(one -> one.name().text()),
                document.scope().notes().stream().map(one -> one.name().text()),
                document instanceof Procedure procedure ? procedure.faults().stream().map(one -> one.name().text()) : Stream.<String>empty())
                .flatMap(one -> one);
        return names.anyMatch(name::equals) ? Optional.of("\"" + name + "\" is the name of something else; choose another one.") : Optional.empty();
    }

    private String called() {
        return (graph instanceof Procedure ? "the procedure" : "routine \"" + graph.name() + "\"");
    }

    private static String result(Step from, int outcome) {
        return "\"" + from.outcomes().get(outcome).key() + "\" of \"" + from.name() + "\"";
    }

    // ---- the text

    private static Optional<Name> arrow(Step from, int outcome, boolean otherwise) {
        if (outcome < 0 || outcome >= from.outcomes().size()) {
            return Optional.empty();
        }
        Outcome one = from.outcomes().get(outcome);
        return otherwise ? one.repeat().map(Outcome.Repeat::otherwise) : one.target();
    }

    /** An arrow that the text says once for all steps gets a line of its own, where the order of the results stays. */
    private Fix.Edit leading(Step from, int outcome, boolean otherwise, String target) {
        Outcome one = from.outcomes().get(outcome);
        Optional<Outcome> first = from.outcomes().stream().filter(written -> !written.isUnderstood()).findFirst();
        if (!one.isUnderstood()) {
            return new Fix.Edit(arrow(from, outcome, otherwise).orElseThrow().at(), target);
        }
        Optional<RunningOn.Arrow> below = RunningOn.arrows(graph).stream().filter(arrow -> arrow.outcome() == one).findFirst();
        if (below.isPresent()) {
            return KeptArrows.written(below.get(), target);
        }
        String line = ResultWords.arrow(one, target);
        return outcome == 0 && first.isPresent() ? new Fix.Edit(new SourceRange(from.at().source(), first.get().at().offset(), 0), line.strip() + "\n    ")
                : new Fix.Edit(one.at(), line);
    }

    private static Stream<Name> targets(Step step) {
        return step.outcomes().stream().flatMap(outcome -> Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream()));
    }

    private static Set<String> followers(Step step) {
        return targets(step).map(Name::text).map(ClosingStep::written).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** The places that name the step as where a result of another step leads; each once. */
    private List<SourceRange> leadingTo(String name) {
        Map<Integer, SourceRange> places = new LinkedHashMap<>();
        graph.writtenSteps().stream().filter(step -> !step.name().text().equals(name)).flatMap(StepEdits::targets)
                .filter(target -> ClosingStep.written(target.text()).equals(name)).forEach(target -> places.put(target.at().offset(), target.at()));
        return List.copyOf(places.values());
    }

    /** Where nothing says where to begin it is the first step of the text. */
    private Optional<Fix.Edit> begin(Step step, String follower) {
        if (graph.first().filter(first -> first == step).isEmpty()) {
            return Optional.empty();
        }
        if (graph.begin().isPresent()) {
            return Optional.of(new Fix.Edit(graph.begin().get().at(), follower));
        }
        List<Step> written = graph.writtenSteps();
        boolean goesOnThere = written.size() > 1 && written.get(1).name().text().equals(follower);
        if (goesOnThere || follower.isEmpty()) {
            return Optional.empty();
        }
        Step next = written.get(1);
        return Optional.of(new Fix.Edit(new SourceRange(next.at().source(), next.at().offset(), 0), "begin at " + follower + "\n\n" + indent(next)));
    }

    private static boolean isOf(Showing showing, String step) {
        return showing.step().text().equals(step);
    }

    private Fix.Edit behind(Step step, NewStep fresh, String target) {
        String indent = indent(step);
        return new Fix.Edit(new SourceRange(step.at().source(), endOfLine(step.at()), 0), "\n" + indent + String.join("\n" + indent, fresh.lines(target)));
    }

    /** Behind a remark on the last line of a step, which belongs to it; right behind the step where more stands there. */
    private static int endOfLine(SourceRange step) {
        String text = step.source().content();
        int end = text.indexOf('\n', step.end());
        int line = end < 0 ? text.length() : end;
        String rest = text.substring(step.end(), line).strip();
        int at = rest.isEmpty() || rest.startsWith("//") ? line : step.end();
        return at > step.end() && text.charAt(at - 1) == '\r' ? at - 1 : at;
    }

    private static String indent(Step step) {
        return WholeLines.indent(step.at());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.faults.DraftSteps;
import org.faultwright.analysis.faults.KeptArrows;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/**
 * Writes a draft: steps are placed with the steps that their results lead to, a second time under another
 * name where they lead elsewhere. What is declared stays where it stands; what is new comes at the end.
 */
final class DraftWriter {
    /** @param targets one for each result, in the order of the step's outcomes */
    private record DraftedStep(Step step, String name, List<String> targets) {
    }

    private final Procedure procedure;
    private final DraftSteps steps;
    private final List<DraftedStep> placed = new ArrayList<>();

    DraftWriter(Procedure procedure, DraftSteps steps) {
        this.procedure = procedure;
        this.steps = steps;
    }

    /** The name under which the step leads to these steps. */
    String place(Step step, List<String> targets) {
        Optional<DraftedStep> known = placed.stream().filter(one -> one.step() == step && one.targets().equals(targets)).findFirst();
        if (known.isPresent()) {
            return known.get().name();
        }
        String own = step.name().text();
        boolean first = placed.stream().noneMatch(one -> one.step() == step);
        boolean itself = steps.isCreated(own) || steps.step(own).filter(declared -> declared == step).isPresent();
        String name = first && itself ? own : steps.free(own);
        DraftedStep fresh = new DraftedStep(step, name, List.copyOf(targets));
        placed.add(fresh);
        if (!name.equals(own)) {
            steps.create(step.renamed(new Name(name, step.name().at()), step.outcomes()));
        }
        return name;
    }

    /** The names under which a step has been placed. */
    List<String> namesOf(Step step) {
        return placed.stream().filter(one -> one.step() == step).map(DraftedStep::name).toList();
    }

    /** The whole text. */
    String text(String begin) {
        List<Fix.Edit> edits = new ArrayList<>();
        StringBuilder added = new StringBuilder();
        procedure.begin().ifPresentOrElse(name -> edits.add(new Fix.Edit(name.at(), begin)),
                () -> added.append("\nbegin at ").append(begin).append('\n'));
        for (DraftedStep one : inReadingOrder(begin)) {
            if (one.step().isUnderstood()) {
                continue;
            }
            if (isDeclared(one)) {
                edits.add(new Fix.Edit(one.step().at(), declared(one)));
            } else {
                added.append('\n').append(declaredSomewhere(one) ? declared(one) : created(one)).append('\n');
            }
        }
        procedure.faults().forEach(fault -> edits.addAll(fault(fault)));
        String content = procedure.source().content();
        String changed = edits.isEmpty() ? content : KeptArrows.kept(procedure, new Fix("", edits)).applied();
        return changed.stripTrailing() + "\n" + added;
    }

    /** As the steps follow one another from the beginning, conclusions last. */
    private List<DraftedStep> inReadingOrder(String begin) {
        Map<String, DraftedStep> byName = new LinkedHashMap<>();
        placed.forEach(one -> byName.put(one.name(), one));
        Set<DraftedStep> order = new LinkedHashSet<>();
        List<String> open = new ArrayList<>(List.of(begin));
        for (int i = 0; i < open.size(); i++) {
            DraftedStep next = byName.get(open.get(i));
            if (next != null && order.add(next)) {
                open.addAll(next.targets());
            }
        }
        order.addAll(placed);
        return Stream.concat(order.stream().filter(one -> !(one.step() instanceof Step.Conclude)),
                order.stream().filter(one -> one.step() instanceof Step.Conclude)).toList();
    }

    private boolean declaredSomewhere(DraftedStep one) {
        return procedure.steps().stream().anyMatch(step -> step.at().equals(one.step().at())
                && step.name().text().equals(one.step().name().text()));
    }

    private boolean isDeclared(DraftedStep one) {
        return declaredSomewhere(one) && one.name().equals(one.step().name().text());
    }

    /** The step as it stands, under the name given, with its arrows. */
    private String declared(DraftedStep one) {
        Step written = procedure.step(one.step().name()).orElseThrow();
        StringBuilder text = new StringBuilder(written.at().text());
        int start = written.at().offset();
        if (written.outcomes().isEmpty()) {
            int brace = text.lastIndexOf("}");
            String before = text.substring(0, brace).stripTrailing();
            text.replace(0, brace, before + "\n" + arrows(one));
        } else {
            // from the end; what goes without saying is written before the brace that closes the step, wherever it stands among the outcomes
            List<Integer> fromTheEnd = IntStream.range(0, written.outcomes().size()).boxed()
                    .sorted(Comparator.<Integer>comparingInt(i -> target(written.outcomes().get(i)).offset()).thenComparing(i -> i).reversed()).toList();
            for (int i : fromTheEnd) {
                Outcome outcome = written.outcomes().get(i);
                SourceRange target = target(outcome);
                // how often an arrow may be taken was said of where it led before
                int end = outcome.repeat().map(repeat -> repeat.at().end()).orElse(target.end());
                text.replace(target.offset() - start, end - start, outcome.isUnderstood() ? ResultWords.arrow(outcome, one.targets().get(i)) : one.targets().get(i));
            }
        }
        if (written instanceof Step.Perform perform) {
            perform.namesake().ifPresent(routine -> text.insert(routine.at().offset() - start, " by " + routine.text()));
        }
        SourceRange name = written.name().at();
        return text.replace(name.offset() - start, name.end() - start, one.name()).toString();
    }

    private static SourceRange target(Outcome outcome) {
        return outcome.target().map(Name::at).orElse(outcome.at());
    }

    private static String arrows(DraftedStep one) {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < one.targets().size(); i++) {
            Outcome outcome = one.step().outcomes().get(i);
            String result = outcome.head() instanceof Outcome.AnythingElse ? DraftSteps.ELSE
                    : outcome.key().equals(Step.DONE) ? "then" : ResultWords.written(outcome.key());
            lines.append("    ").append(result).append(" -> ").append(one.targets().get(i)).append('\n');
        }
        return lines.toString();
    }

    private static String created(DraftedStep one) {
        StringBuilder text = new StringBuilder(one.step().keyword()).append(' ').append(one.name()).append(' ')
                .append(Quotation.of(one.step().title()));
        if (one.step() instanceof Step.Perform perform) {
            perform.routine().ifPresent(routine -> text.append(" by ").append(routine));
        }
        text.append(" {\n");
        if (one.step().frame().confirms().isPresent()) {
            text.append("    confirms complaint\n");
        }
        if (one.step().frame().verifies().isPresent()) {
            text.append("    verifies repair\n");
        }
        if (!one.step().frame().setUps().isEmpty()) {
            text.append("    unit ").append(String.join(", ", one.step().frame().setUps().stream().map(Name::text).toList())).append('\n');
        }
        settings("needs", one.step().frame().writtenNeeds(), text);
        settings("sets", one.step().frame().sets(), text);
        if (!one.step().frame().notes().isEmpty()) {
            text.append("    notes ").append(String.join(", ", one.step().frame().notes().stream().map(Name::text).toList()))
                    .append('\n');
        }
        one.step().frame().takes().ifPresent(time -> text.append("    takes ").append(time.value().spelling()).append('\n'));
        if (one.step() instanceof Step.Conclude conclude) {
            conclusion(conclude, text);
        }
        return text.append(arrows(one)).append('}').toString();
    }

    private static void settings(String word, List<Setting> settings, StringBuilder text) {
        if (!settings.isEmpty()) {
            text.append("    ").append(word).append(' ').append(String.join(", ",
                    settings.stream().map(s -> s.condition() + " " + s.value()).toList())).append('\n');
        }
    }

    private static void conclusion(Step.Conclude conclude, StringBuilder text) {
        if (!conclude.finds().isEmpty()) {
            text.append("    finds ").append(String.join(", ", conclude.finds().stream().map(Name::text).toList())).append('\n');
        }
        if (conclude.findsNothing().isPresent()) {
            text.append("    finds nothing\n");
        }
        conclude.refersTo().ifPresent(to -> text.append("    refers to ").append(Quotation.of(to.value())).append('\n'));
        conclude.report().ifPresent(report -> text.append("    report ").append(Quotation.of(report.value())).append('\n'));
    }

    /** Copies of a step show for a fault what the step does, and copies of its remedy repair it too. */
    private List<Fix.Edit> fault(Fault fault) {
        Map<Integer, Fix.Edit> edits = new LinkedHashMap<>();
        for (Showing showing : fault.shows()) {
            String result = showing.at().text().substring(showing.step().at().end() - showing.at().offset());
            copies(showing.step()).forEach(copy -> insert(showing.at().end(), ", " + copy + result, showing.at(), edits));
        }
        for (Name remedy : fault.remedies()) {
            copies(remedy).forEach(copy -> insert(remedy.at().end(), ", " + copy, remedy.at(), edits));
        }
        return List.copyOf(edits.values());
    }

    /** By the name of each step that is written a second time, the step it repeats. */
    Map<String, String> copies() {
        Map<String, String> copies = new LinkedHashMap<>();
        placed.forEach(one -> copies.put(one.name(), one.step().name().text()));
        return copies;
    }

    private List<String> copies(Name step) {
        return placed.stream().filter(one -> one.step().name().text().equals(step.text()) && !one.name().equals(step.text()))
                .map(DraftedStep::name).toList();
    }

    private static void insert(int offset, String text, SourceRange near, Map<Integer, Fix.Edit> edits) {
        edits.merge(offset, new Fix.Edit(new SourceRange(near.source(), offset, 0), text),
                (one, other) -> new Fix.Edit(one.at(), one.replacement() + other.replacement()));
    }
}

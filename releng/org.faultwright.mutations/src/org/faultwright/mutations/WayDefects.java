/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.faultwright.mutations.Consequences.OF_NAMES;
import static org.faultwright.mutations.Consequences.OF_STATES;
import static org.faultwright.mutations.Consequences.OF_WALKS;
import static org.faultwright.mutations.Consequences.OF_WAYS;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Ways that lead astray, codes and results left out, loops. */
final class WayDefects {
    private static final Set<String> ASTRAY = Consequences.all(OF_WALKS, OF_STATES, OF_WAYS,
            Set.of("reading-not-taken", "division-by-zero-possible"));

    private WayDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                outcomes("a way to a step that is not there", Set.of("unknown-name"), (step, outcome, graph) ->
                        Optional.of(outcome.target().get().text() + "X")),
                Kind.of("a result without a way", Set.of("unreadable-text", "empty-outcomes"), specimen -> specimen.ownSteps().stream()
                        .flatMap(step -> step.outcomes().stream().filter(outcome -> outcome.target().isPresent() && outcome.repeat().isEmpty()
                                && outcome.proves().isEmpty()).map(outcome -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.between(outcome.at().source(),
                                        outcome.head().at().end(), outcome.at().end())))))).besides(more()).besides(Set.of("outcomes-incomplete",
                                        "code-unknown", "codes-not-handled", "duplicate-outcome", "outcome-impossible", "doubtful-unhandled")),
                Kind.of("a step that nothing leads to", Set.of("unreachable-step"), specimen -> specimen.procedure().writtenSteps().stream().skip(1)
                        .filter(step -> step instanceof Step.Check).map(step -> Seed.in(step, SpecimenEdits.kept(specimen, SpecimenEdits.insertBefore(step.at(),
                                "check Forgotten \"Forgotten?\" { yes -> " + step.name() + " no -> " + step.name() + " }\n"))))).besides(more()).besides(Set.of("missing-time")),
                outcomes("a way back to the step itself", Set.of("unbounded-loop", "path-without-end"),
                        (step, outcome, graph) -> outcome.repeat().isPresent() ? Optional.empty() : Optional.of(step.name().text())),
                outcomes("a way back to an earlier step", Set.of("unbounded-loop", "path-without-end"), WayDefects::earlier),
                equalWhere(WayDefects::doesNothingThere, outcomes("a way to the next but one step", withoutAdvice(ASTRAY), (step, outcome, graph) -> graph.step(outcome.target().get())
                        .flatMap(next -> next.outcomes().stream().flatMap(after -> after.target().stream()).map(name -> ClosingStep.written(name.text()))
                                .filter(name -> !name.equals(step.name().text()) && !name.equals(ClosingStep.written(next.name().text()))).findFirst()))),
                outcomes("a way to the wrong conclusion", withoutAdvice(ASTRAY), WayDefects::otherConclusion),
                Kind.of("two results exchanged", withoutAdvice(ASTRAY), specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(step -> step.outcomes().size() > 1).flatMap(step -> exchanged(step).stream())).besides(more()),
                Kind.of("a bound taken off a loop", Set.of("unbounded-loop", "path-without-end"), specimen -> specimen.steps().stream()
                        .flatMap(step -> step.outcomes().stream().flatMap(outcome -> outcome.repeat().stream())
                                .map(repeat -> Seed.in(step, SpecimenEdits.delete(repeat.at()))))).besides(more()),
                Kind.of("a loop in which nothing is done", Set.of("loop-changes-nothing", "unbounded-loop"), specimen ->
                        specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Check && step.outcomes().size() > 1)
                                .flatMap(step -> step.outcomes().stream().limit(1).flatMap(outcome -> outcome.target().stream())
                                        .map(target -> Seed.in(step, SpecimenEdits.replace(target.at(), step.name().text()))))).besides(more()),
                Kind.of("a code left out of a step", Set.of("codes-not-handled", "example-fails", "fault-misses-conclusion",
                        "fault-signature-outcome-unknown", "example-names-unknown-outcome", "unreachable-step", "outcomes-incomplete"),
                        specimen -> coded(specimen).map(coded -> Seed.in(coded.step(), SpecimenEdits.delete(coded.outcome().at()))
                                .equalFor(leadsItsOwnWay(coded) ? Optional.empty() : Optional.of("anything else leads the same way")))).besides(more()),
                Kind.of("a code that the table does not have", Set.of("code-unknown"), specimen -> coded(specimen)
                        .map(coded -> Seed.in(coded.step(), SpecimenEdits.replace(coded.outcome().head().at(), "77 blinks")))).besides(more())
                        .besides(Set.of("codes-not-handled")),
                Kind.of("a code taken out of the table", Set.of("code-unknown"), specimen -> specimen.procedure().own().indicators()
                        .stream().filter(indicator -> isObserved(indicator.name(), specimen))
                        .flatMap(indicator -> indicator.codes().stream().filter(code -> isHandled(indicator.name(), code.pattern().text(), specimen))
                                .map(code -> Seed.in(indicator, SpecimenEdits.delete(code.at()))))).besides(more()),
                Kind.of("a code twice in the table", Set.of("duplicate-outcome"), specimen -> specimen.procedure().own().indicators()
                        .stream().flatMap(indicator -> indicator.codes().stream().limit(1)
                                .map(code -> Seed.in(indicator, SpecimenEdits.insertAfter(code.at(), " " + code.at().text()))))),
                Kind.of("a result twice in a step", Set.of("duplicate-outcome", "overlapping-bands"), specimen -> specimen.ownSteps().stream()
                        .flatMap(step -> step.outcomes().stream().limit(1)
                                .map(outcome -> Seed.in(step, SpecimenEdits.insertAfter(outcome.at(), " " + outcome.at().text()))))).besides(more())
                        .besides(Set.of("outcome-impossible")),
                Kind.of("what no step names leads nowhere", Set.of("outcomes-incomplete", "codes-not-handled"), specimen -> specimen.procedure().elsewhere().stream()
                        .map(name -> Seed.at(name.at(), SpecimenEdits.delete(SpecimenEdits.withKeywords(name.at(), "otherwise"))))).besides(more()),
                // where a text says "otherwise" it leads on there, and what no longer comes to its end is found
                Kind.of("an exit of a routine not handled", Set.of("outcomes-incomplete", "unreachable-step", "fault-misses-conclusion", "example-fails", "empty-outcomes"), specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Perform && step.outcomes().size() > 1)
                        .flatMap(step -> step.outcomes().stream().map(outcome -> Seed.in(step, SpecimenEdits.delete(outcome.at())))))
                        .besides(more()),
                Kind.of("a result that a step cannot have", Set.of("outcome-impossible"), specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Perform).flatMap(step -> step.outcomes().stream().filter(outcome -> !outcome.isUnderstood()).limit(1)
                                .map(outcome -> Seed.in(step, SpecimenEdits.insertAfter(outcome.at(), " elsewhere -> " + ClosingStep.written(outcome.target().get().text()))))))
                        .besides(more()),
                Kind.of("a step whose results are all taken out", Set.of("empty-outcomes"), specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(step -> step.outcomes().size() == 1).map(step -> Seed.in(step, SpecimenEdits.delete(step.outcomes().get(0).at()))))
                        .besides(more()),
                Kind.of("every result to the same step", Set.of("unused-reading", "fault-misses-conclusion", "example-fails", "left-open",
                        "need-not-established", "unreachable-step"), specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(step -> step instanceof Step.Check && step.outcomes().size() == 2)
                        .flatMap(step -> levelled(step).stream())).besides(more()),
                Kind.of("a routine that performs itself", Set.of("routine-recursion"), specimen -> specimen.procedure().own().routines().stream()
                        .flatMap(routine -> routine.steps().stream().filter(Step.Perform.class::isInstance).map(Step.Perform.class::cast)
                                .flatMap(perform -> perform.routine().stream())
                                .map(name -> Seed.in(routine, SpecimenEdits.replace(name.at(), routine.name().text()))))).besides(more())
                        .besides(Set.of("outcome-impossible", "outcomes-incomplete", "unused-declaration")),
                Kind.of("an exit that nothing leads to", Set.of("unused-exit"), specimen -> specimen.procedure().own().routines().stream()
                        .map(routine -> Seed.in(routine, SpecimenEdits.insertBefore(routine.exits().get(0).at(), "neverTaken, "))))
                        .besides(Set.of("outcomes-incomplete", "outcome-already-known", "outcome-untried", "unreachable-outcome", "outcome-no-fault-explains")),
                Kind.of("begins at a later step", withoutAdvice(ASTRAY), specimen -> specimen.procedure().first().stream()
                        .flatMap(first -> specimen.procedure().writtenSteps().stream().skip(1).filter(step -> !(step instanceof Step.Conclude))
                                .limit(4).skip(1).map(step -> specimen.procedure().begin().map(begin -> Seed.at(begin.at(), SpecimenEdits.replace(begin.at(), step.name().text())))
                                        .orElseGet(() -> Seed.at(first.at(), SpecimenEdits.insertBefore(first.at(), "begin at " + step.name() + "\n\n"))))))
                        .besides(more()),
                Kind.of("a conclusion taken out", Set.of("unknown-name"), specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(Step.Conclude.class::isInstance).map(step -> Seed.in(step, SpecimenEdits.delete(step.at())))).besides(more()));
    }

    private interface Astray {
        Optional<String> target(Step step, Outcome outcome, StepGraph graph);
    }

    private record Coded(Step step, Outcome outcome) {
    }

    private static Set<String> more() {
        return Consequences.all(ASTRAY, OF_NAMES);
    }

    /** The findings that weigh: that another order would be quicker does not show a wrong way. */
    private static Set<String> withoutAdvice(Set<String> rules) {
        Set<String> weighing = Consequences.all(rules);
        weighing.removeAll(Set.of("better-order", "outcome-already-known", "step-tells-nothing", "already-set"));
        return weighing;
    }

    private static Kind outcomes(String title, Set<String> found, Astray astray) {
        return Kind.of(title, found, specimen -> specimen.graphs().stream().filter(Procedure.class::isInstance)
                .flatMap(graph -> graph.writtenSteps().stream().flatMap(step -> step.outcomes().stream()
                        .filter(outcome -> outcome.target().isPresent()).flatMap(outcome -> astray.target(step, outcome, graph).stream()
                                .map(ClosingStep::written).filter(name -> !name.equals(ClosingStep.written(outcome.target().get().text())))
                                .map(name -> Seed.in(step, SpecimenEdits.replace(outcome.target().get().at(), name))))))).besides(more());
    }

    private static Kind equalWhere(BiFunction<Seed, Specimen, Optional<String>> reason, Kind kind) {
        return new Kind(kind.title(), kind.found(), kind.besides(), kind.isDangerous(), specimen -> kind.seeds().apply(specimen)
                .map(seed -> seed.equalFor(reason.apply(seed, specimen))));
    }

    /** The step passed over asks nothing, repairs nothing, and sets only what is so already on that way. */
    private static Optional<String> doesNothingThere(Seed seed, Specimen specimen) {
        Optional<Step> passed = specimen.procedure().writtenSteps().stream()
                .filter(step -> step.name().text().equals(seed.edits().get(0).at().text())).findFirst();
        boolean idle = passed.map(step -> onlySets(step, specimen)).orElse(false) && specimen.later().bringsNothingNew(specimen.changed(seed));
        return idle ? Optional.of("what is passed over is done already on that way") : Optional.empty();
    }

    private static boolean onlySets(Step step, Specimen specimen) {
        boolean plain = step.outcomes().size() == 1 && step.frame().verifies().isEmpty() && step.frame().confirms().isEmpty()
                && step.frame().notes().isEmpty() && specimen.procedure().faults().stream().flatMap(fault -> fault.remedies().stream())
                        .noneMatch(remedy -> remedy.text().equals(step.name().text()));
        return plain && (step instanceof Step.Do task && task.erases().isEmpty() && task.repairs().isEmpty()
                || step instanceof Step.Perform perform && perform.routine().flatMap(specimen.procedure().scope()::routine)
                        .map(routine -> routine.steps().stream().allMatch(inner -> onlySets(inner, specimen))).orElse(false));
    }

    /** A step that leads to this one, directly or through others. */
    private static Optional<String> earlier(Step step, Outcome outcome, StepGraph graph) {
        Optional<Step> before = Optional.of(step);
        for (int back = 0; back < 2 && before.isPresent(); back++) {
            Step here = before.get();
            before = graph.steps().stream().filter(one -> one.outcomes().stream().flatMap(way -> way.target().stream())
                    .anyMatch(target -> target.text().equals(here.name().text()))).findFirst();
        }
        return outcome.repeat().isPresent() ? Optional.empty() : before.map(one -> one.name().text())
                .filter(name -> !name.equals(step.name().text()));
    }

    private static Optional<String> otherConclusion(Step step, Outcome outcome, StepGraph graph) {
        List<Step> conclusions = graph.steps().stream().filter(Step.Conclude.class::isInstance).toList();
        Optional<Step> right = graph.step(outcome.target().get());
        return right.filter(conclusions::contains).map(one -> conclusions.get((conclusions.indexOf(one) + 1) % conclusions.size()).name().text());
    }

    private static Optional<Seed> exchanged(Step step) {
        List<Outcome> two = step.outcomes().stream().filter(outcome -> outcome.target().isPresent()).toList();
        for (int i = 1; i < two.size(); i++) {
            Name one = two.get(0).target().get();
            Name other = two.get(i).target().get();
            if (!ClosingStep.written(one.text()).equals(ClosingStep.written(other.text()))) {
                return Optional.of(Seed.in(step, SpecimenEdits.replace(one.at(), ClosingStep.written(other.text())),
                        SpecimenEdits.replace(other.at(), ClosingStep.written(one.text()))));
            }
        }
        return Optional.empty();
    }

    private static Optional<Seed> levelled(Step step) {
        Name one = step.outcomes().get(0).target().get();
        Name other = step.outcomes().get(1).target().get();
        String to = ClosingStep.written(one.text());
        return to.equals(ClosingStep.written(other.text())) ? Optional.empty() : Optional.of(Seed.in(step, SpecimenEdits.replace(other.at(), to)));
    }

    private static Stream<Coded> coded(Specimen specimen) {
        return specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Observe observe && observe.indicator().isPresent())
                .flatMap(step -> step.outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.Code)
                        .map(outcome -> new Coded(step, outcome)));
    }

    /** Whether the code leads elsewhere than whatever the table does not have: else it makes no difference. */
    private static boolean leadsItsOwnWay(Coded coded) {
        String target = coded.outcome().target().map(Name::text).orElse("");
        return coded.step().outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.AnythingElse)
                .noneMatch(rest -> rest.target().map(Name::text).orElse("").equals(target));
    }

    private static boolean isObserved(Name indicator, Specimen specimen) {
        return specimen.ownSteps().stream().anyMatch(step -> step instanceof Step.Observe observe
                && observe.indicator().map(name -> name.text().equals(indicator.text())).orElse(false));
    }

    private static boolean isHandled(Name indicator, String code, Specimen specimen) {
        return specimen.ownSteps().stream().anyMatch(step -> step instanceof Step.Observe observe
                && observe.indicator().map(name -> name.text().equals(indicator.text())).orElse(false)
                && observe.outcomes().stream().anyMatch(outcome -> outcome.key().equals(code)));
    }
}

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
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** What is switched, opened, closed and proved, gone wrong. */
final class StateDefects {
    private static final Set<String> FOUND = Set.of("left-open", "need-not-established", "live-measurement",
            "charge-not-proved-absent", "contradictory-needs", "live-work", "proof-band-open", "proof-not-measured");

    private StateDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                act("switching off left out", (setting, condition) -> !live(setting, condition) && !condition.live().isEmpty()).dangerous(),
                act("switching on left out", StateDefects::live),
                act("opening left out", (setting, condition) -> condition.live().isEmpty() && !ends(setting, condition)),
                act("closing or refitting left out", (setting, condition) -> condition.live().isEmpty() && ends(setting, condition)),
                Kind.of("how a condition must be left is not said, and it is left otherwise", Set.of("ending-not-said", "need-not-established"), specimen -> specimen.procedure()
                        .own().conditions().stream().filter(condition -> condition.ends().isPresent())
                        .map(condition -> notPutBack(condition, specimen))).besides(more()),
                performed("a shared routine left out"),
                Kind.of("the routine that closes left out", Set.of("left-open"), specimen -> specimen.procedure().closesBy().stream()
                        .map(name -> closingLeftOut(name, specimen))).besides(more()),
                Kind.of("what a step sets is not said", FOUND, specimen -> specimen.steps().stream()
                        .flatMap(step -> step.frame().sets().stream().map(setting -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.fromList(setting.at())))
                                .equalFor(specimen.later().broughtAnyway(step, setting).or(() -> specimen.later().noMatter(step, setting))))))
                        .besides(more()),
                Kind.of("a step sets a condition the wrong way round", FOUND, specimen -> specimen.steps().stream()
                        .flatMap(step -> step.frame().sets().stream().flatMap(setting -> otherValue(setting, step, specimen).stream()
                                .map(seed -> seed.equalFor(specimen.later().noMatter(step, setting))))))
                        .besides(more()),
                Kind.of("a need the wrong way round", Set.of("need-not-established", "contradictory-needs", "live-measurement",
                        "charge-not-proved-absent"), specimen -> specimen.steps().stream()
                        .flatMap(step -> step.frame().needs().stream().flatMap(setting -> otherValue(setting, step, specimen).stream())))
                        .besides(more()),
                Kind.of("a need left out", FOUND, specimen -> specimen.steps().stream().flatMap(step -> step.frame().needs().stream()
                        .map(setting -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.fromList(setting.at())))
                                .equalFor(specimen.later().broughtAnyway(step, setting))))).besides(more()),
                Kind.of("needs that cannot hold together", Set.of("contradictory-needs"), specimen -> specimen.ownSteps().stream()
                        .flatMap(step -> step.frame().needs().stream().flatMap(setting -> other(setting, specimen).stream()
                                .map(value -> Seed.in(step, SpecimenEdits.insertAfter(setting.at(), ", " + setting.condition() + " " + value))))))
                        .besides(more()),
                Kind.of("a proof taken out of a result", FOUND, specimen -> specimen.steps().stream()
                        .flatMap(step -> step.outcomes().stream().flatMap(outcome -> outcome.proves().stream()
                                .map(setting -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.fromList(setting.at())))))))
                        .besides(more()),
                Kind.of("a proof given by the wrong result", FOUND, specimen -> specimen.steps().stream()
                        .flatMap(step -> step.outcomes().stream().filter(outcome -> !outcome.proves().isEmpty())
                                .flatMap(outcome -> toOther(step, outcome).stream())))
                        .besides(more()),
                Kind.of("a condition set to what it already is", Set.of("already-set"), specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(Step.Do.class::isInstance).flatMap(step -> step.frame().needs().stream()
                                .filter(setting -> step.frame().sets().stream().noneMatch(left -> same(left, setting)))
                                .limit(1).map(setting -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "sets " + setting.at().text())))))
                        .besides(more()),
                Kind.of("a condition that starts the wrong way round", FOUND, specimen -> specimen.procedure().own().conditions()
                        .stream().filter(condition -> condition.starts().isPresent()).flatMap(condition -> condition.values().stream()
                                .filter(value -> !value.text().equals(condition.starts().get().text())).limit(1)
                                .map(value -> Seed.in(condition, SpecimenEdits.replace(condition.starts().get().at(), value.text())))))
                        .besides(more()));
    }

    private static Set<String> more() {
        return Consequences.all(OF_STATES, OF_WALKS, OF_WAYS, OF_NAMES);
    }

    /** An act with one result, taken out, and whatever led to it led on. */
    private static Kind act(String title, BiPredicate<Setting, Condition> leaves) {
        return Kind.of(title, Consequences.all(FOUND, Set.of("unknown-name", "fault-misses-conclusion", "repair-not-verified")),
                specimen -> specimen.steps().stream().filter(Step.Do.class::isInstance)
                .filter(step -> step.frame().sets().stream().anyMatch(setting -> specimen.procedure().scope()
                        .condition(setting.condition()).map(condition -> leaves.test(setting, condition)).orElse(false)))
                .flatMap(step -> leftOut(step, specimen).stream().map(seed -> seed.equalFor(wasIdle(step, specimen))))).besides(more());
    }

    /** An act that only sets what is so already, or what is set again before anything asks for it. */
    private static Optional<String> wasIdle(Step step, Specimen specimen) {
        boolean only = step instanceof Step.Do task && task.erases().isEmpty() && task.repairs().isEmpty()
                && specimen.procedure().faults().stream().flatMap(fault -> fault.remedies().stream()).noneMatch(remedy -> remedy.text().equals(step.name().text()));
        List<Optional<String>> reasons = step.frame().sets().stream().map(setting -> specimen.later().broughtAnyway(step, setting)
                .or(() -> specimen.later().noMatter(step, setting))).toList();
        return only && reasons.stream().allMatch(Optional::isPresent) ? reasons.get(0) : Optional.empty();
    }

    /** A routine that leaves conditions, not performed: its first exit is taken for granted. */
    private static Kind performed(String title) {
        return Kind.of(title, FOUND, specimen -> specimen.ownSteps().stream().filter(Step.Perform.class::isInstance)
                .filter(step -> step.frame().verifies().isEmpty() && step.outcomes().size() == 1)
                .flatMap(step -> leftOut(step, specimen).stream())).besides(more());
    }

    /** The house's routine is run instead, which does not bring back what only this unit has. */
    private static Seed closingLeftOut(Name routine, Specimen specimen) {
        Seed seed = Seed.at(routine.at(), SpecimenEdits.delete(SpecimenEdits.withKeywords(routine.at(), "closes by")));
        for (Condition own : specimen.procedure().own().conditions()) {
            seed = seed.naming(own.name().text());
        }
        return seed;
    }

    static Optional<Seed> leftOut(Step step, Specimen specimen) {
        Optional<Name> next = step.outcomes().stream().limit(1).flatMap(outcome -> outcome.target().stream()).findFirst();
        if (next.isEmpty() || step.outcomes().size() != 1 || next.get().text().equals(step.name().text())) {
            return Optional.empty();
        }
        StepGraph graph = specimen.graphOf(step);
        Seed seed = Seed.in(step, SpecimenEdits.delete(step.at())).naming(next.get().text());
        for (Name before : Specimen.leadingTo(step.name(), graph).toList()) {
            seed = seed.with(SpecimenEdits.replace(before.at(), next.get().text()));
        }
        return Optional.of(seed);
    }

    private static boolean live(Setting setting, Condition condition) {
        return condition.live().stream().anyMatch(value -> value.text().equals(setting.value().text()));
    }

    private static Seed notPutBack(Condition condition, Specimen specimen) {
        Seed seed = Seed.in(condition, SpecimenEdits.delete(SpecimenEdits.withKeywords(condition.ends().get().at(), "ends")));
        for (Step step : specimen.ownSteps()) {
            for (Setting setting : step.frame().sets()) {
                if (setting.condition().text().equals(condition.name().text()) && ends(setting, condition)) {
                    seed = seed.with(SpecimenEdits.delete(SpecimenEdits.fromList(setting.at())));
                }
            }
        }
        return seed;
    }

    private static boolean ends(Setting setting, Condition condition) {
        return condition.ends().map(value -> value.text().equals(setting.value().text())).orElse(false);
    }

    private static boolean same(Setting one, Setting other) {
        return one.condition().text().equals(other.condition().text());
    }

    private static Optional<Seed> otherValue(Setting setting, Step step, Specimen specimen) {
        return other(setting, specimen).map(value -> Seed.in(step, SpecimenEdits.replace(setting.value().at(), value)));
    }

    private static Optional<String> other(Setting setting, Specimen specimen) {
        return specimen.procedure().scope().condition(setting.condition()).stream().flatMap(condition -> condition.values().stream())
                .map(Name::text).filter(value -> !value.equals(setting.value().text())).findFirst();
    }

    private static Optional<Seed> toOther(Step step, Outcome proving) {
        Fix.Edit out = SpecimenEdits.delete(SpecimenEdits.withKeywords(proving.proves().get(0).at(), "proves"));
        return step.outcomes().stream().filter(outcome -> outcome != proving && outcome.proves().isEmpty()).findFirst()
                .map(outcome -> Seed.in(step, out, SpecimenEdits.insertAfter(outcome.at(), " proves " + proving.proves().get(0).at().text())));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.RoutineEffects;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.Routine;

/** Fixes that see to it that a condition has a value on coming to a step of the procedure. */
final class SettingFixes {
    private final ProcedurePaths paths;
    private final Procedure procedure;
    private final ConditionStates states;
    private final Condition condition;

    SettingFixes(ProcedurePaths paths, ConditionStates states) {
        this.paths = paths;
        this.procedure = paths.map().procedure();
        this.states = states;
        this.condition = states.condition();
    }

    /** @param wrong the values to be changed; arrows that bring no such value stay as they are */
    Fix[] before(InlinedStep place, Name value, Predicate<Name> wrong) {
        InlinedStep step = place.outermost();
        List<Name> arriving = states.arriving(step).stream().filter(wrong).toList();
        if (arriving.isEmpty()) {
            return new Fix[0];
        }
        List<Fix> fixes = new ArrayList<>();
        // Charge is not made absent by saying so, and a forced value not changed by an act of its own.
        boolean provedOnly = !condition.charged().isEmpty();
        if (!provedOnly && condition.becomes().isEmpty()) {
            fixes.add(act(step, value, wrong));
        }
        performed(step, value, arriving, wrong).ifPresent(fixes::add);
        return fixes.toArray(Fix[]::new);
    }

    private StepInsertion insertion(InlinedStep step, Predicate<Name> wrong) {
        StepInsertion insertion = new StepInsertion(procedure, step.step());
        for (Transition way : paths.map().ways()) {
            turn(insertion, way, way.to(), false, step, wrong);
            turn(insertion, way, way.otherwise(), true, step, wrong);
        }
        if (condition.values().stream().anyMatch(value -> wrong.test(value) && states.startsWith(value))) {
            insertion.turnBegin();
        }
        return insertion;
    }

    private void turn(StepInsertion insertion, Transition way, Optional<InlinedStep> to, boolean otherwise, InlinedStep step,
            Predicate<Name> wrong) {
        if (to.filter(place -> place == step).isPresent()
                && condition.values().stream().anyMatch(value -> wrong.test(value) && states.brings(way, otherwise, value))) {
            insertion.turn(way, otherwise);
        }
    }

    private Fix act(InlinedStep step, Name value, Predicate<Name> wrong) {
        StepInsertion insertion = insertion(step, wrong);
        String name = insertion.freeName(Phrases.capital(condition.name().text()) + Phrases.capital(value.text()));
        String spoken = condition.title().isBlank() ? condition.name().text() : condition.title();
        return insertion.fix("Insert a step that sets " + condition.name() + " to " + value + " before " + step.label(),
                name, List.of(
                        "do " + name + " " + Quotation.onOneLine("Set " + spoken + " to " + value) + " {",
                        "    sets " + condition.name() + " " + value,
                        "    takes 1 min",
                        "    then -> " + step.label(),
                        "}"));
    }

    private Optional<Fix> performed(InlinedStep step, Name value, List<Name> arriving, Predicate<Name> wrong) {
        return paths.map().scope().routines().stream()
                .map(routine -> new RoutineEffects(procedure, routine, condition, arriving))
                .filter(effects -> !effects.exitsWith(value).isEmpty())
                .findFirst().map(effects -> perform(step, effects, effects.exitsWith(value), wrong));
    }

    private Fix perform(InlinedStep step, RoutineEffects effects, List<Name> good, Predicate<Name> wrong) {
        StepInsertion insertion = insertion(step, wrong);
        Routine routine = effects.routine();
        String name = insertion.freeName("Do" + Phrases.capital(routine.name().text()));
        List<String> lines = new ArrayList<>();
        lines.add("perform " + name + " " + Quotation.onOneLine(routine.title().isBlank() ? routine.name().text()
                : routine.title()) + " by " + routine.name() + " {");
        HandingOn handingOn = new HandingOn(procedure, insertion);
        routine.exits().forEach(exit -> lines.add("    " + exit + " -> "
                + (good.contains(exit) ? step.label() : handingOn.target())));
        lines.add("}");
        lines.addAll(handingOn.lines());
        return insertion.fix("Perform " + routine.name() + " before " + step.label(), name, lines);
    }
}

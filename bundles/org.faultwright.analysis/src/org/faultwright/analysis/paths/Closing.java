/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/**
 * Puts the routine that closes the unit in before each conclusion that is reached with something open: a condition that need
 * not be at the value at which it must end, and that the routine brings back. An arrow on which nothing can be open leads on
 * to its conclusion as before, and costs no time.
 */
public final class Closing {
    private static final String MARK = "#";

    private final Procedure procedure;
    private final Routine routine;
    private final List<Condition> broughtBack;
    private final Map<String, Step.Conclude> conclusions = new LinkedHashMap<>();
    private int arrows;

    private Closing(Procedure procedure, Routine routine) {
        this.procedure = procedure;
        this.routine = routine;
        this.broughtBack = procedure.scope().conditions().stream().filter(condition -> condition.values().size() > 1
                && condition.ends().filter(condition::has).filter(end -> sets(routine, condition, end, procedure.scope(), new HashSet<>()))
                        .isPresent()).toList();
        procedure.steps().forEach(step -> {
            if (step instanceof Step.Conclude conclude) {
                conclusions.putIfAbsent(step.name().text(), conclude);
            }
        });
    }

    /** The conditions that the closing routine of a procedure, where it has one, leaves as they must end. */
    public static Set<String> broughtBack(Procedure procedure) {
        return procedure.closing().filter(routine -> !routine.exits().isEmpty()).map(routine -> new Closing(procedure, routine).broughtBack.stream()
                .map(condition -> condition.name().text()).collect(Collectors.toSet())).orElse(Set.of());
    }

    /** The procedure with its closing steps; the same where it names no routine that closes, or nothing can be open. */
    public static Procedure of(Procedure procedure) {
        return procedure.closing().filter(routine -> !routine.exits().isEmpty()).map(routine -> new Closing(procedure, routine).closed())
                .orElse(procedure);
    }

    /** The procedure with its closing steps put in anew, for one whose arrows were turned after they had been put in. */
    public static Procedure again(Procedure procedure) {
        List<Step> steps = procedure.namedSteps().stream().map(step -> step.renamed(step.name(),
                step.outcomes().stream().map(Closing::written).toList())).toList();
        return of(procedure.withSteps(steps));
    }

    private static Outcome written(Outcome outcome) {
        return new Outcome(outcome.head(), outcome.target().map(Closing::written), outcome.repeat().map(bound ->
                new Outcome.Repeat(bound.atMost(), written(bound.otherwise()), bound.at())), outcome.proves(), outcome.normal(), outcome.at());
    }

    private static Name written(Name target) {
        return new Name(ClosingStep.written(target.text()), target.at());
    }

    private static boolean sets(Routine routine, Condition condition, Name end, Scope scope, Set<String> entered) {
        return entered.add(routine.name().text()) && routine.steps().stream().anyMatch(step -> step.frame().sets().stream()
                .anyMatch(set -> set.condition().text().equals(condition.name().text()) && set.value().text().equals(end.text()))
                || scope.performedBy(step).filter(inner -> sets(inner, condition, end, scope, entered)).isPresent());
    }

    private Procedure closed() {
        if (broughtBack.isEmpty() || conclusions.isEmpty()) {
            return procedure;
        }
        Set<String> open = open();
        arrows = 0;
        Map<String, Step> closing = new LinkedHashMap<>();
        List<Step> steps = new ArrayList<>(redirected(target -> {
            if (!open.contains(target.text() + MARK + arrows++)) {
                return target;
            }
            Step step = closing.computeIfAbsent(target.text(), name -> ClosingStep.before(conclusions.get(name), routine));
            return new Name(step.name().text(), target.at());
        }));
        steps.addAll(closing.values());
        return closing.isEmpty() ? procedure : with(steps);
    }

    /** The arrows on which something may be open: every one leads to a conclusion of its own to ask. */
    private Set<String> open() {
        Map<String, Step> own = new LinkedHashMap<>();
        List<Step> steps = new ArrayList<>(redirected(target -> {
            Name name = new Name(target.text() + MARK + arrows++, target.at());
            Step.Conclude whole = conclusions.get(target.text());
            own.put(name.text(), new Step.Conclude(name, whole.title(), whole.finds(), whole.findsNothing(), whole.refersTo(),
                    whole.report(), whole.frame(), whole.at()));
            return name;
        }));
        steps.addAll(own.values());
        StepMap map = StepMap.of(with(steps));
        Map<String, InlinedStep> places = new LinkedHashMap<>();
        map.places().stream().filter(place -> place.caller().isEmpty() && own.containsKey(place.step().name().text()))
                .forEach(place -> places.put(place.step().name().text(), place));
        Set<String> open = new HashSet<>();
        for (Condition condition : broughtBack) {
            ConditionStates states = ConditionStates.of(map, condition, false, Exploration.MOST_STATES);
            String end = condition.ends().orElseThrow().text();
            places.forEach((name, place) -> {
                if (!states.isComplete() || states.arriving(place).stream().anyMatch(value -> !value.text().equals(end))) {
                    open.add(name);
                }
            });
        }
        return open;
    }

    /** Where an arrow to a conclusion leads instead. */
    private interface Redirection {
        Name of(Name conclusion);
    }

    /** The steps with each arrow to a conclusion turned; asked in the same order each time. */
    private List<Step> redirected(Redirection redirection) {
        return procedure.steps().stream().map(step -> {
            boolean leads = step.outcomes().stream().anyMatch(this::leadsToConclusion);
            return leads ? step.renamed(step.name(), step.outcomes().stream().map(outcome -> turned(outcome, redirection)).toList())
                    : step;
        }).toList();
    }

    private boolean leadsToConclusion(Outcome outcome) {
        return outcome.target().filter(this::isConclusion).isPresent()
                || outcome.repeat().filter(repeat -> isConclusion(repeat.otherwise())).isPresent();
    }

    private boolean isConclusion(Name name) {
        return conclusions.containsKey(name.text());
    }

    private Outcome turned(Outcome outcome, Redirection redirection) {
        Optional<Name> target = outcome.target().map(name -> isConclusion(name) ? redirection.of(name) : name);
        Optional<Outcome.Repeat> repeat = outcome.repeat().map(bound -> isConclusion(bound.otherwise())
                ? new Outcome.Repeat(bound.atMost(), redirection.of(bound.otherwise()), bound.at()) : bound);
        return new Outcome(outcome.head(), target, repeat, outcome.proves(), outcome.normal(), outcome.at());
    }

    private Procedure with(List<Step> steps) {
        return procedure.withSteps(steps);
    }
}

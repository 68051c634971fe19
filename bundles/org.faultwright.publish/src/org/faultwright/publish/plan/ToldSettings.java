/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * Which settings a reader who comes to a step has already been told, whichever way they came: those need no second word. A
 * routine leaves nothing known of what it may set.
 */
public final class ToldSettings {
    private final Scope scope;
    private final Map<Step, Map<String, String>> known = new IdentityHashMap<>();

    public ToldSettings(CardPlan plan) {
        this(plan.procedure(), plan.routines());
    }

    /** @param routines wherever they are printed: at their beginning nothing is known, since several steps may lead there */
    ToldSettings(Procedure procedure, Collection<? extends StepGraph> routines) {
        this.scope = procedure.scope();
        spread(procedure, arrival());
        routines.forEach(routine -> spread(routine, Map.of()));
    }

    private void spread(StepGraph graph, Map<String, String> before) {
        Deque<Step> open = new ArrayDeque<>();
        graph.first().ifPresent(first -> {
            known.put(first, before);
            open.add(first);
        });
        while (!open.isEmpty()) {
            spread(graph, open.remove(), open);
        }
    }

    private Map<String, String> arrival() {
        Map<String, String> start = new LinkedHashMap<>();
        for (Condition condition : scope.conditions()) {
            condition.starts().or(() -> condition.values().stream().findFirst())
                    .ifPresent(value -> start.put(condition.name().text(), value.text()));
        }
        return start;
    }

    private void spread(StepGraph graph, Step from, Deque<Step> open) {
        Map<String, String> after = new LinkedHashMap<>(known.get(from));
        put(after, from.frame().needs());
        scope.performedBy(from).ifPresent(routine -> {
            forget(after, routine);
            PerformedRoutines.within(routine, scope).values().forEach(inner -> forget(after, inner));
        });
        put(after, from.frame().sets());
        scope.conditions().forEach(condition -> condition.becomes().stream()
                .filter(becomes -> becomes.when().value().text().equals(after.get(becomes.when().condition().text())))
                .forEach(becomes -> after.remove(condition.name().text())));
        for (Outcome outcome : from.outcomes()) {
            Map<String, String> on = new LinkedHashMap<>(after);
            put(on, outcome.proves());
            outcome.target().flatMap(graph::step).ifPresent(to -> meet(to, on, open));
            outcome.repeat().flatMap(repeat -> graph.step(repeat.otherwise())).ifPresent(to -> meet(to, on, open));
        }
    }

    private void forget(Map<String, String> after, StepGraph routine) {
        routine.steps().forEach(step -> {
            step.frame().sets().forEach(setting -> after.remove(setting.condition().text()));
            step.outcomes().forEach(outcome -> outcome.proves().forEach(one -> after.remove(one.condition().text())));
        });
    }

    private static void put(Map<String, String> into, List<Setting> settings) {
        settings.forEach(setting -> into.put(setting.condition().text(), setting.value().text()));
    }

    /** What is known at a step is what every way to it tells. */
    private void meet(Step step, Map<String, String> told, Deque<Step> open) {
        Map<String, String> before = known.get(step);
        Map<String, String> both = new LinkedHashMap<>(before == null ? told : before);
        both.entrySet().removeIf(entry -> !entry.getValue().equals(told.get(entry.getKey())));
        if (before == null || !both.equals(before)) {
            known.put(step, both);
            open.add(step);
        }
    }

    /** What the step needs and its reader has not been told. Told each time is what makes the circuit live, and that no charge is left: hands go in by it. */
    public List<Setting> toTell(Step step) {
        Map<String, String> told = known.getOrDefault(step, Map.of());
        return step.frame().needs().stream()
                .filter(need -> isAlwaysTold(need) || !need.value().text().equals(told.get(need.condition().text()))).toList();
    }

    private boolean isAlwaysTold(Setting need) {
        return scope.condition(need.condition()).filter(condition -> condition.isLive(need.value()) || condition.isWithoutCharge(need.value())).isPresent();
    }
}

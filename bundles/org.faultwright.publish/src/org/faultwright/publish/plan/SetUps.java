/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;

/**
 * Which settings a reader who comes to a step has already been told, whichever way they came: those need no second word. A
 * routine leaves nothing known of what it may set.
 */
public final class SetUps {
    private final Plan plan;
    private final Map<Step, Map<String, String>> known = new IdentityHashMap<>();

    public SetUps(Plan plan) {
        this.plan = plan;
        Deque<Step> open = new ArrayDeque<>();
        plan.sections().forEach(section -> section.graph().first().ifPresent(first -> {
            known.put(first, section.isRoutine() ? Map.of() : arrival());
            open.add(first);
            while (!open.isEmpty()) {
                spread(section, open.remove(), open);
            }
        }));
    }

    private Map<String, String> arrival() {
        Map<String, String> start = new LinkedHashMap<>();
        for (Condition condition : plan.scope().conditions()) {
            condition.starts().or(() -> condition.values().stream().findFirst())
                    .ifPresent(value -> start.put(condition.name().text(), value.text()));
        }
        return start;
    }

    private void spread(Section section, Step from, Deque<Step> open) {
        Map<String, String> after = new LinkedHashMap<>(known.get(from));
        put(after, from.frame().needs());
        routine(from).ifPresent(routine -> forget(after, routine, 0));
        put(after, from.frame().sets());
        plan.scope().conditions().forEach(condition -> condition.becomes().stream()
                .filter(becomes -> becomes.when().value().text().equals(after.get(becomes.when().condition().text())))
                .forEach(becomes -> after.remove(condition.name().text())));
        for (Outcome outcome : from.outcomes()) {
            Map<String, String> on = new LinkedHashMap<>(after);
            put(on, outcome.proves());
            outcome.target().flatMap(section.graph()::step).ifPresent(to -> meet(to, on, open));
            outcome.repeat().flatMap(repeat -> section.graph().step(repeat.otherwise())).ifPresent(to -> meet(to, on, open));
        }
    }

    private Optional<Routine> routine(Step step) {
        return step instanceof Step.Perform perform ? perform.routine().flatMap(plan.scope()::routine) : Optional.empty();
    }

    private void forget(Map<String, String> after, Routine routine, int depth) {
        for (Step step : depth < 8 ? routine.steps() : List.<Step>of()) {
            step.frame().sets().forEach(setting -> after.remove(setting.condition().text()));
            step.outcomes().forEach(outcome -> outcome.proves().forEach(one -> after.remove(one.condition().text())));
            routine(step).ifPresent(inner -> forget(after, inner, depth + 1));
        }
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

    /** What the step needs and its reader has not been told. */
    public List<Setting> toTell(Step step) {
        Map<String, String> told = known.getOrDefault(step, Map.of());
        return step.frame().needs().stream()
                .filter(need -> !need.value().text().equals(told.get(need.condition().text()))).toList();
    }
}

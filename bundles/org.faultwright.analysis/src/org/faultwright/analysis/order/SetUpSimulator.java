/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;

/**
 * What steps do to the set-up. A set-up is the value of each condition, by number, in the order of the
 * scope. Unlike the exploration of all paths this starts from any set-up and asks about one step.
 */
public final class SetUpSimulator {
    private static final int DEEPEST = 8;
    private static final int MOST_STATES = 5_000;

    /** Where a routine can be. */
    private record StepInSetUp(String step, List<Integer> setUp) {
    }

    private final Scope scope;
    private final List<Condition> conditions;
    /** What each outcome, by identity, leaves of each set-up: routines are long and are asked about often. */
    private final Map<Outcome, Map<List<Integer>, Optional<Set<List<Integer>>>>> left = new IdentityHashMap<>();

    public SetUpSimulator(Scope scope) {
        this.scope = scope;
        this.conditions = scope.conditions().stream().filter(condition -> !condition.values().isEmpty()).toList();
    }

    public List<Integer> start() {
        return forced(conditions.stream().map(condition -> condition.starts()
                .map(name -> value(condition, name)).filter(v -> v >= 0).orElse(0)).toList());
    }

    private int place(Name condition) {
        return IntStream.range(0, conditions.size())
                .filter(i -> conditions.get(i).name().text().equals(condition.text())).findFirst().orElse(-1);
    }

    private static int value(Condition condition, Name value) {
        return IntStream.range(0, condition.values().size())
                .filter(i -> condition.values().get(i).text().equals(value.text())).findFirst().orElse(-1);
    }

    /** Whether a setting holds; one that names nothing known is left to other rules and counts as holding. */
    public boolean holds(List<Integer> setUp, Setting setting) {
        int place = place(setting.condition());
        int value = place < 0 ? -1 : value(conditions.get(place), setting.value());
        return value < 0 || setUp.get(place) == value;
    }

    public boolean holds(List<Integer> setUp, List<Setting> settings) {
        return settings.stream().allMatch(setting -> holds(setUp, setting));
    }

    /** Whether everything is as it must be left. */
    public boolean isPutBack(List<Integer> setUp) {
        return isPutBack(setUp, Set.of());
    }

    /** @param besides conditions that are put back later */
    public boolean isPutBack(List<Integer> setUp, Set<String> besides) {
        return IntStream.range(0, conditions.size()).filter(i -> !besides.contains(conditions.get(i).name().text())).allMatch(i -> conditions.get(i).ends()
                .map(end -> value(conditions.get(i), end)).filter(v -> v >= 0 && v != setUp.get(i)).isEmpty());
    }

    private List<Integer> set(List<Integer> setUp, List<Setting> settings) {
        List<Integer> changed = new ArrayList<>(setUp);
        for (Setting setting : settings) {
            int place = place(setting.condition());
            int value = place < 0 ? -1 : value(conditions.get(place), setting.value());
            if (value >= 0) {
                changed.set(place, value);
            }
        }
        return settings.isEmpty() ? setUp : forced(changed);
    }

    /** Values that other conditions force, followed until nothing changes any more. */
    private List<Integer> forced(List<Integer> setUp) {
        List<Integer> changed = new ArrayList<>(setUp);
        List<Integer> before = List.of();
        for (int round = 0; round <= conditions.size() && !changed.equals(before); round++) {
            before = List.copyOf(changed);
            for (int i = 0; i < conditions.size(); i++) {
                Condition condition = conditions.get(i);
                Optional<Integer> value = condition.becomes().stream().filter(becomes -> isKnown(becomes.when())
                        && holds(changed, becomes.when())).map(becomes -> value(condition, becomes.value()))
                        .filter(v -> v >= 0).findFirst();
                if (value.isPresent()) {
                    changed.set(i, value.get());
                }
            }
        }
        return List.copyOf(changed);
    }

    private boolean isKnown(Setting setting) {
        int place = place(setting.condition());
        return place >= 0 && value(conditions.get(place), setting.value()) >= 0;
    }

    /** The one set-up after a step with this outcome; absent where a need does not hold or more than one may be left. */
    public Optional<List<Integer>> after(List<Integer> setUp, Step step, Outcome outcome) {
        return all(setUp, step, outcome).filter(left -> left.size() == 1).map(left -> left.iterator().next());
    }

    /**
     * Every set-up that may be left after a step with this outcome; none where its routine never leaves that way. Absent
     * where something it needs does not hold, in the routine that it performs too.
     */
    public Optional<Set<List<Integer>>> all(List<Integer> setUp, Step step, Outcome outcome) {
        return all(setUp, step, outcome, 0);
    }

    private Optional<Set<List<Integer>>> all(List<Integer> setUp, Step step, Outcome outcome, int depth) {
        Map<List<Integer>, Optional<Set<List<Integer>>>> known = left.computeIfAbsent(outcome, o -> new HashMap<>());
        Optional<Set<List<Integer>>> before = known.get(setUp);
        if (before == null) {
            before = find(setUp, step, outcome, depth);
            known.put(setUp, before);
        }
        return before;
    }

    private Optional<Set<List<Integer>>> find(List<Integer> setUp, Step step, Outcome outcome, int depth) {
        if (!holds(setUp, step.frame().needs())) {
            return Optional.empty();
        }
        Optional<Routine> routine = scope.performedBy(step);
        Optional<Set<List<Integer>>> within = routine.isPresent() ? through(setUp, routine.get(), outcome.key(), depth)
                : Optional.of(Set.of(setUp));
        return within.map(left -> left.stream().map(one -> set(set(one, step.frame().sets()), outcome.proves()))
                .collect(Collectors.toSet()));
    }

    private Optional<Set<List<Integer>>> through(List<Integer> setUp, Routine routine, String exit, int depth) {
        if (depth >= DEEPEST || routine.first().isEmpty()) {
            return Optional.empty();
        }
        Set<List<Integer>> left = new HashSet<>();
        Set<StepInSetUp> seen = new HashSet<>();
        Deque<StepInSetUp> open = new ArrayDeque<>();
        StepInSetUp first = new StepInSetUp(routine.first().get().name().text(), setUp);
        seen.add(first);
        open.add(first);
        while (!open.isEmpty()) {
            StepInSetUp at = open.remove();
            Step step = routine.step(new Name(at.step(), routine.at())).orElseThrow();
            for (Outcome outcome : step.outcomes()) {
                Optional<Set<List<Integer>>> after = all(at.setUp(), step, outcome, depth + 1);
                if (after.isEmpty() || seen.size() > MOST_STATES) {
                    return Optional.empty();
                }
                for (Name target : targets(outcome)) {
                    if (target.text().equals(exit) && routine.isExit(target)) {
                        left.addAll(after.get());
                    } else if (routine.step(target).isPresent()) {
                        after.get().stream().map(one -> new StepInSetUp(target.text(), one)).filter(seen::add).forEach(open::add);
                    }
                }
            }
        }
        return Optional.of(left);
    }

    static List<Name> targets(Outcome outcome) {
        List<Name> targets = new ArrayList<>(outcome.target().stream().toList());
        outcome.repeat().ifPresent(repeat -> targets.add(repeat.otherwise()));
        return targets;
    }

    /**
     * The covers, lids and plugs that are off in the second set-up and not so in the first: conditions that must be put back, are neither live
     * nor charged, and may not be changed under power.
     */
    List<Name> opened(List<Integer> before, List<Integer> then) {
        List<Integer> start = start();
        return IntStream.range(0, conditions.size()).filter(i -> isCover(conditions.get(i)) && before.get(i).equals(start.get(i))
                && !then.get(i).equals(start.get(i))).mapToObj(i -> conditions.get(i).name()).toList();
    }

    private static boolean isCover(Condition condition) {
        return condition.live().isEmpty() && condition.charged().isEmpty() && !condition.mayChangeLive() && condition.becomes().isEmpty()
                && condition.ends().filter(end -> end.text().equals(condition.starts().orElse(condition.values().get(0)).text())).isPresent();
    }

    /**
     * What is out of its first state in the second set-up and not so in the first, one bit for each condition.
     * Conditions about stored charge are left aside: proving it absent exposes nobody.
     */
    public long exposed(List<Integer> before, List<Integer> then) {
        long bits = 0;
        List<Integer> start = start();
        for (int i = 0; i < conditions.size() && i < Long.SIZE; i++) {
            boolean exposes = conditions.get(i).charged().isEmpty() && !then.get(i).equals(start.get(i));
            bits |= exposes && !then.get(i).equals(before.get(i)) ? 1L << i : 0;
        }
        return bits;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;

/**
 * What has been proved, and which protective tests have been passed, on every way that comes to a step of the procedure: whatever was deleted, led
 * elsewhere or given another bound, a step that is less assured than it was is found. Routines are followed inside. A repair makes earlier tests
 * worthless, and something dangerous that is set makes earlier proofs worthless.
 */
final class Assurances {
    private static final String PASSED = " passed";
    /** Routines that perform one another deeper than this are taken to assure nothing. */
    private static final int DEEPEST = 12;

    private final Procedure procedure;
    private final Set<String> repairs;
    private final Map<String, Map<String, Set<String>>> followed = new HashMap<>();

    private Assurances(Procedure procedure) {
        this.procedure = procedure;
        this.repairs = procedure.faults().stream().map(Fault::remedies).flatMap(List::stream).map(Name::text).collect(Collectors.toSet());
    }

    /** What each step of the procedure's own that something leads to is assured of; each in words, such as {@code Charge absent}. */
    static Map<String, Set<String>> of(Procedure procedure) {
        Map<String, Set<String>> before = new LinkedHashMap<>();
        new Assurances(procedure).follow(procedure, Set.of(), before, 0);
        return before;
    }

    static boolean isTest(String assurance) {
        return assurance.endsWith(PASSED);
    }

    /** @param before what is known where each step begins; filled @return what is known at each exit */
    private Map<String, Set<String>> follow(StepGraph graph, Set<String> first, Map<String, Set<String>> before, int depth) {
        Map<String, Set<String>> exits = new HashMap<>();
        Deque<Step> open = new ArrayDeque<>();
        graph.first().ifPresent(step -> {
            before.put(step.name().text(), new TreeSet<>(first));
            open.add(step);
        });
        while (!open.isEmpty()) {
            Step step = open.remove();
            Set<String> here = before.get(step.name().text());
            Map<String, Set<String>> inside = inside(step, here, depth);
            for (Outcome outcome : step.outcomes()) {
                Set<String> after = after(step, outcome, inside.getOrDefault(outcome.key(), here));
                outcome.target().ifPresent(target -> lead(graph, target, after, before, exits, open));
                // the last time round leads elsewhere with the same result
                outcome.repeat().ifPresent(bound -> lead(graph, bound.otherwise(), after, before, exits, open));
            }
        }
        return exits;
    }

    private void lead(StepGraph graph, Name target, Set<String> known, Map<String, Set<String>> before, Map<String, Set<String>> exits, Deque<Step> open) {
        Optional<Step> next = graph.step(target);
        Map<String, Set<String>> at = next.isPresent() ? before : exits;
        Set<String> there = at.get(target.text());
        if (there == null) {
            at.put(target.text(), new TreeSet<>(known));
            next.ifPresent(open::add);
        } else if (there.retainAll(known)) {
            next.ifPresent(open::add);
        }
    }

    private Map<String, Set<String>> inside(Step step, Set<String> here, int depth) {
        Optional<Routine> routine = procedure.scope().performedBy(step);
        if (routine.isEmpty()) {
            return Map.of();
        }
        if (depth > DEEPEST) {
            return routine.get().exits().stream().collect(Collectors.toMap(Name::text, exit -> Set.<String>of(), (one, other) -> one));
        }
        String key = routine.get().name() + ":" + here;
        Map<String, Set<String>> known = followed.get(key);
        if (known == null) {
            known = follow(routine.get(), here, new HashMap<>(), depth + 1);
            followed.put(key, known);
        }
        return known;
    }

    private Set<String> after(Step step, Outcome outcome, Set<String> here) {
        Set<String> known = new TreeSet<>(here);
        if (step instanceof Step.Do act && act.repairs().isPresent() || repairs.contains(step.name().text())) {
            known.removeIf(Assurances::isTest);
        }
        Stream.concat(step.frame().sets().stream(), outcome.proves().stream()).forEach(setting -> {
            if (isDangerous(setting)) {
                known.removeIf(one -> !isTest(one));
            }
            known.removeIf(one -> one.startsWith(setting.condition() + " "));
        });
        outcome.proves().forEach(proved -> known.add(proved.condition() + " " + proved.value()));
        List<ProtectiveTest> tests = step.frame().precautions().tests().stream().map(Written::value).toList();
        if (!tests.isEmpty() && isPassed(step, outcome, tests)) {
            tests.forEach(test -> known.add(test.word() + PASSED));
        }
        return known;
    }

    private boolean isPassed(Step step, Outcome outcome, List<ProtectiveTest> tests) {
        if (step instanceof Step.Measure && outcome.head() instanceof Outcome.Band) {
            return Protection.guards(outcome, tests);
        }
        return Results.normal(step, procedure.scope()).map(normal -> normal == outcome).orElse(true);
    }

    private boolean isDangerous(Setting setting) {
        return procedure.scope().condition(setting.condition()).filter(condition -> dangerous(condition).contains(setting.value().text())).isPresent();
    }

    private static Set<String> dangerous(Condition condition) {
        return Stream.concat(condition.live().stream(), condition.charged().stream()).map(Name::text).collect(Collectors.toCollection(HashSet::new));
    }

    /** A loss at one step. */
    record Lost(Step step, Set<String> was) {
    }

    /**
     * The first steps on each way that are less assured than they were. Tests are asked for where a fault is concluded, proofs everywhere.
     *
     * @param values by which the steps of the earlier revision are called today
     */
    static List<Lost> lost(Procedure was, Procedure now, RecordValues values) {
        Map<String, Set<String>> then = new HashMap<>();
        of(was).forEach((name, known) -> then.put(values.today(name), known.stream().map(one -> renamed(values, one)).collect(Collectors.toCollection(TreeSet::new))));
        Map<String, Set<String>> today = of(now);
        Map<String, Set<String>> lost = new HashMap<>();
        today.forEach((name, known) -> {
            Set<String> less = new TreeSet<>(then.getOrDefault(name, Set.of()));
            less.removeAll(known);
            boolean concludes = now.steps().stream().filter(step -> step.name().text().equals(name))
                    .anyMatch(step -> step instanceof Step.Conclude end && !end.finds().isEmpty());
            less.removeIf(one -> isTest(one) && !concludes);
            lost.put(name, less);
        });
        Map<String, Set<String>> led = new HashMap<>();
        now.steps().forEach(step -> step.outcomes().forEach(outcome -> Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream())
                .filter(target -> !target.text().equals(step.name().text()))
                .forEach(target -> led.computeIfAbsent(target.text(), first -> new HashSet<>()).addAll(lost.getOrDefault(step.name().text(), Set.of())))));
        return now.steps().stream().filter(step -> today.containsKey(step.name().text()) && !ClosingStep.is(step)).filter(step -> lost.get(step.name().text()).stream()
                .anyMatch(one -> !led.getOrDefault(step.name().text(), Set.of()).contains(one))).map(step -> new Lost(step, lost.get(step.name().text()))).toList();
    }

    private static String renamed(RecordValues values, String assurance) {
        int space = assurance.indexOf(' ');
        return isTest(assurance) || space < 0 ? assurance : values.today(assurance.substring(0, space)) + assurance.substring(space);
    }
}

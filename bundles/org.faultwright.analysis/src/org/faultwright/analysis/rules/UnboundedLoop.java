/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Components;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.StepGraph;

/** A way round that may be taken as often as its results come. */
public final class UnboundedLoop implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unbounded-loop", Severity.ERROR, Group.PATHS,
            "Steps lead round to themselves, and nothing bounds how often.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.graphs().forEach(graph -> check(graph, StepDigraph.of(graph, subject), findings));
    }

    private static void check(StepGraph graph, StepDigraph arrows, Findings findings) {
        Components components = Components.of(arrows.successors(StepDigraph.Arrow::isUnbounded));
        BitSet reported = new BitSet();
        for (int step = 0; step < arrows.size(); step++) {
            if (components.isOnCycle(step) && !reported.get(components.of(step))) {
                reported.set(components.of(step));
                report(round(step, arrows), arrows, graph, findings);
            }
        }
    }

    /** The shortest way from a step back to it. */
    private static List<StepDigraph.Arrow> round(int start, StepDigraph arrows) {
        Map<Integer, StepDigraph.Arrow> reachedBy = new HashMap<>();
        Deque<Integer> waiting = new ArrayDeque<>(List.of(start));
        while (!reachedBy.containsKey(start)) {
            for (StepDigraph.Arrow arrow : arrows.from(waiting.remove())) {
                if (arrow.isUnbounded() && reachedBy.putIfAbsent(arrow.to(), arrow) == null) {
                    waiting.add(arrow.to());
                }
            }
        }
        LinkedList<StepDigraph.Arrow> round = new LinkedList<>();
        for (StepDigraph.Arrow arrow = reachedBy.get(start); round.isEmpty()
                || arrow.to() != start; arrow = reachedBy.get(arrow.from())) {
            round.addFirst(arrow);
        }
        return round;
    }

    private static void report(List<StepDigraph.Arrow> round, StepDigraph arrows, StepGraph graph, Findings findings) {
        List<PathStep> path = new ArrayList<>();
        round.forEach(arrow -> path.add(new PathStep(arrows.step(arrow.from()).name().text(), arrow.outcome().key(),
                arrow.outcome().at())));
        StepDigraph.Arrow back = round.get(round.size() - 1);
        String start = arrows.step(back.to()).name().text();
        path.add(new PathStep(start, "", arrows.step(back.to()).name().at()));
        findings.report(back.outcome().head().at(), "The outcome \"" + back.outcome().key() + "\" of "
                + arrows.step(back.from()).name()
                + " leads back to " + start + ", and nothing bounds how often.",
                "Bound it, as in \"at most 2 times, else …\" with the step that gives up.", path, bound(back, graph));
    }

    private static Fix[] bound(StepDigraph.Arrow back, StepGraph graph) {
        Optional<String> escape = EscapeTarget.in(graph);
        Outcome outcome = back.outcome();
        if (escape.isEmpty() || back.otherwise() || outcome.target().isEmpty()) {
            return new Fix[0];
        }
        SourceRange target = outcome.target().get().at();
        return new Fix[] {Fix.replacing("Go on to " + escape.get() + " after 2 times",
                new SourceRange(target.source(), target.end(), 0),
                " at most 2 times, else " + escape.get())};
    }
}

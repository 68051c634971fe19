/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.BitSet;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.StepGraph;

/** Steps that lead round among themselves for ever. */
public final class PathWithoutEnd implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("path-without-end", Severity.ERROR, Group.PATHS,
            "From a step no conclusion, or exit of the routine, can be reached.");

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
        subject.graphs().forEach(graph -> check(StepDigraph.of(graph, subject), graph, findings));
    }

    private static void check(StepDigraph arrows, StepGraph graph, Findings findings) {
        BitSet ending = arrows.ending();
        String end = graph.exits().isEmpty() ? "a conclusion" : "an exit";
        for (int step = ending.nextClearBit(0); step < arrows.size(); step = ending.nextClearBit(step + 1)) {
            if (isEntry(step, arrows, ending)) {
                findings.report(arrows.step(step).name().at(), "Whatever comes of " + arrows.step(step).name()
                        + " and the steps behind it, " + end + " is never reached.",
                        "Let at least one outcome lead on to " + end + ".");
            }
        }
    }

    /** Where one comes in; in a part that nothing leads into, its first step. */
    private static boolean isEntry(int step, StepDigraph arrows, BitSet ending) {
        boolean entered = arrows.to(step).stream().anyMatch(ending::get);
        boolean first = arrows.first().filter(begin -> begin == step).isPresent();
        BitSet before = arrows.leadingTo(step);
        boolean lonely = before.intersects(ending) || arrows.first().filter(before::get).isPresent();
        return entered || first || !lonely && before.stream().noneMatch(earlier -> earlier < step);
    }
}

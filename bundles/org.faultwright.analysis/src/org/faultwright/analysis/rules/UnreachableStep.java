/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.BitSet;
import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A step to which no arrow leads, whatever the results. */
public final class UnreachableStep implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unreachable-step", Severity.WARNING, Group.PATHS,
            "No path from the beginning leads to a step.");

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
        for (StepGraph graph : subject.graphs()) {
            StepDigraph arrows = StepDigraph.of(graph, subject);
            arrows.first().ifPresent(first -> check(arrows, first, graph, References.of(subject), findings));
        }
    }

    private static void check(StepDigraph arrows, int first, StepGraph graph, List<Reference> references, Findings findings) {
        BitSet reached = arrows.reachable(first);
        for (int number = reached.nextClearBit(0); number < arrows.size(); number = reached.nextClearBit(number + 1)) {
            Step step = arrows.step(number);
            if (!step.name().text().isEmpty() && !step.isUnderstood()) {
                findings.report(step.name().at(), "No path from " + arrows.step(first).name() + ", where " + graph.name()
                        + " begins, leads to " + step.name() + ".", "Let an outcome lead to it, or remove it.",
                        removal(step, references));
            }
        }
    }

    /** Only where nothing else would then name a step that is gone. */
    private static Fix[] removal(Step step, List<Reference> references) {
        boolean named = references.stream().anyMatch(reference -> reference.name().text().equals(step.name().text())
                && (reference.name().at().offset() < step.at().offset() || reference.name().at().offset() >= step.at()
                .end()));
        return named ? new Fix[0] : new Fix[] {Removal.of("Remove " + step.name(), step.at())};
    }
}

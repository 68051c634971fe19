/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A table of readings whose outcomes leave a reading out or speak of one that is not taken. */
public final class TableOutcomes implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("table-outcomes", Severity.ERROR, Group.PATHS,
            "The outcomes of a table of readings do not fit its rows.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.MEANING;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (StepGraph graph : subject.graphs()) {
            for (Step step : graph.steps()) {
                List<Step.Row> rows = step instanceof Step.Measure measure ? measure.rows() : List.of();
                if (!rows.isEmpty() && !step.outcomes().isEmpty()) {
                    table(step, rows, findings);
                }
                if (step instanceof Step.Calculate calculate) {
                    formula(calculate, graph, findings);
                }
            }
        }
    }

    private static void table(Step step, List<Step.Row> rows, Findings findings) {
        boolean takesTheRest = Results.byKey(step, "anything else").isPresent();
        if (!takesTheRest && Results.byKey(step, Step.ALL_WITHIN).isEmpty()) {
            findings.report(step.name().at(), step.name() + " does not say what follows when all its readings are within their limits.",
                    "Add an outcome \"all within\" that leads to the step that follows.");
        }
        boolean takesAny = takesTheRest || Results.byKey(step, Step.ANY_OUTSIDE).isPresent();
        Set<String> points = new HashSet<>();
        for (Step.Row row : rows) {
            if (!points.add(row.point().text())) {
                findings.report(row.point().at(), step.name() + " reads " + row.point() + " twice.", "Keep one of the two rows.");
            } else if (!takesAny && Results.byKey(step, row.outside()).isEmpty()) {
                findings.report(row.limit().at(), "A reading outside its limit at " + row.point() + " leads nowhere.",
                        "Add an outcome \"" + row.outside() + "\", or \"any outside\" for all of them.");
            }
        }
    }

    private static void formula(Step.Calculate calculate, StepGraph graph, Findings findings) {
        FormulaWords.leaves(calculate).stream().filter(FormulaWords.Leaf::isReading).filter(leaf -> graph.steps().stream()
                .anyMatch(step -> step instanceof Step.Measure measure && !measure.rows().isEmpty() && step.name().text().equals(leaf.text())))
                .forEach(leaf -> findings.report(leaf.at(), leaf.text() + " takes several readings, and a formula needs one.",
                        "Measure the one it needs in a step of its own."));
    }
}

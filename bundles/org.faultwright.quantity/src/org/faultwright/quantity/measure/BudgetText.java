/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/** The lines that explain the budget of a reading. */
final class BudgetText {
    private final MeasurementBudget budget;
    private final Unit unit;
    private final List<BudgetLine> lines = new ArrayList<>();

    private BudgetText(MeasurementBudget budget) {
        this.budget = budget;
        this.unit = budget.range().upTo().unit();
    }

    static List<BudgetLine> lines(MeasurementBudget budget) {
        if (budget.ends().isEmpty()) {
            return budget.problems().stream().map(problem -> new BudgetLine("problem", problem, "", "")).toList();
        }
        BudgetText text = new BudgetText(budget);
        text.range();
        text.extras();
        text.uncertainties();
        text.lines.addAll(DecisionText.lines(budget));
        budget.problems().forEach(problem -> text.add("problem", problem, "", ""));
        return List.copyOf(text.lines);
    }

    private void range() {
        add("limits", IntervalText.of(budget.limits(), unit), "", "the step's limit, in " + unit.symbol());
        add("range in use", "up to " + budget.range().upTo() + ", last digit " + budget.range().resolution(), "",
                "the instrument's data");
    }

    /** An uncertainty is never printed smaller than it is (JCGM 100:2008, 7.2.6); where that changes its digits it is said. */
    private String rounded(Exact uncertainty) {
        return up(uncertainty, 3).equals(up(uncertainty, 12)) ? "" : ", rounded up from " + up(uncertainty, 6);
    }

    private void uncertainties() {
        for (LimitUncertainty end : budget.ends()) {
            String at = " at " + ValueText.of(end.limit(), unit);
            add("half-width" + at, "±" + up(end.halfWidth(), 3), "a = " + MeterAccuracy.words(budget.range()) + rounded(end.halfWidth()),
                    "accuracy statement of the instrument's maker");
            if (budget.extras().isEmpty()) {
                add("standard uncertainty" + at, up(end.standard(), 3), "u = a/√3", "JCGM 100:2008, 4.3.7");
            } else {
                add("instrument's share of u" + at, up(end.halfWidth().squared().dividedBy(Exact.of(3))
                        .squareRoot(RoundingMode.CEILING), 3), "u₁ = a/√3", "JCGM 100:2008, 4.3.7");
                add("combined standard uncertainty" + at, up(end.standard(), 3), "u = √(Σ uᵢ²)", "JCGM 100:2008, 5.1.2");
            }
            add("expanded uncertainty" + at, up(end.expanded(), 3), "U = k·u with k = 2, about 95 %" + rounded(end.expanded()),
                    "JCGM 100:2008, 6.2.1 and 6.3.3");
        }
    }

    private void extras() {
        for (UncertaintyContribution extra : budget.extras()) {
            boolean bounds = extra.stated() == UncertaintyContribution.Form.HALF_WIDTH;
            add(extra.label(), (bounds ? "±" : "") + ValueText.difference(extra.amount(), unit),
                    bounds ? "half-width; uᵢ = a/√3" : "standard uncertainty; uᵢ as stated",
                    bounds ? "JCGM 100:2008, 4.3.7" : "JCGM 100:2008, 4.2.3");
        }
    }

    private String up(Exact difference, int digits) {
        return ValueText.significant(difference, unit, digits, RoundingMode.UP);
    }

    private void add(String label, String value, String formula, String clause) {
        lines.add(new BudgetLine(label, value, formula, clause));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/** The lines that explain a budget. */
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
        text.ratio();
        text.zones();
        budget.problems().forEach(problem -> text.add("problem", problem, "", ""));
        return List.copyOf(text.lines);
    }

    private void range() {
        add("limits", IntervalText.of(budget.limits(), unit), "", "as written");
        add("range in use", "up to " + budget.range().upTo() + ", last digit " + budget.range().resolution(), "",
                "the instrument's data");
    }

    private void uncertainties() {
        for (LimitUncertainty end : budget.ends()) {
            String at = " at " + ValueText.of(end.limit(), unit);
            add("half-width" + at, "±" + up(end.halfWidth(), 3), "a = " + MeterAccuracy.words(budget.range()),
                    "accuracy statement of the instrument's maker");
            if (budget.extras().isEmpty()) {
                add("standard uncertainty" + at, up(end.standard(), 3), "u = a/√3", "JCGM 100:2008, 4.3.7");
            } else {
                add("instrument's share of u" + at, up(end.halfWidth().squared().dividedBy(Exact.of(3))
                        .squareRoot(RoundingMode.CEILING), 3), "u₁ = a/√3", "JCGM 100:2008, 4.3.7");
                add("combined standard uncertainty" + at, up(end.standard(), 3), "u = √(Σ uᵢ²)", "JCGM 100:2008, 5.1.2");
            }
            add("expanded uncertainty" + at, up(end.expanded(), 3), "U = k·u with k = 2, about 95 %",
                    "JCGM 100:2008, 6.2.1 and 6.3.3");
        }
    }

    private void extras() {
        for (Contribution extra : budget.extras()) {
            boolean bounds = extra.stated() == Contribution.Stated.HALF_WIDTH;
            add(extra.label(), (bounds ? "±" : "") + ValueText.difference(extra.amount(), unit),
                    bounds ? "half-width; uᵢ = a/√3" : "standard uncertainty; uᵢ as stated",
                    bounds ? "JCGM 100:2008, 4.3.7" : "JCGM 100:2008, 4.2.3");
        }
    }

    private void ratio() {
        boolean twoSided = budget.limits().width().isPresent();
        budget.ratio().ifPresent(ratio -> add("test uncertainty ratio", decimals(ratio.doubleValue(), 2),
                twoSided ? "TUR = tolerance width / (2·U)"
                        : "TUR = accepted part of the range in use / (2·U), as a one-sided limit has no width",
                twoSided ? "ANSI/NCSL Z540.3, 3.11" : "this program's convention, after ANSI/NCSL Z540.3, 3.11"));
        budget.guardFactor().ifPresent(factor -> add("guard factor", decimals(factor, 4), "√(1 − 1/TUR²)",
                "handbook to ANSI/NCSL Z540.3"));
    }

    private void zones() {
        add("decision rule", budget.rule().words(), rule(), clause());
        Zones shown = budget.zones().shown(budget.range().resolution().difference(), unit.offset());
        add("accept", IntervalText.of(shown.accept(), unit), "readings of the display", clause());
        if (!shown.doubtful().isEmpty()) {
            add("doubtful", words(shown.doubtful()), "readings of the display", clause());
        }
        add("reject", words(shown.reject()), "readings of the display", clause());
        if (budget.rule() instanceof DecisionRule.ByRisk byRisk) {
            byRisk.spread().flatMap(budget::risk).ifPresent(this::risk);
        }
    }

    private void risk(Risk risk) {
        add("false accept", percent(risk.falseAccept()), "out of tolerance and accepted, over all units", "JCGM 106:2012, 9.5");
        add("false reject", percent(risk.falseReject()), "in tolerance and not accepted, over all units", "JCGM 106:2012, 9.5");
    }

    private String rule() {
        if (budget.rule() instanceof DecisionRule.Simple) {
            return "limits as written";
        }
        String guards = budget.ends().stream().map(end -> up(end.guard(), 3)).distinct().collect(Collectors.joining(" and "));
        return budget.rule() instanceof DecisionRule.Guarded ? "guard band U = " + guards
                : "guard band " + guards + " keeps false accepts at most " + percent(((DecisionRule.ByRisk) budget.rule())
                        .mostFalseAccept().doubleValue());
    }

    private String clause() {
        return budget.rule() instanceof DecisionRule.Simple ? "JCGM 106:2012, 8.2"
                : budget.rule() instanceof DecisionRule.Guarded ? "ISO 14253-1; JCGM 106:2012, 8.3" : "JCGM 106:2012, 8.3 and 9.5";
    }

    private String words(List<Interval> zones) {
        return zones.stream().map(zone -> IntervalText.of(zone, unit)).collect(Collectors.joining("; "));
    }

    private String up(Exact difference, int digits) {
        return ValueText.significant(difference, unit, digits, RoundingMode.UP);
    }

    private static String percent(double probability) {
        return decimals(probability * 100, 2) + " %";
    }

    private static String decimals(double value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }

    private void add(String label, String value, String formula, String clause) {
        lines.add(new BudgetLine(label, value, formula, clause));
    }
}

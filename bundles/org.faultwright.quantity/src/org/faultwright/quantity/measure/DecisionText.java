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

import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.ValueText;

/** The lines on how a limit is decided: ratio, rule and zones. */
final class DecisionText {
    private final Budget budget;
    private final List<BudgetLine> lines = new ArrayList<>();

    private DecisionText(Budget budget) {
        this.budget = budget;
    }

    static List<BudgetLine> lines(Budget budget) {
        DecisionText text = new DecisionText(budget);
        text.ratio();
        text.zones();
        return text.lines;
    }

    private void ratio() {
        boolean twoSided = budget.limits().width().isPresent();
        boolean oneSided = budget.limits().lower().isPresent() != budget.limits().upper().isPresent();
        budget.ratio().ifPresent(ratio -> add("test uncertainty ratio", ratio.toDecimal(2, RoundingMode.DOWN).toPlainString(),
                twoSided ? "TUR = tolerance width / (2·U)"
                        : "TUR = limit / (2·U), as a one-sided limit has no width; the guard band decides",
                twoSided ? "ANSI/NCSL Z540.3, 3.11" : "this program's convention, after ANSI/NCSL Z540.3, 3.11; JCGM 106:2012, 8.3"));
        if (budget.ratio().isEmpty() && oneSided) {
            add("test uncertainty ratio", "none", "a one-sided limit has no width here; the zones say what U leaves of it",
                    "ANSI/NCSL Z540.3, 3.11");
        }
        if (budget instanceof MeasurementBudget measured) {
            measured.guardFactor().ifPresent(factor -> add("guard factor", decimals(factor, 4), "√(1 − 1/TUR²)",
                    "handbook to ANSI/NCSL Z540.3"));
        }
    }

    private void zones() {
        String read = budget instanceof ComputedBudget computed ? computed(computed) : "readings of the display";
        add("decision rule", budget.rule().words(), rule(), clause());
        DecisionZones shown = budget.shown();
        add("accept", IntervalText.of(shown.accept(), budget.unit()), read, clause());
        if (!shown.doubtful().isEmpty()) {
            add("doubtful", words(shown.doubtful()), read, clause());
        }
        if (!shown.reject().isEmpty()) {
            add("reject", words(shown.reject()), read, clause());
        }
        if (budget instanceof MeasurementBudget measured && budget.rule() instanceof DecisionRule.ByRisk byRisk) {
            byRisk.spread().flatMap(measured::risk).ifPresent(this::risk);
        }
    }

    private static String computed(ComputedBudget budget) {
        return budget.rule() instanceof DecisionRule.Simple ? "computed values" : "computed values"
                + budget.step().map(step -> ", rounded to " + ValueText.difference(step, budget.unit())).orElse("");
    }

    private void risk(Risk risk) {
        add("false accept", percent(risk.falseAccept()), "out of tolerance and accepted, over all units", "JCGM 106:2012, 9.5");
        add("false reject", percent(risk.falseReject()), "in tolerance and not accepted, over all units", "JCGM 106:2012, 9.5");
    }

    private String rule() {
        if (budget.rule() instanceof DecisionRule.Simple) {
            return "the limits themselves, without a guard band";
        }
        String guards = budget.ends().stream().map(end -> ValueText.significant(end.guard(), budget.unit(), 3, RoundingMode.UP))
                .distinct().collect(Collectors.joining(" and "));
        return budget.rule() instanceof DecisionRule.Guarded ? "guard band U = " + guards
                : "guard band " + guards + " keeps false accepts at most " + percent(((DecisionRule.ByRisk) budget.rule())
                        .mostFalseAccept().doubleValue());
    }

    private String clause() {
        return budget.rule() instanceof DecisionRule.Simple ? "JCGM 106:2012, 8.2"
                : budget.rule() instanceof DecisionRule.Guarded ? "ISO 14253-1; JCGM 106:2012, 8.3" : "JCGM 106:2012, 8.3 and 9.5";
    }

    private String words(List<Interval> zones) {
        return zones.stream().map(zone -> IntervalText.of(zone, budget.unit())).collect(Collectors.joining("; "));
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

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/** The lines that explain the budget of a computed value. */
final class ComputedText {
    private final ComputedBudget budget;
    private final Unit unit;
    private final List<BudgetLine> lines = new ArrayList<>();

    private ComputedText(ComputedBudget budget) {
        this.budget = budget;
        this.unit = budget.unit();
    }

    static List<BudgetLine> lines(ComputedBudget budget) {
        if (!budget.isComplete()) {
            return budget.problems().stream().map(problem -> new BudgetLine("problem", problem, "", "")).toList();
        }
        ComputedText text = new ComputedText(budget);
        text.add("limits", IntervalText.of(budget.limits(), text.unit), "", "the step's limit, in " + text.unit.symbol());
        boolean once = budget.computed().stream().map(ComputedEnd::inputs).distinct().count() < 2;
        budget.computed().stream().limit(once ? 1 : 2).forEach(end -> text.end(end, once ? "" : " at "
                + ValueText.of(end.limit(), text.unit)));
        text.lines.addAll(DecisionText.lines(budget));
        return List.copyOf(text.lines);
    }

    private void end(ComputedEnd end, String at) {
        end.inputs().forEach(input -> input(end, input, at));
        add("result at these readings", result(end), "y = " + budget.formula().plain(), "the step");
        correlation(end, at);
        add("combined standard uncertainty" + at, up(end.standard()), end.standard() > end.independent()
                ? "u = √(Σ cᵢ²uᵢ² + 2 Σ cᵢcⱼuᵢuⱼ)" : "u = √(Σ cᵢ²uᵢ²), cᵢ = ∂y/∂xᵢ", "JCGM 100:2008, "
                + (end.standard() > end.independent() ? "5.2.2" : "5.1.2"));
        add("expanded uncertainty" + at, up(2 * end.standard()), "U = k·u with k = 2, about 95 %",
                "JCGM 100:2008, 6.2.1 and 6.3.3");
    }

    private String result(ComputedEnd end) {
        Exact expanded = ComputedEnd.exact(2 * end.standard());
        int places = expanded.signum() > 0 ? budget.places(expanded) + 1 : 6;
        return ValueText.rounded(ComputedEnd.exact(end.result()), unit, places, RoundingMode.HALF_UP);
    }

    private void input(ComputedEnd end, ReadingInput input, String at) {
        Unit own = input.range().upTo().unit();
        add(input.name() + at, ValueText.of(input.value(), own), input.choice(), "where its uncertainty is evaluated");
        add("  half-width of " + input.name(), "±" + up(input.halfWidth(), own), "a = " + MeterAccuracy.words(input.range())
                + "; " + input.instrument() + ", range up to " + input.range().upTo(),
                "accuracy statement of the instrument's maker");
        input.extras().forEach(extra -> add("  " + extra.label(), "±" + ValueText.difference(extra.amount(), own),
                "half-width", "the step"));
        add("  u of " + input.name(), up(input.variance().squareRoot(RoundingMode.CEILING), own),
                input.extras().isEmpty() ? "u = a/√3" : "u = √(Σ aᵢ²/3)", "JCGM 100:2008, 4.3.7"
                + (input.extras().isEmpty() ? "" : " and 5.1.2"));
        add("  share of " + input.name(), up(end.contribution(input)) + ", " + percent(end.share(input)) + " of u²",
                "|c|·u with c = ∂y/∂" + input.name() + " = " + slope(end.sensitivities().get(input.name()), input),
                "JCGM 100:2008, 5.1.2 and 5.1.3");
    }

    private void correlation(ComputedEnd end, String at) {
        for (List<ReadingInput> group : ComputedEnd.groups(end.inputs())) {
            String names = group.stream().map(ReadingInput::name).collect(Collectors.joining(" and "));
            add("correlation" + at, names + " share a range", "r is 0 or 1, whichever gives the larger u"
                    + (end.standard() > end.independent() ? "; r = 0 alone would give " + up(end.independent()) : ""),
                    "JCGM 100:2008, 5.2.2 and F.1.2.3");
        }
    }

    /** In units of the result for one unit of the reading, as the two are printed. */
    private String slope(double slope, ReadingInput input) {
        Unit own = input.range().upTo().unit();
        double printed = slope * own.factor().doubleValue() / unit.factor().doubleValue();
        String number = plain(printed);
        String over = own.offset().signum() == 0 ? own.symbol() : "K";
        String top = unit.symbol().isEmpty() ? "1" : unit.offset().signum() == 0 ? unit.symbol() : "K";
        return unit.dimension().equals(own.dimension()) && top.equals(over) || own.dimension().equals(Dimension.NONE)
                && over.isEmpty() ? number : number + " " + top + " per " + over;
    }

    private static String plain(double value) {
        String text = Double.isFinite(value) ? ComputedEnd.exact(value).toDecimal(new MathContext(4)).stripTrailingZeros().toString()
                : String.valueOf(value);
        return text.contains("E") && Math.abs(value) > 1e-6 && Math.abs(value) < 1e7
                ? new BigDecimal(text).toPlainString() : text;
    }

    private String up(double difference) {
        return up(ComputedEnd.exact(difference), unit);
    }

    private static String up(Exact difference, Unit unit) {
        return ValueText.significant(difference, unit, 3, RoundingMode.UP);
    }

    private static String percent(double part) {
        return part < 0.005 ? "under 1 %" : String.format(Locale.ROOT, "%.0f %%", part * 100);
    }

    private void add(String label, String value, String formula, String clause) {
        lines.add(new BudgetLine(label, value, formula, clause));
    }
}

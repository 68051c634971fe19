/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.faultwright.quantity.measure.MeasurementSamples.accuracy;
import static org.faultwright.quantity.measure.MeasurementSamples.atLeast;
import static org.faultwright.quantity.measure.MeasurementSamples.atMost;
import static org.faultwright.quantity.measure.MeasurementSamples.closed;
import static org.faultwright.quantity.measure.MeasurementSamples.dcVoltage;
import static org.faultwright.quantity.measure.MeasurementSamples.quantity;
import static org.faultwright.quantity.measure.MeasurementSamples.range;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.junit.jupiter.api.Test;

class MeasurementBudgetTest {
    private static final DecisionRule GUARDED = new DecisionRule.Guarded();
    private static final DecisionRule SIMPLE = new DecisionRule.Simple();

    private static MeasurementBudget budget(Interval limits, MeterRange range, DecisionRule rule) {
        return MeasurementBudget.of(limits, range, List.of(), rule);
    }

    // JCGM 100:2008, 4.3.7, example 2: 14e-6 of reading + 2e-6 of the 1 V range at 0.928571 V: a = 15 µV, u = 8.7 µV.
    @Test
    void should_reproduce_the_voltmeter_of_the_guide() {
        MeterRange range = range(QuantityKind.DC_VOLTAGE, "1 V", "0.1 uV", accuracy("0.0014", "0.0002", "0"));

        LimitUncertainty end = budget(atLeast("0.928571"), range, GUARDED).ends().get(0);

        assertEquals(Exact.of("14.999994e-6"), end.halfWidth());
        assertEquals(8.7e-6, end.standard().doubleValue(), 0.05e-6);
    }

    // University laboratory note on digital multimeters: 32.00 V ± (2.5 % + 3 digits) is ± 0.83 V.
    // Common worked example: 100.0 V ± (1 % + 2 digits of 0.1 V) lies between 98.8 V and 101.2 V.
    @Test
    void should_reproduce_accuracy_statements_of_hand_meters() {
        assertEquals(Exact.of("0.83"), MeterAccuracy.halfWidth(dcVoltage("60 V", "10 mV", "2.5", "3"), Exact.of(32)));
        Exact half = MeterAccuracy.halfWidth(dcVoltage("600 V", "0.1 V", "1", "2"), Exact.of(100));
        assertEquals(Exact.of("98.8"), Exact.of(100).minus(half));
        assertEquals(Exact.of("101.2"), Exact.of(100).plus(half));
    }

    @Test
    void should_take_a_percentage_of_the_temperature_shown() {
        MeterRange range = range(QuantityKind.TEMPERATURE, "400 degC", "0.1 degC", accuracy("1", "0", "0"));
        assertEquals(Exact.ONE, MeterAccuracy.halfWidth(range, Exact.of("373.15")));
    }

    @Test
    void should_combine_contributions_by_how_they_are_stated() {
        MeterRange range = dcVoltage("60 V", "10 mV", "0", "0");
        List<UncertaintyContribution> extras = List.of(UncertaintyContribution.halfWidth("probe", quantity("3 mV")),
                UncertaintyContribution.standard("repeatability", quantity("1 mV")));

        MeasurementBudget budget = MeasurementBudget.of(closed("1", "2"), range, extras, GUARDED);

        // (3 mV)²/3 + (1 mV)² = (2 mV)², U = 4 mV; JCGM 100:2008, 5.1.2.
        assertEquals(Exact.of("4e-6"), budget.ends().get(0).variance());
        assertEquals(Exact.of("0.004"), budget.ends().get(0).expanded());
        assertEquals(Optional.of(Exact.of(125)), budget.ratio());
        assertEquals(closed("1.004", "1.996"), budget.zones().accept());
    }

    @Test
    void should_split_the_line_under_every_rule() {
        for (DecisionRule rule : List.of(SIMPLE, GUARDED,
                new DecisionRule.ByRisk(Optional.of(new UnitSpread(Optional.empty(), Exact.ONE)), Exact.of("0.001")))) {
            DecisionZones zones = budget(closed("22.8", "25.2"), dcVoltage("60 V", "10 mV", "0.5", "2"), rule).zones();
            assertEquals(Verdict.ACCEPT, Verdict.of(Exact.of(24), zones));
            assertEquals(Verdict.REJECT, Verdict.of(Exact.of("22.5"), zones));
            assertEquals(Verdict.REJECT, Verdict.of(Exact.of(26), zones));
            assertEquals(rule.equals(SIMPLE) ? Verdict.ACCEPT : Verdict.DOUBTFUL, Verdict.of(Exact.of("22.8"), zones));
        }
    }

    @Test
    void should_leave_only_doubt_where_the_instrument_is_too_coarse() {
        MeasurementBudget budget = budget(closed("4.9", "5.1"), dcVoltage("60 V", "0.1 V", "1", "2"), GUARDED);

        assertTrue(budget.ratio().orElseThrow().compareTo(Exact.ONE) < 0);
        assertTrue(budget.zones().accept().isEmpty());
        assertEquals(Verdict.DOUBTFUL, Verdict.of(Exact.of(5), budget.zones()));
        assertEquals(Verdict.REJECT, Verdict.of(Exact.of(6), budget.zones()));
        assertEquals(Optional.empty(), budget.guardFactor());
    }

    @Test
    void should_say_how_a_one_sided_limit_is_rated() {
        MeterRange range = dcVoltage("6 V", "1 mV", "0", "10");
        double expanded = 2 * 0.01 / Math.sqrt(3);

        assertEquals(3 / (2 * expanded), budget(atLeast("3"), range, GUARDED).ratio().orElseThrow().doubleValue(), 1e-9);
        assertEquals(1 / (2 * expanded), budget(atMost("1"), range, GUARDED).ratio().orElseThrow().doubleValue(), 1e-9);
        assertEquals(1 / (2 * expanded), budget(atMost("-1"), range, GUARDED).ratio().orElseThrow().doubleValue(), 1e-9);
        assertTrue(budget(atMost("1"), range, GUARDED).explain().toString().contains("this program's convention"));
    }

    // Guard factor √(1 − 1/TUR²), handbook to ANSI/NCSL Z540.3: 0.968 at a ratio of 4.
    @Test
    void should_give_the_guard_factor() {
        MeasurementBudget budget = MeasurementBudget.of(closed("-2", "2"), dcVoltage("6 V", "1 mV", "0", "0"),
                List.of(UncertaintyContribution.standard("all", quantity("0.25 V"))), SIMPLE);
        assertEquals(Math.sqrt(1 - 1 / 16.0), budget.guardFactor().orElseThrow(), 1e-12);
    }

    @Test
    void should_keep_the_risk_asked_for() {
        UnitSpread spread = new UnitSpread(Optional.empty(), Exact.of("0.6"));
        MeasurementBudget budget = budget(closed("23.2", "24.8"), dcVoltage("60 V", "10 mV", "1", "2"),
                new DecisionRule.ByRisk(Optional.of(spread), Exact.of("0.005")));

        Risk risk = budget.risk(spread).orElseThrow();
        assertTrue(risk.falseAccept() <= 0.005 && risk.falseAccept() > 0.0049, "risk " + risk);
        assertTrue(budget.ends().get(0).guard().compareTo(Exact.ZERO) > 0);
    }

    @Test
    void should_fall_back_to_the_guarded_rule_without_a_spread() {
        MeasurementBudget budget = budget(closed("23", "25"), dcVoltage("60 V", "10 mV", "0.5", "2"),
                new DecisionRule.ByRisk(Optional.empty()));
        assertEquals(GUARDED, budget.rule());
        assertTrue(budget.problems().get(0).contains("how much good units vary"));
    }

    @Test
    void should_explain_every_number_with_its_clause() {
        List<BudgetLine> lines = budget(closed("22.8", "25.2"), dcVoltage("60 V", "10 mV", "0.5", "2"), GUARDED).explain();
        String text = lines.stream().map(line -> line.label() + ": " + line.value()).collect(Collectors.joining("\n"));

        assertTrue(text.contains("half-width at 22.8 V: ±134 mV"), text);
        assertTrue(text.contains("expanded uncertainty at 25.2 V: 169 mV"), text);
        assertTrue(text.contains("accept: 22.96 V to 25.03 V"), text);
        assertTrue(text.contains("doubtful: 22.65 V to 22.95 V; 25.04 V to 25.36 V"), text);
        assertTrue(text.contains("reject: at most 22.64 V; at least 25.37 V"), text);
        assertTrue(lines.stream().allMatch(line -> !line.clause().isBlank()));
    }

    @Test
    void should_tell_a_limit_of_another_kind() {
        Limit volts = new Limit.NotAbove(quantity("5 V"), true, "at most 5 V");
        MeasurementBudget budget = MeasurementBudget.of(volts,
                range(QuantityKind.RESISTANCE, "600 ohm", "0.1 ohm", accuracy("1", "0", "2")), List.of(), GUARDED);
        assertTrue(budget.problems().get(0).contains("at most 5 V"));
        assertFalse(budget.isComplete());
        Limit level = new Limit.NotAbove(quantity("5 dBV"), true, "at most 5 dBV");
        assertFalse(MeasurementBudget.of(level, dcVoltage("6 V", "1 mV", "1", "2"), List.of(), GUARDED).isComplete());
    }

    @Test
    void should_answer_nonsense_with_a_sentence() {
        MeterRange good = dcVoltage("60 V", "10 mV", "0.5", "2");
        List<MeasurementBudget> budgets = List.of(
                budget(closed("1", "2"), dcVoltage("60 V", "10 mV", "-1", "2"), GUARDED),
                budget(closed("1", "2"), dcVoltage("60 V", "0 V", "1", "2"), GUARDED),
                budget(closed("1", "2"), dcVoltage("60 V", "-1 V", "1", "2"), GUARDED),
                budget(closed("1", "2"), dcVoltage("0 V", "1 mV", "1", "2"), GUARDED),
                budget(closed("1", "2"), dcVoltage("-6 V", "1 mV", "1", "2"), GUARDED),
                budget(closed("1", "2"), dcVoltage("60 ohm", "10 mV", "1", "2"), GUARDED),
                budget(closed("1", "2"), dcVoltage("60", "10 mV", "1", "2"), GUARDED),
                budget(closed("1", "2"), dcVoltage("60 foo", "10 dBV", "1", "2"), GUARDED),
                budget(closed("2", "1"), good, GUARDED),
                budget(closed("1", "1e2000"), good, GUARDED),
                MeasurementBudget.of(closed("1", "2"), good, List.of(UncertaintyContribution.standard("x", quantity("-1 V"))), GUARDED),
                budget(closed("1", "2"), good, new DecisionRule.ByRisk(Optional.of(new UnitSpread(Optional.empty(), Exact.ZERO)))),
                budget(atLeast("1"), good, new DecisionRule.ByRisk(Optional.of(new UnitSpread(Optional.empty(), Exact.ONE)))),
                budget(closed("1", "2"), good, new DecisionRule.ByRisk(Optional.of(new UnitSpread(Optional.empty(), Exact.of("1e-1999"))))));
        for (MeasurementBudget budget : budgets) {
            assertEquals(1, budget.problems().size(), budget.problems().toString());
            assertTrue(budget.problems().get(0).endsWith("."));
            assertTrue(budget.explain().toString().contains("problem"));
        }
    }

    @Test
    void should_decide_tolerances_of_no_width_and_instruments_without_error() {
        MeterRange perfect = dcVoltage("60 V", "10 mV", "0", "0");
        assertEquals(Optional.empty(), budget(closed("1", "2"), perfect, GUARDED).ratio());
        assertEquals(closed("1", "2"), budget(closed("1", "2"), perfect, GUARDED).zones().accept());
        assertEquals(Optional.empty(), budget(closed("1", "1"), dcVoltage("60 V", "10 mV", "1", "0"), GUARDED).ratio());
        assertTrue(budget(Interval.EVERYTHING, perfect, GUARDED).zones().reject().isEmpty());
        assertTrue(budget(Interval.EVERYTHING, perfect, GUARDED).explain().isEmpty());
    }

    @Test
    void should_never_rate_a_one_sided_limit_better_in_a_coarser_range() {
        for (Interval limit : List.of(atLeast("3"), atMost("3"))) {
            Exact fine = budget(limit, dcVoltage("6 V", "1 mV", "0.5", "2"), GUARDED).ratio().orElseThrow();
            Exact coarse = budget(limit, dcVoltage("60 V", "10 mV", "0.5", "2"), GUARDED).ratio().orElseThrow();
            Exact coarser = budget(limit, dcVoltage("600 V", "100 mV", "0.5", "2"), GUARDED).ratio().orElseThrow();

            assertTrue(fine.compareTo(coarse) > 0 && coarse.compareTo(coarser) > 0, limit.toString());
        }
    }
}

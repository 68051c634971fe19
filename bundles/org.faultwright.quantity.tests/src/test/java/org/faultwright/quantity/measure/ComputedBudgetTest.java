/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

import org.faultwright.quantity.Accuracy;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;
import org.faultwright.quantity.measure.ComputedBudget.Scale;
import org.junit.jupiter.api.Test;

class ComputedBudgetTest {
    private static final Expression OUT = new Expression.Reading("Out");
    private static final Expression IN = new Expression.Reading("In");
    private static final Unit NUMBER = Units.named("1");

    private static MeterRange volts(String upTo, String resolution, String percent, String digits) {
        return new MeterRange(QuantityKind.DC_VOLTAGE, Optional.empty(), Quantity.of(upTo, "V"), Quantity.of(resolution, "V"),
                new Accuracy(Exact.of(percent), Exact.ZERO, Exact.of(digits), Optional.empty()), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), true, "");
    }

    private static ReadingInput reading(String name, String value, String instrument, MeterRange range, UncertaintyContribution... extras) {
        return new ReadingInput(name, Exact.of(value), "as stated", instrument, range, List.of(extras));
    }

    private static Interval between(String low, String high) {
        return Interval.from(Bound.including(Exact.of(low)), Bound.including(Exact.of(high)));
    }

    private static ComputedBudget budget(Expression formula, Interval limits, DecisionRule rule, ReadingInput... readings) {
        return ComputedBudget.of(formula, limits, NUMBER, Scale.RATIO, limit -> List.of(readings), rule);
    }

    /**
     * A divider of one half, by hand: Out 2.5 V ± (0.5 % + 2 mV) = ±14.5 mV, In 5 V ± (0.5 % + 2 mV) = ±27 mV, on two instruments.
     * c₁ = 1/5 per V, c₂ = −0.1 per V; u² = (0.2·0.0145/√3)² + (0.1·0.027/√3)²; limits 0.5 ± 2 %, wide 0.02.
     */
    @Test
    void should_give_the_ratio_of_a_divider_as_computed_by_hand() {
        MeterRange range = volts("6", "0.001", "0.5", "2");
        ComputedBudget divider = budget(new Expression.Quotient(OUT, IN), between("0.49", "0.51"), new DecisionRule.Guarded(),
                reading("Out", "2.5", "One", range), reading("In", "5", "Other", range));
        double u = Math.hypot(0.2 * 0.0145, 0.1 * 0.027) / Math.sqrt(3);
        assertEquals(u, divider.ends().get(0).standard().doubleValue(), 1e-12);
        assertEquals(0.02 / (4 * u), divider.ratio().orElseThrow().doubleValue(), 1e-9);
        assertEquals(0.49 + 2 * u, divider.zones().accept().lower().orElseThrow().value().doubleValue(), 1e-12);
        ComputedEnd end = divider.computed().get(0);
        assertEquals(Math.pow(0.2 * 0.0145 / Math.sqrt(3) / u, 2), end.share(end.inputs().get(0)), 1e-9);
        assertEquals(Optional.of("Out"), divider.largestShare());
    }

    /** Sums of readings with one range: r = 1 adds the shares (JCGM 100:2008, 5.2.2, note 1); for differences r = 0 is the larger. */
    @Test
    void should_not_understate_what_readings_with_one_range_share() {
        MeterRange range = volts("6", "0.001", "0", "10");
        ReadingInput[] shared = {reading("Out", "2", "One", range), reading("In", "3", "One", range)};
        double u = 0.01 / Math.sqrt(3);
        ComputedBudget sum = budget(new Expression.Sum(OUT, IN), between("4", "6"), new DecisionRule.Simple(), shared);
        assertEquals(2 * u, sum.ends().get(0).standard().doubleValue(), 1e-12);
        ComputedBudget difference = budget(new Expression.Difference(OUT, IN), between("-2", "0"), new DecisionRule.Simple(), shared);
        assertEquals(Math.sqrt(2) * u, difference.ends().get(0).standard().doubleValue(), 1e-12);
        ComputedBudget apart = budget(new Expression.Sum(OUT, IN), between("4", "6"), new DecisionRule.Simple(),
                shared[0], reading("In", "3", "Other", range));
        assertEquals(Math.sqrt(2) * u, apart.ends().get(0).standard().doubleValue(), 1e-12);
        assertTrue(sum.explain().toString().contains("5.2.2"));
        assertFalse(apart.explain().toString().contains("5.2.2"));
    }

    /** Only the instrument's own errors can be shared, not what the step allows for each reading. */
    @Test
    void should_keep_allowances_apart() {
        MeterRange range = volts("6", "0.001", "0", "10");
        UncertaintyContribution probe = new UncertaintyContribution("probe", Exact.of("0.02"), UncertaintyContribution.Form.HALF_WIDTH);
        ComputedBudget sum = budget(new Expression.Sum(OUT, IN), between("4", "6"), new DecisionRule.Simple(),
                reading("Out", "2", "One", range, probe), reading("In", "3", "One", range, probe));
        assertEquals(Math.sqrt((0.02 * 0.02 + 2 * 0.02 * 0.02) / 3), sum.ends().get(0).standard().doubleValue(), 1e-12);
    }

    /**
     * JCGM 100:2008, H.2, with the readings taken as independent: V 4.9990 V (u 0.0032 V), I 19.6610 mA (u 0.0095 mA) give
     * Z = V/I = 254.26 ohm with u = Z·√((0.0032/4.999)² + (0.0095/19.661)²) = 0.204 ohm; with the correlation −0.36 of table H.2
     * the standard gives 0.236 ohm. Here each u comes from a half-width a = u·√3.
     */
    @Test
    void should_propagate_the_impedance_of_the_guide() {
        MeterRange volts = volts("10", "0.0000001", "0", "0");
        MeterRange amperes = new MeterRange(QuantityKind.DC_CURRENT, Optional.empty(), Quantity.of("1", "A"),
                Quantity.of("0.0000001", "A"), volts.accuracy(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), true, "");
        UncertaintyContribution ofVolts = new UncertaintyContribution("repeatability", Exact.of("0.0032"), UncertaintyContribution.Form.STANDARD_UNCERTAINTY);
        UncertaintyContribution ofAmperes = new UncertaintyContribution("repeatability", Exact.of("0.0000095"), UncertaintyContribution.Form.STANDARD_UNCERTAINTY);
        ComputedBudget impedance = ComputedBudget.of(new Expression.Quotient(OUT, IN), between("253", "256"), Units.named("ohm"),
                Scale.RATIO, limit -> List.of(reading("Out", "4.9990", "One", volts, ofVolts),
                        reading("In", "0.0196610", "Other", amperes, ofAmperes)), new DecisionRule.Simple());
        assertEquals(254.260, impedance.computed().get(0).result(), 5e-4);
        assertEquals(254.26 * Math.hypot(0.0032 / 4.999, 0.0095 / 19.661), impedance.computed().get(0).standard(), 1e-4);
    }

    /** JCGM 101:2008: the propagated u agrees with the spread of half a million drawn values, the readings being rectangular. */
    @Test
    void should_agree_with_a_simulation() {
        MeterRange range = volts("6", "0.001", "0.5", "2");
        Expression formula = new Expression.Quotient(new Expression.Difference(OUT, IN), new Expression.Sum(OUT, IN));
        ComputedBudget computed = budget(formula, between("0.2", "0.3"), new DecisionRule.Simple(),
                reading("Out", "5", "One", range), reading("In", "3", "Other", range));
        Map<String, Estimate> readings = new TreeMap<>();
        computed.computed().get(0).inputs().forEach(input -> readings.put(input.name(),
                new Estimate(input.value(), input.halfWidth().squared().dividedBy(Exact.of(3)).squareRoot(RoundingMode.CEILING))));
        Simulation drawn = Simulation.rectangular(formula, readings, 20260131, 500_000);
        double u = computed.ends().get(0).standard().doubleValue();
        assertEquals(u, drawn.standard(), u * 0.01);
    }

    /** JCGM 100:2008, 7.2.6: two digits of U are enough, in zones too. */
    @Test
    void should_show_zones_to_two_digits_of_the_expanded_uncertainty() {
        MeterRange range = volts("6", "0.001", "0.5", "2");
        ComputedBudget divider = budget(new Expression.Quotient(OUT, IN), between("0.49", "0.51"), new DecisionRule.Guarded(),
                reading("Out", "2.5", "One", range), reading("In", "5", "Other", range));
        // U = 0.004576: zones in steps of 0.0001, rounded inward
        assertEquals(Exact.of("0.4946"), divider.shown().accept().lower().orElseThrow().value());
        assertEquals(Exact.of("0.5054"), divider.shown().accept().upper().orElseThrow().value());
    }

    @Test
    void should_give_one_sided_limits_no_ratio_and_tell_when_they_are_lost() {
        MeterRange range = volts("6", "0.001", "0", "10");
        Interval small = Interval.below(Bound.including(Exact.of("0.01")));
        ComputedBudget lost = budget(new Expression.Difference(OUT, IN), small, new DecisionRule.Guarded(),
                reading("Out", "2", "One", range), reading("In", "2", "Other", range));
        assertEquals(Optional.empty(), lost.ratio());
        assertTrue(lost.isLostInUncertainty());
        assertTrue(lost.explain().stream().anyMatch(line -> line.label().equals("test uncertainty ratio") && line.value().equals("none")));
        ComputedBudget kept = budget(new Expression.Difference(OUT, IN), Interval.below(Bound.including(Exact.ONE)),
                new DecisionRule.Guarded(), reading("Out", "2", "One", range), reading("In", "2", "Other", range));
        assertFalse(kept.isLostInUncertainty());
    }

    @Test
    void should_say_in_one_sentence_what_cannot_be_computed() {
        MeterRange range = volts("6", "0.001", "0.5", "2");
        MeterRange endless = volts("1e400", "1e399", "0.5", "2");
        List<ComputedBudget> budgets = List.of(
                budget(new Expression.Quotient(OUT, IN), between("0", "1"), new DecisionRule.Guarded(),
                        reading("Out", "1", "One", range), reading("In", "0", "One", range)),
                budget(new Expression.Product(OUT, IN), between("0", "1"), new DecisionRule.Guarded(),
                        reading("Out", "1e300", "One", endless), reading("In", "1e300", "One", endless)),
                budget(new Expression.Call(Function.SQRT, List.of(OUT)), between("0", "1"), new DecisionRule.Guarded(),
                        reading("Out", "-1", "One", range)),
                budget(new Expression.Sum(OUT, IN), between("0", "1"), new DecisionRule.Guarded(),
                        reading("Out", "1", "One", range)));
        for (ComputedBudget budget : budgets) {
            assertEquals(1, budget.problems().size(), budget.problems().toString());
            assertTrue(budget.problems().get(0).endsWith("."), budget.problems().toString());
            assertEquals(1, budget.explain().size());
            assertEquals(Optional.empty(), budget.ratio());
        }
    }

    @Test
    void should_find_the_reading_at_which_the_result_lies_at_the_limit() {
        Expression ratio = new Expression.Quotient(OUT, IN);
        assertEquals(2.45, RootSearch.of(ratio, Map.of("In", 5.0), "Out", 0, 6, 0.49).orElseThrow(), 1e-9);
        assertEquals(OptionalDouble.empty(), RootSearch.of(ratio, Map.of("In", 5.0), "Out", 0, 1, 0.49));
        assertEquals(OptionalDouble.empty(), RootSearch.of(ratio, Map.of("In", 0.0), "Out", 0, 1, 0.49));
        Expression apart = new Expression.Call(Function.ABS, List.of(new Expression.Difference(OUT, IN)));
        assertEquals(3.5, RootSearch.of(apart, Map.of("In", 3.0), "Out", 0, 6, 0.5).orElseThrow(), 1e-9);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.Scale;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;

class MeasurementProperties {
    @Provide
    Arbitrary<MeterRange> ranges() {
        return Combinators.combine(Arbitraries.of("6 V", "60 V", "600 V"), Arbitraries.of("1 mV", "10 mV", "0.1 V", "0.5 V"),
                Arbitraries.of("0", "0.05", "0.5", "3"), Arbitraries.integers().between(0, 20))
                .as((upTo, step, percent, digits) -> MeasurementSamples.dcVoltage(upTo, step, percent, digits.toString()));
    }

    @Provide
    Arbitrary<Interval> limits() {
        Arbitrary<Bound> end = Combinators.combine(Arbitraries.bigDecimals().between(BigDecimal.valueOf(-6), BigDecimal.valueOf(6))
                .ofScale(3), Arbitraries.of(true, false)).as((value, included) -> new Bound(Exact.of(value), included));
        return Combinators.combine(end.optional(0.9), end.optional(0.9)).as(MeasurementProperties::inOrder);
    }

    private static Interval inOrder(Optional<Bound> one, Optional<Bound> other) {
        boolean turned = one.isPresent() && other.isPresent() && one.get().value().compareTo(other.get().value()) > 0;
        return turned ? new Interval(other, one) : new Interval(one, other);
    }

    @Provide
    Arbitrary<DecisionRule> rules() {
        return Arbitraries.of(new DecisionRule.Simple(), new DecisionRule.Guarded(),
                new DecisionRule.ByRisk(Optional.of(new UnitSpread(Optional.of(Exact.ZERO), Exact.of(2))), Exact.of("0.001")));
    }

    @Property
    void should_put_every_reading_into_exactly_one_zone(@ForAll("limits") Interval limits, @ForAll("ranges") MeterRange range,
            @ForAll("rules") DecisionRule rule, @ForAll @BigRange(min = "-9", max = "9") @Scale(3) BigDecimal number) {
        if (limits.isEmpty()) {
            return;
        }
        DecisionZones zones = MeasurementBudget.of(limits, range, List.of(), rule).zones();
        for (Exact reading : Stream.concat(Stream.of(Exact.of(number)), ends(zones)).toList()) {
            long holding = Stream.of(Stream.of(zones.accept()), zones.doubtful().stream(), zones.reject().stream())
                    .flatMap(zone -> zone).filter(zone -> zone.contains(reading)).count();
            assertEquals(1, holding, reading + " in " + zones);
        }
    }

    private static Stream<Exact> ends(DecisionZones zones) {
        return Stream.concat(zones.doubtful().stream(), Stream.of(zones.accept()))
                .flatMap(zone -> Stream.of(zone.lower(), zone.upper())).flatMap(Optional::stream).map(Bound::value);
    }

    @Property
    void should_never_accept_what_the_limits_refuse(@ForAll("limits") Interval limits, @ForAll("ranges") MeterRange range,
            @ForAll("rules") DecisionRule rule, @ForAll @BigRange(min = "-9", max = "9") @Scale(3) BigDecimal number) {
        if (limits.isEmpty()) {
            return;
        }
        DecisionZones zones = MeasurementBudget.of(limits, range, List.of(), rule).zones();
        Exact reading = Exact.of(number);
        assertTrue(limits.contains(reading) ? Verdict.of(reading, zones) != Verdict.REJECT : Verdict.of(reading, zones) != Verdict.ACCEPT);
    }

    @Property
    void should_never_move_a_reading_across_a_limit_by_rounding(@ForAll("limits") Interval limits, @ForAll("ranges") MeterRange range,
            @ForAll("rules") DecisionRule rule, @ForAll @BigRange(min = "-9", max = "9") @Scale(1) BigDecimal steps) {
        if (limits.isEmpty()) {
            return;
        }
        Exact step = range.resolution().base();
        DecisionZones exact = MeasurementBudget.of(limits, range, List.of(), rule).zones();
        DecisionZones shown = exact.shown(step, Exact.ZERO);
        Exact reading = Exact.of(steps.toBigInteger().longValue()).times(step);

        assertEquals(Verdict.of(reading, exact), Verdict.of(reading, shown));
        assertTrue(exact.accept().contains(shown.accept()));
    }

    @Property
    void should_never_lower_the_ratio_by_widening_a_tolerance(@ForAll("limits") Interval limits, @ForAll("ranges") MeterRange range,
            @ForAll @BigRange(min = "0", max = "5") @Scale(3) BigDecimal more) {
        // a limit without width has no ratio: a rule reports it
        if (limits.isEmpty() || limits.width().map(width -> width.signum() == 0).orElse(true)) {
            return;
        }
        // An end with a larger reading may carry a larger uncertainty; the share of the reading is left out here.
        MeterRange steady = new MeterRange(range.kind(), range.from(), range.upTo(), range.resolution(),
                MeasurementSamples.accuracy("0", "0.1", range.accuracy().digits().toString()), range.input(), range.inputCapacitance(),
                range.burden(), range.lowestFrequency(), range.highestFrequency(), range.trueRms(), range.sensor());
        Interval wider = new Interval(limits.lower().map(end -> new Bound(end.value().minus(Exact.of(more)), end.included())),
                limits.upper().map(end -> new Bound(end.value().plus(Exact.of(more)), end.included())));

        Exact before = ratio(limits, steady);
        Exact after = ratio(wider, steady);

        assertTrue(after.compareTo(before) >= 0, before + " became " + after);
    }

    private static Exact ratio(Interval limits, MeterRange range) {
        return MeasurementBudget.of(limits, range, List.of(), new DecisionRule.Guarded()).ratio().orElseThrow();
    }

    @Property
    void should_never_report_less_uncertainty_than_there_is(@ForAll("ranges") MeterRange range,
            @ForAll @BigRange(min = "-6", max = "6") @Scale(3) BigDecimal place) {
        LimitUncertainty end = LimitUncertainty.at(Exact.of(place), range, List.of());
        assertTrue(end.expanded().squared().compareTo(end.variance().times(4)) >= 0);
        assertEquals(2 * end.halfWidth().doubleValue() / Math.sqrt(3), end.expanded().doubleValue(), 1e-12);
    }
}

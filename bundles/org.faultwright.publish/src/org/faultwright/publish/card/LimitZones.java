/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.DoubtfulReadings;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.ComputedBudget;
import org.faultwright.quantity.measure.DecisionRule;
import org.faultwright.quantity.measure.DecisionZones;

/**
 * The readings or computed values that are accepted, in doubt and rejected, to the digits that are shown or worth computing.
 *
 * @param rule     in use for this step
 * @param computed whether the values are computed from readings
 */
record LimitZones(DecisionZones zones, Unit unit, DecisionRule rule, boolean computed) {

    /** Absent where the limit itself decides, or the instrument is not known well enough. */
    static Optional<LimitZones> of(Procedure procedure, Step step) {
        return DoubtfulReadings.of(procedure, step).map(used ->
                new LimitZones(used.shown(), used.unit(), used.rule(), used instanceof ComputedBudget));
    }

    /** The readings of one result, such as {@code 22.93 V to 25.07 V}; empty for a result of another kind. */
    String readings(String result) {
        return switch (result) {
            case Step.WITHIN -> words(Stream.of(zones.accept()));
            case Step.DOUBTFUL -> words(zones.doubtful().stream());
            case Step.BELOW -> words(zones.reject().stream().filter(zone -> zone.lower().isEmpty()));
            case Step.ABOVE -> words(zones.reject().stream().filter(zone -> zone.upper().isEmpty()));
            case Step.OUTSIDE -> words(zones.reject().stream());
            default -> "";
        };
    }

    /** All three kinds in one line. */
    String summary() {
        List<String> parts = Stream.of("accept " + words(Stream.of(zones.accept())),
                zones.doubtful().isEmpty() ? "" : "doubtful " + words(zones.doubtful().stream()),
                zones.reject().isEmpty() ? "" : "reject " + words(zones.reject().stream()))
                .filter(part -> !part.isEmpty()).toList();
        return String.join("; ", parts);
    }

    private String words(Stream<Interval> intervals) {
        return intervals.map(interval -> IntervalText.of(interval, unit)).collect(Collectors.joining(" or "));
    }

    /** The conventions behind the numbers, to be printed wherever they are: one for each rule that is in use. */
    static List<String> conventions(CardPlan plan) {
        List<LimitZones> all = plan.steps().flatMap(step -> of(plan.procedure(), step).stream()).toList();
        return all.stream().map(LimitZones::judged).distinct().map(judged -> {
            List<LimitZones> alike = all.stream().filter(one -> one.judged().equals(judged)).toList();
            return judged + " U is the expanded uncertainty, k = 2, of the instrument's accuracy statement taken as"
                    + " rectangular, u = a/\u221A3 (JCGM 100:2008, 4.3.7 and 6.2)"
                    + (alike.stream().noneMatch(LimitZones::computed) ? "." : alike.stream().allMatch(LimitZones::computed)
                            ? ", carried through the formula of a computed value (5.1.2)."
                            : "; for a computed value it is carried through the formula (5.1.2).");
        }).toList();
    }

    private String judged() {
        return rule instanceof DecisionRule.ByRisk
                ? "Readings are accepted inside the limit by a guard band that keeps the risk of a wrong acceptance"
                        + " (JCGM 106:2012, clause 9)."
                : "Readings are accepted inside the limit by U or more, rejected beyond it by more than U, and doubtful"
                        + " between (ISO 14253-1).";
    }
}

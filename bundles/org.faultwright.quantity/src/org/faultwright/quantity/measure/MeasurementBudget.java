/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Unit;

/**
 * Whether an instrument can decide a limit, and where its readings decide it. The accuracy statement is
 * taken as a rectangular distribution, u = a/√3, with k = 2 for the expanded uncertainty
 * (JCGM 100:2008, 4.3.7 and 6.2). Values are in the coherent SI unit.
 *
 * @param limits   what is decided
 * @param range    the range in use
 * @param extras   contributions beside the instrument's accuracy
 * @param rule     the decision rule in use; guarded where one by risk lacks the spread
 * @param ends     each finite end of the limits, lower first; none when a problem forbids the computation
 * @param ratio    the test uncertainty ratio, see {@link #explain()} for one-sided limits; rounded down at the
 *                 20th digit or later; absent when there is no uncertainty or no finite limit, and for one-sided
 *                 temperatures, whose scale has no zero to count from
 * @param zones    where a reading is accepted, doubtful and rejected
 * @param problems each a sentence
 */
public record MeasurementBudget(Interval limits, MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule,
        List<LimitUncertainty> ends, Optional<Exact> ratio, DecisionZones zones, List<String> problems) implements Budget {

    public static MeasurementBudget of(Limit limit, MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule) {
        if (!limit.fits(range.kind())) {
            return undecided(Interval.EVERYTHING, range, extras, rule, List.of("The limit " + limit.spelling()
                    + " is not one of " + range.kind().words() + "; write it in a unit such as "
                    + range.kind().usualUnit() + "."));
        }
        return of(limit.interval(range.kind()), range, extras, rule);
    }

    public static MeasurementBudget of(Interval limits, MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule) {
        List<String> problems = new ArrayList<>();
        MeterAccuracy.problem(range).ifPresent(problems::add);
        if (limits.isEmpty()) {
            problems.add("The limits take in no value; check that the lower end is under the upper one.");
        }
        extras.stream().filter(extra -> extra.amount().signum() < 0).findFirst().ifPresent(extra -> problems.add(
                "The contribution '" + extra.label() + "' is negative; write it as the amount added or taken away."));
        if (!problems.isEmpty()) {
            return undecided(limits, range, extras, rule, problems);
        }
        List<LimitUncertainty> unguarded = Stream.of(limits.lower(), limits.upper()).flatMap(Optional::stream)
                .map(end -> LimitUncertainty.at(end.value(), range, extras)).toList();
        GuardBands guarding = GuardBands.of(rule, limits, unguarded);
        guarding.problem().ifPresent(problems::add);
        readable(limits, range).ifPresent(problems::add);
        List<LimitUncertainty> ends = guarding.ends();
        return new MeasurementBudget(limits, range, extras, guarding.rule(), ends, TestRatio.of(limits, range, ends),
                DecisionZones.of(limits, lowerGuard(limits, ends), upperGuard(limits, ends)), List.copyOf(problems));
    }

    private static MeasurementBudget undecided(Interval limits, MeterRange range, List<UncertaintyContribution> extras,
            DecisionRule rule, List<String> problems) {
        return new MeasurementBudget(limits, range, extras, rule, List.of(), Optional.empty(),
                DecisionZones.UNKNOWN, List.copyOf(problems));
    }

    private static Optional<String> readable(Interval limits, MeterRange range) {
        boolean all = Stream.of(limits.lower(), limits.upper()).flatMap(Optional::stream)
                .allMatch(end -> range.shown().contains(end.value()));
        return all ? Optional.empty() : Optional.of("The range up to " + range.upTo()
                + " does not show every end of the limits; choose a range that does.");
    }

    private static Exact lowerGuard(Interval limits, List<LimitUncertainty> ends) {
        return limits.lower().isPresent() ? ends.get(0).guard() : Exact.ZERO;
    }

    private static Exact upperGuard(Interval limits, List<LimitUncertainty> ends) {
        return limits.upper().isPresent() ? ends.get(ends.size() - 1).guard() : Exact.ZERO;
    }

    /**
     * The guard factor √(1 − 1/TUR²), by which the half width of a two-sided tolerance is multiplied
     * (a method of the ANSI/NCSL Z540.3 handbook); absent for one-sided limits and ratios under 1.
     */
    public Optional<Double> guardFactor() {
        return limits.width().flatMap(width -> ratio).map(Exact::doubleValue).filter(tur -> tur >= 1)
                .map(tur -> Math.sqrt(1 - 1 / (tur * tur)));
    }

    /** The risks of deciding wrongly with these zones; absent without uncertainty or for a spread that is not above zero. */
    public Optional<Risk> risk(UnitSpread spread) {
        return GuardBands.scale(limits, ends, spread).map(scale -> scale.risk(zones.accept()));
    }

    @Override
    public Unit unit() {
        return range.upTo().unit();
    }

    @Override
    public MeasurementBudget guarded() {
        return of(limits, range, extras, new DecisionRule.Guarded());
    }

    /** As the display shows them. */
    @Override
    public DecisionZones shown() {
        return zones.shown(range.resolution().difference(), unit().offset());
    }

    @Override
    public List<BudgetLine> explain() {
        return BudgetText.lines(this);
    }
}

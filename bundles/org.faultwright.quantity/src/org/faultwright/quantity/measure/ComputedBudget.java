/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Unit;

/**
 * Whether readings are fine enough for a limit on what is computed from them.
 *
 * @param formula  what is computed
 * @param computed the uncertainty at each finite end of the limits, lower first
 * @param scale    whether the value has a zero of nature; a temperature in degC has none
 */
public record ComputedBudget(Expression formula, Interval limits, Unit unit, Scale scale, DecisionRule rule,
        List<ComputedEnd> computed, List<LimitUncertainty> ends, Optional<Exact> ratio, DecisionZones zones,
        List<String> problems) implements Budget {
    /** Scales with a zero of nature, from which a value can be counted, and without. */
    public enum Scale { RATIO, INTERVAL }

    /** The readings at which the uncertainty at one end of the limits is evaluated. */
    public interface Readings {
        List<ReadingInput> at(Exact limit);
    }

    /** @param rule by risk counts as guarded: a computed value states no spread of good units */
    public static ComputedBudget of(Expression formula, Interval limits, Unit unit, Scale scale, Readings readings,
            DecisionRule rule) {
        List<ComputedEnd> computed = new ArrayList<>();
        for (Bound end : Stream.of(limits.lower(), limits.upper()).flatMap(Optional::stream).toList()) {
            ComputedEnd.Found found = ComputedEnd.of(end.value(), formula, readings.at(end.value()));
            if (found.end().isEmpty()) {
                return impossible(formula, limits, unit, scale, rule, found.problem().orElseThrow());
            }
            computed.add(found.end().get());
        }
        return judged(formula, limits, unit, scale, computed,
                rule instanceof DecisionRule.ByRisk ? new DecisionRule.Guarded() : rule);
    }

    private static ComputedBudget judged(Expression formula, Interval limits, Unit unit, Scale scale,
            List<ComputedEnd> computed, DecisionRule rule) {
        List<LimitUncertainty> ends = GuardBands.of(rule, limits, computed.stream().map(ComputedEnd::uncertainty).toList()).ends();
        return new ComputedBudget(formula, limits, unit, scale, rule, List.copyOf(computed), ends, ratio(limits, ends),
                DecisionZones.of(limits, limits.lower().isPresent() ? ends.get(0).guard() : Exact.ZERO,
                        limits.upper().isPresent() ? ends.get(ends.size() - 1).guard() : Exact.ZERO), List.of());
    }

    @Override
    public ComputedBudget guarded() {
        return isComplete() ? judged(formula, limits, unit, scale, computed, new DecisionRule.Guarded()) : this;
    }

    private static ComputedBudget impossible(Expression formula, Interval limits, Unit unit, Scale scale, DecisionRule rule,
            String problem) {
        return new ComputedBudget(formula, limits, unit, scale, rule, List.of(), List.of(), Optional.empty(),
                DecisionZones.UNKNOWN, List.of(problem));
    }

    private static Optional<Exact> ratio(Interval limits, List<LimitUncertainty> ends) {
        return limits.width().filter(width -> width.signum() > 0).flatMap(width -> ends.stream()
                .map(LimitUncertainty::expanded).reduce(Exact::max).filter(expanded -> expanded.signum() > 0)
                .map(expanded -> width.dividedBy(expanded.times(2))));
    }

    /** Whether a one-sided limit lies nearer to the zero of its scale than the expanded uncertainty. */
    public boolean isLostInUncertainty() {
        return scale == Scale.RATIO && limits.width().isEmpty() && ends.stream()
                .anyMatch(end -> end.limit().signum() != 0 && end.limit().absolute().compareTo(end.expanded()) < 0);
    }

    /** The name of the reading that adds most to the uncertainty; absent where none adds anything. */
    public Optional<String> largestShare() {
        return computed.stream().findFirst().flatMap(end -> end.inputs().stream()
                .filter(input -> end.contribution(input) > 0)
                .max(Comparator.comparingDouble(end::contribution))).map(ReadingInput::name);
    }

    /**
     * To two digits of the smallest U: more would say nothing (JCGM 100:2008, 7.2.6). Rounded inward; limits that
     * decide as they are written stay as they are.
     */
    @Override
    public DecisionZones shown() {
        return rule instanceof DecisionRule.Simple ? zones : step().map(step -> zones.shown(step, unit.offset())).orElse(zones);
    }

    /** What a computed value is worth rounding to; absent where there is no uncertainty. */
    Optional<Exact> step() {
        return ends.stream().map(LimitUncertainty::expanded).filter(u -> u.signum() > 0).reduce(Exact::min)
                .map(u -> power(-places(u)).times(unit.factor()));
    }

    /** How many places after the point show two digits of an uncertainty above zero, in the unit of the limits. */
    int places(Exact uncertainty) {
        BigDecimal two = uncertainty.dividedBy(unit.factor()).toDecimal(new MathContext(2, RoundingMode.UP));
        return 2 - (two.precision() - two.scale());
    }

    private static Exact power(int exponent) {
        Exact ten = Exact.of(10).power(Math.abs(exponent));
        return exponent < 0 ? Exact.ONE.dividedBy(ten) : ten;
    }

    @Override
    public List<BudgetLine> explain() {
        return ComputedText.lines(this);
    }
}

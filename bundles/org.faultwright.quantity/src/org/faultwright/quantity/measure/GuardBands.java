/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;
import java.util.Optional;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;

/**
 * The guard bands that a decision rule asks for.
 *
 * @param rule    the rule that was used in the end
 * @param ends    the ends of the limits with their guard bands
 * @param problem why another rule than the one asked for was used
 */
record GuardBands(DecisionRule rule, List<LimitUncertainty> ends, Optional<String> problem) {

    static GuardBands of(DecisionRule rule, Interval limits, List<LimitUncertainty> ends) {
        if (rule instanceof DecisionRule.Simple) {
            return new GuardBands(rule, ends, Optional.empty());
        }
        if (rule instanceof DecisionRule.ByRisk byRisk) {
            return byRisk(byRisk, limits, ends);
        }
        return guarded(ends, Optional.empty());
    }

    private static GuardBands guarded(List<LimitUncertainty> ends, Optional<String> problem) {
        return new GuardBands(new DecisionRule.Guarded(), ends.stream().map(end -> end.guarded(end.expanded())).toList(),
                problem);
    }

    private static GuardBands byRisk(DecisionRule.ByRisk rule, Interval limits, List<LimitUncertainty> ends) {
        if (ends.isEmpty() || largestUncertainty(ends).signum() == 0) {
            return new GuardBands(rule, ends, Optional.empty());
        }
        Optional<Scale> scale = rule.spread().flatMap(spread -> scale(limits, ends, spread));
        if (scale.isEmpty()) {
            return guarded(ends, Optional.of("Deciding by risk needs to know how much good units vary, above zero, and its mean where the limit"
                    + " has one end; without them the guard band is U."));
        }
        Exact width = scale.get().guard(rule.mostFalseAccept().doubleValue());
        return new GuardBands(rule, ends.stream().map(end -> end.guarded(width)).toList(), Optional.empty());
    }

    private static Exact largestUncertainty(List<LimitUncertainty> ends) {
        return ends.stream().map(LimitUncertainty::standard).reduce(Exact.ZERO, Exact::max);
    }

    static Optional<Scale> scale(Interval limits, List<LimitUncertainty> ends, UnitSpread spread) {
        Optional<Exact> mean = spread.mean().or(() -> middle(limits));
        Exact uncertainty = largestUncertainty(ends);
        if (mean.isEmpty() || spread.deviation().signum() <= 0 || uncertainty.signum() == 0) {
            return Optional.empty();
        }
        double share = uncertainty.dividedBy(spread.deviation()).doubleValue();
        return share > 1e-6 && share < 1e6
                ? Optional.of(new Scale(limits, mean.get(), spread.deviation(), uncertainty)) : Optional.empty();
    }

    private static Optional<Exact> middle(Interval limits) {
        return limits.lower().flatMap(low -> limits.upper()
                .map(high -> low.value().plus(high.value()).dividedBy(Exact.of(2))));
    }

    /** Values counted in standard deviations from the mean of the spread. */
    record Scale(Interval limits, Exact mean, Exact deviation, Exact uncertainty) {
        Risk risk(Interval accept) {
            return Risk.of(place(limits.lower(), Double.NEGATIVE_INFINITY), place(limits.upper(), Double.POSITIVE_INFINITY),
                    place(accept.lower(), Double.NEGATIVE_INFINITY), place(accept.upper(), Double.POSITIVE_INFINITY),
                    uncertainty.dividedBy(deviation).doubleValue());
        }

        Exact guard(double most) {
            double width = GuardByRisk.width(place(limits.lower(), Double.NEGATIVE_INFINITY),
                    place(limits.upper(), Double.POSITIVE_INFINITY), uncertainty.dividedBy(deviation).doubleValue(), most);
            return Exact.of(width).times(deviation);
        }

        private double place(Optional<Bound> end, double open) {
            return end.map(bound -> bound.value().minus(mean).dividedBy(deviation).doubleValue()).orElse(open);
        }
    }
}

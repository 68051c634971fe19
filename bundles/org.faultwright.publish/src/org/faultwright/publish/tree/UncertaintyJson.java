/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.Budget;
import org.faultwright.quantity.measure.ComputedBudget;
import org.faultwright.quantity.measure.ComputedEnd;
import org.faultwright.quantity.measure.LimitUncertainty;

/** How well the limits of a step can be decided. Uncertainties are rounded up to three digits. */
final class UncertaintyJson {
    private static final MathContext DIGITS = new MathContext(3, RoundingMode.UP);

    private record LimitBudget(Written<Limit> limit, Budget budget) {
    }

    private UncertaintyJson() {
    }

    /** Puts the uncertainty at each limit that has one. */
    static Json put(Json json, Procedure procedure, Step step) {
        return json.putAll("uncertainty", studied(procedure, step).stream().filter(one -> one.budget().isComplete()
                && !one.budget().ends().isEmpty() && !one.budget().unit().isLogarithmic()).toList(), UncertaintyJson::limit);
    }

    private static List<LimitBudget> studied(Procedure procedure, Step step) {
        if (step instanceof Step.Measure measure) {
            return LimitStudy.of(procedure, measure).stream().flatMap(study -> study.limits().stream())
                    .map(limit -> new LimitBudget(limit.limit(), limit.budget())).toList();
        }
        return step instanceof Step.Calculate calculate ? ComputedStudy.of(procedure, calculate).stream()
                .flatMap(study -> study.limits().stream()).map(limit -> new LimitBudget(limit.limit(), limit.budget())).toList()
                : List.of();
    }

    private static Json limit(LimitBudget studied) {
        Budget budget = studied.budget();
        Json json = new Json().put("limit", studied.limit().value().spelling())
                .put("coverageFactor", LimitUncertainty.COVERAGE_FACTOR)
                .putAll("ends", budget.ends(), end -> new Json()
                        .put("at", QuantityJson.of(Quantity.of(budget.unit().fromBase(end.limit()), budget.unit())))
                        .put("standard", QuantityJson.of(difference(end.standard(), budget.unit())))
                        .put("expanded", QuantityJson.of(difference(end.expanded(), budget.unit()))))
                .putText("ratio", budget.ratio().map(ratio -> ratio.toDecimal(2, RoundingMode.DOWN).toPlainString()));
        Optional<ComputedEnd> end = budget instanceof ComputedBudget computed ? computed.computed().stream().findFirst()
                : Optional.empty();
        return json.putAll("readings", end.map(ComputedEnd::inputs).orElseGet(List::of), input -> {
            Unit unit = input.range().upTo().unit();
            return new Json().put("step", input.name())
                    .put("at", QuantityJson.of(Quantity.of(unit.fromBase(input.value()), unit)))
                    .put("standard", QuantityJson.of(difference(input.variance().squareRoot(RoundingMode.CEILING), unit)))
                    .put("percentOfVariance", Exact.of(end.get().share(input) * 100).toDecimal(1).toPlainString());
        });
    }

    /** A difference of temperatures is told in kelvin. */
    private static Quantity difference(Exact base, Unit unit) {
        Unit scale = unit.offset().signum() == 0 ? unit
                : new Unit("K", "K", unit.dimension(), Exact.ONE, Exact.ZERO, Unit.Status.KNOWN);
        return Quantity.of(Exact.of(base.dividedBy(scale.factor()).toDecimal(DIGITS)), scale);
    }
}

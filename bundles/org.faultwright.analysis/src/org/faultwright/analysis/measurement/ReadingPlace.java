/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.Optional;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.ReadingInput;

/**
 * Where a reading that something is computed from is likely to lie.
 *
 * @param study  its instrument and the range in use
 * @param stated the value that its step expects; absent where it leaves the value open
 * @param low    the least that can lead to the computation, as far as the range shows it
 * @param high   the most
 */
record ReadingPlace(LimitStudy study, Optional<StatedReading> stated, Exact low, Exact high) {
    /** A value to take, in the coherent SI unit, and why. */
    record StatedReading(Exact value, String why) {
    }

    record Found(Optional<ReadingPlace> place, String problem) {
    }

    static Found of(Step.Measure step, Step later, StepGraph graph, LimitStudies studies) {
        Optional<LimitStudy> study = studies.of(step);
        if (study.isEmpty()) {
            return failed(step.name() + (studies.instrument(step).isEmpty()
                    ? " names no known instrument" : " has no limit that says how large it is, or no range for it")
                    + ", so that the uncertainty of " + later.name() + " is not known.");
        }
        Optional<String> problem = study.get().choice().problem().or(() -> study.get().limits().stream()
                .filter(limit -> limit.budget().ends().isEmpty()).flatMap(limit -> limit.budget().problems().stream()).findFirst());
        if (problem.isPresent()) {
            return failed("The uncertainty of " + later.name() + " is not known, as " + step.name() + " has a problem: "
                    + problem.get());
        }
        QuantityKind kind = study.get().kind();
        Interval shown = study.get().range().shown();
        Interval arriving = ArrivingReadings.at(later, step.name().text(), graph);
        Exact low = shown.lower().map(Bound::value).orElseThrow();
        Exact high = shown.upper().map(Bound::value).orElseThrow();
        Exact most = arriving.upper().map(Bound::value).map(high::min).orElse(high);
        // A voltage that may be negative is still expected on the side on which its limit lies.
        Exact natural = most.signum() > 0 && low.signum() < 0 ? Exact.ZERO : low;
        Exact least = arriving.lower().map(Bound::value).map(low::max).orElse(natural);
        if (least.compareTo(most) > 0) {
            return failed("No reading of " + step.name() + " within its range leads to " + later.name() + ".");
        }
        return new Found(Optional.of(new ReadingPlace(study.get(), stated(step, kind), least, most)), "");
    }

    private static Found failed(String problem) {
        return new Found(Optional.empty(), problem);
    }

    private static Optional<StatedReading> stated(Step.Measure step, QuantityKind kind) {
        Optional<Limit> limit = step.expects().map(expected -> expected.limit().value());
        return limit.flatMap(Limit::nominal).map(nominal -> new StatedReading(nominal.base(kind), "nominal value of its limit"))
                .or(() -> limit.map(known -> known.interval(kind)).filter(known -> known.width().isPresent())
                        .map(known -> new StatedReading(middle(known.lower().orElseThrow().value(), known.upper().orElseThrow().value()),
                                "middle of its limit")));
    }

    static Exact middle(Exact one, Exact other) {
        return one.plus(other).dividedBy(Exact.of(2));
    }

    String name() {
        return study.step().name().text();
    }

    ReadingInput at(Exact value, String why) {
        return new ReadingInput(name(), value, why, study.instrument().name().text(), study.range(),
                LimitStudies.extras(study.step(), study.range()));
    }
}

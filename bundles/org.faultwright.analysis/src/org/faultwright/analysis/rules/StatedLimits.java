/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** Every limit written in a document: what is expected, bands, and the temperatures an instrument is stated for. */
final class StatedLimits {
    /** @param of what it is a limit of. @param kind what it limits */
    record StatedLimit(Declaration of, Written<Limit> limit, QuantityKind kind) {
        /** Whether its ends can be compared with each other. */
        boolean isComparable() {
            List<Quantity> ends = limit.value().quantities();
            Dimension first = ends.get(0).dimension();
            return ends.stream().allMatch(end -> end.unit().isKnown() && !end.unit().isLogarithmic()
                    && end.dimension().equals(first));
        }
    }

    private final List<StatedLimit> found = new ArrayList<>();

    private StatedLimits(Subject subject) {
        for (Instrument instrument : subject.document().own().instruments()) {
            instrument.validAt().ifPresent(limit -> found.add(new StatedLimit(instrument, limit, QuantityKind.TEMPERATURE)));
        }
        DocumentSteps.of(subject).forEach(this::step);
    }

    static List<StatedLimit> of(Subject subject) {
        return subject.shared(StatedLimits.class, StatedLimits::new).found;
    }

    private void step(Step step) {
        if (step instanceof Step.Measure measure) {
            measure.readings().forEach(reading -> limits(reading, reading.expects(), measure.kind().map(Written::value)));
        } else if (step instanceof Step.Do task) {
            task.adjusts().forEach(one -> one.kind().ifPresent(kind -> one.to()
                    .ifPresent(limit -> found.add(new StatedLimit(step, limit, kind.value())))));
        } else if (step instanceof Step.Calculate calculate) {
            limits(step, calculate.expects(), Optional.of(Results.kind(step)));
        }
    }

    private void limits(Step step, Optional<Step.Expectation> expects, Optional<QuantityKind> kind) {
        QuantityKind read = kind.orElse(QuantityKind.TEMPERATURE);
        expects.ifPresent(expectation -> found.add(new StatedLimit(step, expectation.limit(), read)));
        for (Outcome outcome : step.outcomes()) {
            if (outcome.head() instanceof Outcome.Band band) {
                found.add(new StatedLimit(step, band.limit(), read));
            }
        }
    }
}

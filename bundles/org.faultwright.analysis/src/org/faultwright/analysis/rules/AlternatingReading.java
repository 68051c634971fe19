/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;

/**
 * A reading of an alternating voltage or current where the point says what it carries.
 *
 * @param ranges the range in use where the limits tell it, else every range that may be
 */
record AlternatingReading(Step.Measure step, Point point, Point.Carried carried, Instrument instrument,
        List<MeterRange> ranges) {

    static Stream<AlternatingReading> of(Subject subject) {
        List<LimitStudy> studies = LimitStudies.of(subject);
        return DocumentSteps.of(subject, Step.Measure.class)
                .filter(step -> step.kind().map(Written::value).filter(QuantityKind::isAlternating).isPresent())
                .flatMap(step -> of(step, subject, studies).stream()).filter(reading -> !reading.ranges().isEmpty());
    }

    private static Optional<AlternatingReading> of(Step.Measure step, Subject subject, List<LimitStudy> studies) {
        Optional<Point> point = step.point().flatMap(subject.scope()::point).filter(known -> known.carries().isPresent());
        Optional<Instrument> instrument = step.instrument().flatMap(subject.scope()::instrument);
        return point.flatMap(known -> instrument.map(meter -> new AlternatingReading(step, known, known.carries().get(), meter,
                ranges(step, meter, studies))));
    }

    private static List<MeterRange> ranges(Step.Measure step, Instrument instrument, List<LimitStudy> studies) {
        return studies.stream().filter(study -> study.step() == step).map(study -> List.of(study.range())).findFirst()
                .orElseGet(() -> instrument.ranges().stream().map(Written::value)
                        .filter(range -> range.kind() == step.kind().get().value()).toList());
    }
}

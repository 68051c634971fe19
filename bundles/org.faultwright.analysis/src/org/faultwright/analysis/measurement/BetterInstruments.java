/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** Other instruments of the bench that would do better in a step. */
public final class BetterInstruments {
    private static final int MOST = 3;
    /** More instruments than any bench has; beyond them a list of thousands would cost more than its proposals are worth. */
    private static final int TRIED = 64;

    private record Rated(Name name, Exact ratio) {
    }

    private BetterInstruments() {
    }

    /** The instruments that read what a step reads; at most three. */
    public static List<Name> reading(Step.Measure step, QuantityKind kind, Subject subject) {
        return subject.scope().instruments().stream().filter(other -> !RangeFinder.ranges(step, kind, other).isEmpty())
                .filter(other -> mayBePutThere(step, other, subject))
                .map(Instrument::name).limit(MOST).toList();
    }

    /**
     * The instruments whose test uncertainty ratio at the step's limits is at least so much, the best first; at most
     * three of the nearest 64.
     */
    public static List<Name> deciding(Step.Measure step, Exact ratio, Subject subject) {
        LimitStudies studies = new LimitStudies(subject.document(), subject.scope(), KnownBudgets.of(subject));
        return subject.scope().instruments().stream()
                .filter(other -> step.kind().isPresent())
                .filter(other -> !RangeFinder.ranges(step, step.kind().get().value(), other).isEmpty())
                .filter(other -> mayBePutThere(step, other, subject)).limit(TRIED)
                .flatMap(other -> studies.of(using(step, other.name())).filter(study -> study.problems().isEmpty())
                        .flatMap(LimitStudy::ratio).map(found -> new Rated(other.name(), found)).stream())
                .filter(rated -> rated.ratio().compareTo(ratio) >= 0)
                .sorted(Comparator.comparing(Rated::ratio).reversed().thenComparing(rated -> rated.name().text()))
                .map(Rated::name).limit(MOST).toList();
    }

    /** Whether its rating and its measurement category allow it at the points of a step (IEC 61010-2-030). */
    public static boolean mayBePutThere(Step.Measure step, Instrument instrument, Subject subject) {
        return Stream.of(step.point(), step.against()).flatMap(Optional::stream).flatMap(name -> subject.scope().point(name).stream())
                .allMatch(point -> point.category().map(Written::value).orElse(0) <= instrument.category().map(Written::value).orElse(0)
                        && bears(instrument, point));
    }

    private static boolean bears(Instrument instrument, Point point) {
        Optional<Quantity> rated = instrument.rated().map(Written::value).filter(stated -> stated.fits(QuantityKind.DC_VOLTAGE));
        Optional<Quantity> carried = point.carries().map(carries -> carries.upTo().value())
                .filter(stated -> stated.fits(QuantityKind.DC_VOLTAGE));
        return rated.isEmpty() || carried.isEmpty() || carried.get().base().absolute().compareTo(rated.get().base()) <= 0;
    }

    /** The step with another instrument, in the range that suits it. */
    private static Step.Measure using(Step.Measure step, Name instrument) {
        SourceRange at = step.instrument().map(Name::at).orElse(step.at());
        return new Step.Measure(step.name(), step.title(), step.kind(), step.point(), step.through(), step.against(),
                Optional.of(new Name(instrument.text(), at)), Optional.empty(), step.sensor(), step.expects(),
                step.uncertainties(), step.unitDeviation(), step.rows(), step.frame(), step.outcomes(), step.at());
    }
}

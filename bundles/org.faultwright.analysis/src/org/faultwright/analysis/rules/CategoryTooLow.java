/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.BetterInstruments;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** An instrument at a point of a higher measurement category than its own (IEC 61010-2-030). */
public final class CategoryTooLow implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("category-too-low", Severity.ERROR, Group.INSTRUMENTS,
            "The instrument's measurement category is lower than that of the point.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.instrument().flatMap(subject.scope()::instrument)
                .ifPresent(instrument -> Stream.of(step.point(), step.against()).flatMap(Optional::stream)
                        .flatMap(name -> subject.scope().point(name).stream())
                        .filter(point -> category(point) > category(instrument))
                        .max((one, other) -> Integer.compare(category(one), category(other)))
                        .ifPresent(point -> report(step, instrument, point, subject, findings))));
    }

    /** 0 for a circuit that is not connected to the mains. */
    private static int category(Point point) {
        return point.category().map(Written::value).orElse(0);
    }

    private static int category(Instrument instrument) {
        return instrument.category().map(Written::value).orElse(0);
    }

    private static void report(Step.Measure step, Instrument instrument, Point point, Subject subject, Findings findings) {
        List<Name> others = subject.scope().instruments().stream().filter(other -> BetterInstruments.mayBePutThere(step, other, subject))
                .filter(other -> step.kind().isEmpty() || other.ranges().stream()
                .anyMatch(range -> range.value().kind() == step.kind().get().value()))
                .map(Instrument::name).limit(3).toList();
        String own = category(instrument) == 0 ? "is stated for no measurement category" : "is stated for category "
                + category(instrument);
        findings.report(step.instrument().get().at(), instrument.name() + " " + own + ", and " + point.name()
                + " belongs to category "
                + category(point) + ".", others.isEmpty()
                ? "Use an instrument and leads of at least the point's category, as its maker states it."
                        : "Use " + InstrumentFixes.listed(others) + " with leads of the same category.",
                InstrumentFixes.use(step, others));
    }
}

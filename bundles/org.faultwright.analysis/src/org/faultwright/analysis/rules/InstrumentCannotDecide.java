/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.BetterInstruments;
import org.faultwright.analysis.measurement.ComputedLimit;
import org.faultwright.analysis.measurement.ComputedStudies;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.measurement.StudiedLimit;
import org.faultwright.procedure.Name;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.LimitUncertainty;

/** An instrument too coarse for the limit: under 4:1 a warning (common practice), under 1:1 an error. */
public final class InstrumentCannotDecide implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("instrument-cannot-decide", Severity.WARNING, Group.INSTRUMENTS,
            "The instrument is too coarse to decide a limit.");
    private static final Exact ENOUGH = Exact.of(4);

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.READINGS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (LimitStudy study : LimitStudies.of(subject)) {
            for (StudiedLimit limit : study.limits()) {
                Optional<Exact> ratio = limit.budget().ratio().filter(known -> known.compareTo(ENOUGH) < 0);
                boolean held = study.choice().problem().isEmpty() && limit.budget().problems().isEmpty();
                if (held && (ratio.isPresent() || nothingKeeps(study, limit))) {
                    report(study, limit, ratio, subject, findings);
                }
            }
        }
        for (ComputedStudy study : ComputedStudies.of(subject)) {
            study.limits().forEach(limit -> check(study, limit, findings));
        }
    }

    private static void check(ComputedStudy study, ComputedLimit limit, Findings findings) {
        Optional<Exact> ratio = limit.budget().ratio().filter(known -> known.compareTo(ENOUGH) < 0);
        if (ratio.isEmpty() && !limit.budget().isLostInUncertainty()) {
            return;
        }
        boolean error = ratio.map(known -> known.compareTo(Exact.ONE) < 0).orElse(true);
        findings.report(error ? Severity.ERROR : Severity.WARNING, limit.limit().at(), "The readings behind "
                + study.step().name() + " give it to ±" + ValueText.significant(limit.budget().expanded().orElseThrow(),
                limit.budget().unit(), 2, RoundingMode.UP) + " (U = 2u, u by propagation), and the limit is "
                + ratio.map(known -> known.toDecimal(2, RoundingMode.DOWN).toPlainString() + " times as wide as that.")
                        .orElse("smaller than that."),
                "Read " + limit.budget().largestShare().orElse("them") + ", which adds most to it, with a finer instrument or range,"
                        + " or widen the limit.");
    }

    /** A temperature with one limit has no ratio, since its scale has no zero to count from; but some reading must keep the limit for certain. */
    private static boolean nothingKeeps(LimitStudy study, StudiedLimit limit) {
        return limit.budget().ratio().isEmpty() && limit.budget().limits().width().isEmpty() && !limit.budget().ends().isEmpty()
                && limit.budget().guarded().zones().accept().intersection(study.range().shown()).isEmpty();
    }

    private static void report(LimitStudy study, StudiedLimit limit, Optional<Exact> ratio, Subject subject, Findings findings) {
        Exact expanded = limit.budget().ends().stream().map(LimitUncertainty::expanded).reduce(Exact::max).orElseThrow();
        Unit unit = limit.limit().value().quantities().get(0).unit();
        List<Name> better = BetterInstruments.deciding(study.step(), ENOUGH, subject);
        Severity severity = ratio.map(known -> known.compareTo(Exact.ONE) < 0).orElse(true) ? Severity.ERROR : Severity.WARNING;
        findings.report(severity, limit.limit().at(), study.instrument().name() + " in its range up to "
                + study.range().upTo()
                + " reads " + study.step().name() + " to ±" + ValueText.significant(expanded, unit, 2, RoundingMode.UP)
                + " (U = 2u, u = a/√3), and " + ratio.map(known -> compared(limit, known))
                        .orElse("no reading that it can show keeps the limit for certain."),
                better.isEmpty() ? "Use an instrument at least four times finer than the limit, or widen the limit."
                        : "Use " + InstrumentFixes.listed(better) + ", or widen the limit.",
                InstrumentFixes.use(study.step(), better));
    }

    /** Which width was held against the uncertainty: that of the limits, or of the one limit counted from zero. */
    private static String compared(StudiedLimit limit, Exact ratio) {
        String times = ratio.toDecimal(2, RoundingMode.DOWN).toPlainString() + " times as wide as that.";
        return limit.budget().limits().width().isPresent() ? "the limit is " + times : "the limit, counted from zero, is " + times;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.math.RoundingMode;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.measurement.StudiedLimit;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.Loading;

/** Connecting the instrument changes the reading by more than a tenth of the tolerance. */
public final class LoadingEatsTolerance implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("loading-eats-tolerance", Severity.WARNING, Group.INSTRUMENTS,
            "The instrument's input resistance or burden changes the reading by more than a tenth of the tolerance.");
    private static final Exact TENTH = Exact.ratio(1, 10);

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
        for (LimitStudy study : LimitStudies.of(subject)) {
            for (StudiedLimit limit : study.limits()) {
                limit.loadingShare().filter(share -> share.compareTo(TENTH) > 0)
                        .ifPresent(share -> report(study, limit, limit.loading().get(), share, findings));
            }
        }
    }

    private static void report(LimitStudy study, StudiedLimit limit, Loading load, Exact share, Findings findings) {
        Unit unit = limit.limit().value().quantities().get(0).unit();
        Unit ohm = Units.named("ohm");
        String own = load.range().kind().isVoltage() ? "the input resistance " : "the burden ";
        String what = limit.budget().limits().width().isPresent() ? " % of the tolerance." : " % of the limit.";
        findings.report(limit.limit().at(), "With the source resistance "
                + ValueText.significant(load.source(), ohm, 3, RoundingMode.HALF_UP)
                + " and " + own + ValueText.significant(load.instrument(), ohm, 3, RoundingMode.HALF_UP)
                + load.capacitor().map(LoadingEatsTolerance::capacitor).orElse("") + " of "
                + study.instrument().name()
                + ", " + study.step().name() + " reads low by "
                + ValueText.significant(load.error().absolute(), unit, 2, RoundingMode.HALF_UP)
                + ", which is " + share.times(100).toDecimal(0, RoundingMode.HALF_UP).toPlainString() + what,
                load.range().kind().isVoltage()
                ? "Use an instrument with a higher input resistance, or state the limit as this instrument reads it."
                        : "Use a range with a smaller burden, or state the limit as this instrument reads it.");
    }

    private static String capacitor(Loading.Shunt shunt) {
        return " beside " + ValueText.significant(shunt.capacitance(), Units.named("F"), 3, RoundingMode.HALF_UP) + " at "
                + ValueText.significant(shunt.frequency(), Units.named("Hz"), 3, RoundingMode.HALF_UP);
    }
}

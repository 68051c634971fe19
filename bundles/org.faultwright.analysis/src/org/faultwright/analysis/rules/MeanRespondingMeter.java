/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Locale;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Waveform;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;

/** A meter that responds to the mean and is scaled for a sine, at a point that carries something else. */
public final class MeanRespondingMeter implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("mean-responding-meter", Severity.WARNING, Group.INSTRUMENTS,
            "A meter that is right for a sine alone reads another waveform.");

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
        AlternatingReading.of(subject).filter(reading -> isRms(reading.step().kind().get().value()))
                .filter(reading -> reading.ranges().stream().noneMatch(range -> range.trueRms()))
                .forEach(reading -> reading.carried().waveform().map(Written::value).filter(form -> form != Waveform.SINE)
                        .ifPresent(form -> report(reading, form, findings)));
    }

    private static boolean isRms(QuantityKind kind) {
        return kind == QuantityKind.AC_VOLTAGE_RMS || kind == QuantityKind.AC_CURRENT_RMS;
    }

    private static void report(AlternatingReading reading, Waveform form, Findings findings) {
        String wrong = form.meanError().map(error -> " reads it " + (error > 0 ? "high" : "low") + " by "
                + String.format(Locale.ROOT, "%.1f %%.", Math.abs(error) * 100)).orElse(" reads it wrong by an amount that nobody states.");
        findings.report(reading.step().instrument().get().at(), reading.point().name() + " carries a "
                + (form == Waveform.DISTORTED ? "distorted waveform" : form.word()) + ", and " + reading.instrument().name()
                + ", which responds to the mean and is scaled for a sine,"
                + wrong, "Use a true-rms instrument, or state the limit as this one reads it.");
    }
}

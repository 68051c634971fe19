/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.math.RoundingMode;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.MeterAccuracy;

/** A range whose data no instrument can have. */
public final class NonsenseAccuracy implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("nonsense-accuracy", Severity.ERROR, Group.INSTRUMENTS,
            "A range's resolution or accuracy cannot be as stated.");

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
        for (Instrument instrument : subject.document().own().instruments()) {
            instrument.ranges().forEach(range -> check(instrument, range, findings));
        }
    }

    private static void check(Instrument instrument, Written<MeterRange> written, Findings findings) {
        MeterRange range = written.value();
        boolean readable = range.upTo().fits(range.kind()) && range.resolution().fits(range.kind())
                && range.from().map(from -> from.fits(range.kind())).orElse(true)
                && range.accuracy().amount().map(amount -> amount.fits(range.kind())).orElse(true);
        // A resolution left out is a problem of reading, and units that do not fit have rules of their own.
        if (!readable || range.resolution().spelling().equals("0")) {
            return;
        }
        Optional<String> problem = MeterAccuracy.problem(range).or(() -> implausible(range));
        problem.ifPresent(sentence -> findings.report(written.at(), sentence,
                "Copy the resolution and the accuracy of " + instrument.name() + " from its data sheet."));
    }

    private static Optional<String> implausible(MeterRange range) {
        if (range.kind() == QuantityKind.SOUND_LEVEL && (range.accuracy().percentOfReading().signum() != 0 || range.accuracy().percentOfRange().signum() != 0)) {
            return Optional.of("The range up to " + range.upTo() + " states its accuracy in percent, and a sound level has no percentage; write it in dB.");
        }
        Exact fullScale = range.upTo().base(range.kind());
        Exact halfWidth = MeterAccuracy.halfWidth(range, fullScale);
        Exact width = range.shown().width().orElseThrow();
        if (range.resolution().difference().times(2).compareTo(width) > 0) {
            return Optional.of("The range up to " + range.upTo() + " has a last digit of " + range.resolution()
                    + ", so that it shows next to nothing.");
        }
        if (halfWidth.signum() == 0) {
            return Optional.of("The range up to " + range.upTo() + " states no accuracy, as if it read without any error.");
        }
        if (halfWidth.times(2).compareTo(width) >= 0) {
            return Optional.of("At its upper end the range up to " + range.upTo() + " is uncertain by "
                    + halfWidth.times(100).dividedBy(width).toDecimal(0, RoundingMode.HALF_UP).toPlainString()
                    + " % of the range.");
        }
        return Optional.empty();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;

/** A reading told in a fault or an example that no instrument could show: below nothing, or outside every range. */
public final class ReadingImpossible implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("reading-impossible", Severity.ERROR, Group.EXAMPLES,
            "A fault or an example tells a reading that the instrument cannot show.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.MEANING;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ToldReadings.of(subject).forEach(told -> {
            if (told.step() instanceof Step.Measure step && step.kind().isPresent() && told.reading().fits(step.kind().get().value())) {
                check(told, step, step.kind().get().value(), subject, findings);
            }
        });
    }

    private static void check(ToldReadings.ToldReading told, Step.Measure step, QuantityKind kind, Subject subject, Findings findings) {
        Exact value = told.reading().base(kind);
        if (value.signum() < 0 && Readings.naturalLeast(kind).isPresent()) {
            findings.report(told.at(), "\"" + step.name() + "\" is said to read " + told.reading() + ", and " + article(kind)
                    + " is never below zero.", "Correct the reading.");
            return;
        }
        Optional<Instrument> instrument = step.instrument().flatMap(subject.scope()::instrument);
        List<MeterRange> ranges = instrument.stream().flatMap(meter -> meter.ranges().stream()).map(Written::value)
                .filter(range -> range.kind() == kind && range.upTo().fits(kind) && range.from().map(from -> from.fits(kind)).orElse(true))
                .toList();
        if (!ranges.isEmpty() && ranges.stream().noneMatch(range -> range.shown().contains(value))) {
            findings.report(told.at(), "\"" + step.name() + "\" is said to read " + told.reading() + ", and no range of \""
                    + instrument.get().name() + "\" shows that.", "Correct the reading, or use the word of the outcome, such as \"above\".");
        }
    }

    private static String article(QuantityKind kind) {
        return ("aeiou".indexOf(kind.words().charAt(0)) >= 0 ? "an " : "a ") + kind.words();
    }
}

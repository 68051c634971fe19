/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.BetterInstruments;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;

/** A resistance measured with something that only reads voltages. */
public final class InstrumentLacksFunction implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("instrument-lacks-function", Severity.ERROR, Group.INSTRUMENTS,
            "The instrument does not read what the step measures.");

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
        DocumentSteps.of(subject, Step.Measure.class).filter(step -> step.kind().isPresent()).forEach(step -> step.instrument()
                .flatMap(subject.scope()::instrument).filter(instrument -> !instrument.ranges().isEmpty())
                .ifPresent(instrument -> check(step, instrument, subject, findings)));
    }

    private static void check(Step.Measure step, Instrument instrument, Subject subject, Findings findings) {
        QuantityKind kind = step.kind().get().value();
        List<MeterRange> ranges = instrument.ranges().stream().map(Written::value)
                .filter(range -> range.kind() == kind).toList();
        Optional<String> sensor = step.sensor().map(Written::value);
        boolean reads = ranges.stream().anyMatch(range -> sensor.isEmpty() || range.sensor().isEmpty()
                || range.sensor().equals(sensor.get()));
        if (reads) {
            return;
        }
        List<Name> others = BetterInstruments.reading(step, kind, subject);
        String what = ranges.isEmpty() ? kind.words() : kind.words() + " on " + sensor.orElseThrow();
        findings.report(step.instrument().get().at(), instrument.name() + " does not read " + what + ", which "
                + step.name() + " measures.", others.isEmpty() ? "Name an instrument that does, or add the range to "
                + instrument.name() + "."
                        : "Use " + InstrumentFixes.listed(others) + ".",
                Stream.concat(Stream.of(InstrumentFixes.use(step, others)), kin(step, kind, instrument))
                .toArray(Fix[]::new));
    }

    /** What the instrument reads instead: rms where peak is meant, or dc where ac is. */
    private static Stream<Fix> kin(Step.Measure step, QuantityKind kind, Instrument instrument) {
        return instrument.ranges().stream().map(range -> range.value().kind()).distinct()
                .filter(other -> other != kind && (kind.isVoltage() && other.isVoltage() || kind.isCurrent()
                && other.isCurrent()))
                .map(other -> Fix.replacing("Measure " + other.words() + " instead", step.kind().get().at(), other.words()));
    }
}

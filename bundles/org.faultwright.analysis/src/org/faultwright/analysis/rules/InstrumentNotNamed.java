/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
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
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** A limit without an instrument: nothing can be said about whether it can be decided. */
public final class InstrumentNotNamed implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("instrument-not-named", Severity.ADVICE, Group.INSTRUMENTS,
            "A measurement with a limit does not say which instrument it is read with.");

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
        DocumentSteps.of(subject, Step.Measure.class).filter(step -> step.instrument().isEmpty() && step.kind().isPresent())
                .filter(step -> step.expects().isPresent() || step.outcomes().stream()
                .anyMatch(outcome -> outcome.head() instanceof Outcome.Band))
                .forEach(step -> report(step, subject, findings));
    }

    private static void report(Step.Measure step, Subject subject, Findings findings) {
        List<Name> known = BetterInstruments.reading(step, step.kind().get().value(), subject);
        SourceRange last = Stream.of(step.against(), step.point()).flatMap(name -> name.stream()).map(Name::at).findFirst()
                .orElseGet(() -> step.sensor().map(sensor -> sensor.at()).orElse(step.kind().get().at()));
        SourceRange behind = new SourceRange(last.source(), last.end(), 0);
        findings.report(step.kind().get().at(), step.name()
                + " has a limit and names no instrument, so that nothing tells whether it can be decided.",
                known.isEmpty() ? "Add \"using\" and the name of an instrument." : "Add one of these after \"using\": "
                + InstrumentFixes.listed(known) + ".",
                known.stream().map(name -> Fix.replacing("Use " + name, behind, " using " + name)).toArray(Fix[]::new));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** A revision or a source that is dated later than the day given. */
public final class DayInTheFuture implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("day-in-the-future", Severity.WARNING, Group.RECORD,
            "A revision or a source is dated later than today.");

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
        subject.today().ifPresent(today -> {
            subject.procedure().flatMap(procedure -> procedure.revision()).ifPresent(revision -> check(
                    "Revision " + revision.number(), revision.dated(), revision.at(), today, findings));
            Stream<Source> ofSteps = DocumentSteps.of(subject).stream().flatMap(DayInTheFuture::sources);
            Stream<Source> ofCodes = subject.document().own().indicators().stream().map(Indicator::source).flatMap(Optional::stream);
            Stream.concat(ofSteps, ofCodes).forEach(source -> check("The source " + source.document(), source.dated(), source.at(),
                    today, findings));
        });
    }

    private static Stream<Source> sources(Step step) {
        Optional<Step.Expectation> expects = step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
        return Stream.concat(step.frame().source().stream(), expects.flatMap(Step.Expectation::source).stream()).distinct();
    }

    private static void check(String what, Optional<LocalDate> dated, SourceRange at, LocalDate today, Findings findings) {
        dated.filter(day -> day.isAfter(today)).ifPresent(day -> findings.report(at, what + " is dated " + day + ", and the day it is held against is "
                + today + ".", "Correct the day; write year, month and day, as in 2026-01-31."));
    }
}

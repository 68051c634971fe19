/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** A limit or a table of codes that does not say where it comes from. */
public final class MissingSource implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("missing-source", Severity.WARNING, Group.RECORD,
            "A limit or a table of codes does not say which document it comes from.");

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
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> limit(step, step.expects(), findings));
        DocumentSteps.of(subject, Step.Calculate.class).forEach(step -> limit(step, step.expects(), findings));
        for (Indicator indicator : subject.document().own().indicators()) {
            boolean stated = indicator.source().filter(source -> !source.document().isBlank()).isPresent();
            if (!stated && !indicator.codes().isEmpty()) {
                findings.report(indicator.name().at(), "The codes of " + indicator.name() + " have no source.",
                        "Add a \"source\" with document and page, so that the table can be looked up.");
            }
        }
    }

    private static void limit(Step step, Optional<Step.Expectation> expects, Findings findings) {
        boolean stated = expects.flatMap(Step.Expectation::source).or(() -> step.frame().source())
                .filter(source -> !source.document().isBlank()).isPresent();
        Optional<SourceRange> at = expects.map(expectation -> expectation.limit().at()).or(() -> step.outcomes().stream()
                .map(Outcome::head).filter(Outcome.Band.class::isInstance).map(Outcome.Head::at).findFirst());
        if (!stated && at.isPresent()) {
            findings.report(at.get(), "The limit of " + step.name() + " has no source.",
                    "Add a \"source\" with document and page, so that the limit can be looked up.");
        }
    }
}

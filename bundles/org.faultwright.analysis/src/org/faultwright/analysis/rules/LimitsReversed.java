/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;

/** A limit whose lower end lies above its upper end takes in no value. */
public final class LimitsReversed implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("limits-reversed", Severity.ERROR, Group.QUANTITIES,
            "A limit's lower end lies above its upper end.");

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
        StatedLimits.of(subject).stream().filter(StatedLimits.StatedLimit::isComparable)
                .forEach(stated -> check(stated, findings));
        subject.document().own().instruments().forEach(instrument -> instrument.ranges()
                .forEach(range -> bandwidth(range, findings)));
    }

    private static void check(StatedLimits.StatedLimit stated, Findings findings) {
        if (stated.limit().value() instanceof Limit.Between between
                && between.lower().base(stated.kind()).compareTo(between.upper().base(stated.kind())) > 0) {
            findings.report(stated.limit().at(), "The limit of " + stated.of().name() + " runs from "
                    + between.lower() + " down to "
                    + between.upper() + " and takes in no value.", "Write the lower end first.",
                    swap(stated.limit(), between));
        }
    }

    private static Fix[] swap(Written<Limit> limit, Limit.Between between) {
        Optional<SourceRange> lower = SourceLocator.of(limit, 0);
        Optional<SourceRange> upper = SourceLocator.of(limit, 1);
        if (lower.isEmpty() || upper.isEmpty()) {
            return new Fix[0];
        }
        return new Fix[] {new Fix("Swap the two ends", List.of(new Fix.Edit(lower.get(), between.upper().spelling()),
                new Fix.Edit(upper.get(), between.lower().spelling())))};
    }

    private static void bandwidth(Written<MeterRange> range, Findings findings) {
        Optional<Quantity> low = range.value().lowestFrequency();
        Optional<Quantity> high = range.value().highestFrequency();
        if (low.isPresent() && high.isPresent() && low.get().dimension().equals(high.get().dimension())
                && low.get().base().compareTo(high.get().base()) > 0) {
            findings.report(range.at(), "The bandwidth runs from " + low.get() + " down to " + high.get() + ".",
                    "Write the lower frequency first.");
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Showing;
import org.faultwright.quantity.Exact;

/** Shares of what a step shows that do not come to the whole. */
public final class SignatureSharesNot100 implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("signature-shares-not-100", Severity.ERROR, Group.FAULTS,
            "The shares of what a step shows do not come to 100 %.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    private static final Exact WHOLE = Exact.of(100);

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().ifPresent(procedure -> procedure.faults().forEach(fault -> fault.shows()
                .forEach(showing -> check(fault, showing, findings))));
    }

    private static void check(Fault fault, Showing showing, Findings findings) {
        List<Exact> shares = showing.possible().stream().flatMap(possible -> possible.share().stream()).toList();
        if (shares.isEmpty()) {
            return;
        }
        Exact sum = shares.stream().reduce(Exact.ZERO, Exact::plus);
        boolean all = shares.size() == showing.possible().size();
        if (all && sum.compareTo(WHOLE) != 0) {
            findings.report(showing.at(), "What " + showing.step() + " shows for " + fault.name() + " comes to " + sum
                    + " % instead of 100 %.", "Correct the shares, or leave one out: it then takes the rest.");
        } else if (!all && sum.compareTo(WHOLE) >= 0) {
            findings.report(showing.at(), "The shares given for " + showing.step() + " of " + fault.name() + " come to " + sum
                    + " % and leave nothing for the outcome without one.", "Correct the shares.");
        }
    }
}

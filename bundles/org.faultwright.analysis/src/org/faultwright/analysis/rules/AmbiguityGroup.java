/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.trace.Ambiguity;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Step;

/** Faults that nothing the procedure asks tells apart. */
public final class AmbiguityGroup implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("ambiguity-group", Severity.WARNING, Group.FAULTS,
            "Faults that no step of the procedure tells apart, and no conclusion finds together.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    private static final int MOST_NAMED = 3;

    @Override
    public boolean takesLong() {
        return true;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        Optional<FaultTable> table = FaultTable.in(subject);
        Ambiguity.in(subject).ifPresent(ambiguity -> ambiguity.groups().stream()
                .filter(group -> !group.acknowledged() && group.faults().stream().noneMatch(table.orElseThrow()::saysNothingOf))
                .forEach(group -> report(ambiguity, group, findings)));
    }

    private static void report(Ambiguity ambiguity, Ambiguity.Group group, Findings findings) {
        findings.report(group.faults().get(0).name().at(),
                "No step that is asked tells " + Listing.names(group.faults()) + " apart.", advice(ambiguity, group));
    }

    private static String advice(Ambiguity ambiguity, Ambiguity.Group group) {
        List<Step> unused = ambiguity.unusedThatSeparate(group);
        if (!unused.isEmpty()) {
            return Listing.names(unused) + " would: let the steps lead there.";
        }
        List<String> silent = ambiguity.silentForSome(group).stream().map(step -> step.name().text()).toList();
        return silent.isEmpty() ? "Add a step that does, or one conclusion that finds them together."
                : "Say what all of them show at " + Listing.some(silent, MOST_NAMED) + ", add a step that tells them apart, or one"
                        + " conclusion that finds them together.";
    }
}

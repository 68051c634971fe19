/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;

/** Words that are no part of the language. */
public final class UnreadableText implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unreadable-text", Severity.ERROR, Group.NAMES,
            "Words that cannot be read as part of a procedure or library.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.document().problems().forEach(problem -> findings.report(problem.at(), problem.message(),
                "Correct or remove these words; what stands around them was still checked."));
    }
}

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
import org.faultwright.analysis.paths.ProcedurePaths;

/** A point that stores more than a person may touch, in a procedure that knows no charge. */
public final class StoredChargeUnsaid implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("stored-charge-unsaid", Severity.ERROR, Group.STATE,
            "A point stores more than a person may touch, and no condition says when it is charged.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).filter(paths -> paths.bench().charged().isEmpty()).ifPresent(paths ->
                paths.map().procedure().own().points().stream().flatMap(point -> StoredCharges.dangerous(point).stream())
                        .forEach(stored -> findings.report(stored.point().stores().orElseThrow().at(), stored.point().name()
                                + " holds more than a person may touch (IEC 60335-1), and no condition says when it is charged: "
                                + stored.energy().inWords() + ".",
                                "Declare one, such as: condition Charge { present, absent } charged when present becomes present when"
                                        + " Supply on proved at " + stored.point().name() + ".")));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.analysis.compare.ProcedureComparison;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;

/** The protection that a change of the steps would take away. */
public final class LostProtection {
    private LostProtection() {
    }

    /** What the text would say no more, and which dangers would be open. */
    public static List<String> of(Document before, Document after, List<Finding> added) {
        List<String> harm = new ArrayList<>();
        if (before instanceof Procedure was && after instanceof Procedure now) {
            ProcedureComparison.of(was, now).stream().filter(one -> one.kind() == Difference.Kind.PROTECTION).map(Difference::toString).forEach(harm::add);
        }
        Set<String> grave = Stream.of(RuleHeader.Group.SAFETY, RuleHeader.Group.STATE).flatMap(group -> RuleIndex.byGroup().getOrDefault(group, List.of()).stream())
                .map(RuleHeader::id).collect(Collectors.toSet());
        added.stream().filter(finding -> finding.severity() == Severity.ERROR && grave.contains(finding.rule())).map(Finding::message).forEach(harm::add);
        return harm;
    }
}

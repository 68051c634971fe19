/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.procedure.SourceRange;

/** Where one rule reports to. */
public final class Findings {
    private final RuleHeader header;
    private final List<Finding> reported = new ArrayList<>();

    public Findings(RuleHeader header) {
        this.header = header;
    }

    public void report(SourceRange at, String message, String advice, Fix... fixes) {
        report(header.severity(), at, message, advice, List.of(), fixes);
    }

    /** Reports with another severity than the rule's usual one. */
    public void report(Severity severity, SourceRange at, String message, String advice, Fix... fixes) {
        report(severity, at, message, advice, List.of(), fixes);
    }

    /** Reports what a path proves. */
    public void report(SourceRange at, String message, String advice, List<PathStep> path, Fix... fixes) {
        report(header.severity(), at, message, advice, path, fixes);
    }

    /** Reports what a path proves, with another severity than the rule's usual one. */
    public void report(Severity severity, SourceRange at, String message, String advice, List<PathStep> path,
            Fix... fixes) {
        reported.add(new Finding(header.id(), severity, at, message, advice, List.copyOf(path), List.of(fixes)));
    }

    /** As the rule says it, without quotation marks around names. */
    public List<Finding> reported() {
        return reported;
    }
}

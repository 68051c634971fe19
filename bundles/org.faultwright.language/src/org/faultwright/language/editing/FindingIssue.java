/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.editing;

import org.eclipse.xtext.diagnostics.Severity;
import org.eclipse.xtext.validation.CheckType;
import org.eclipse.xtext.validation.Issue.IssueImpl;
import org.faultwright.analysis.Finding;

/** A finding as the editing services show it; its code is the rule's id, and the finding itself brings the fixes. */
public final class FindingIssue extends IssueImpl {
    private final Finding finding;

    FindingIssue(Finding finding) {
        this.finding = finding;
        setCode(finding.rule());
        setMessage(finding.message() + (finding.advice().isEmpty() ? "" : " " + finding.advice()));
        setSeverity(severity(finding));
        setType(CheckType.FAST);
        setOffset(finding.at().offset());
        setLength(finding.at().length());
        setLineNumber(finding.at().line());
        setColumn(finding.at().column());
        setLineNumberEnd(finding.at().source().line(finding.at().end()));
        setColumnEnd(finding.at().source().column(finding.at().end()));
    }

    public Finding finding() {
        return finding;
    }

    private static Severity severity(Finding finding) {
        switch (finding.severity()) {
            case ERROR:
                return Severity.ERROR;
            case WARNING:
                return Severity.WARNING;
            default:
                return Severity.INFO;
        }
    }
}

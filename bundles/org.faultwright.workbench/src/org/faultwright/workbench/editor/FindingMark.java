/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.jface.text.source.Annotation;
import org.faultwright.analysis.Finding;

/** A finding at its words in the editor. */
public final class FindingMark extends Annotation {
    private final Finding finding;

    FindingMark(Finding finding) {
        super(type(finding), false, finding.message() + " " + finding.advice());
        this.finding = finding;
    }

    public Finding finding() {
        return finding;
    }

    private static String type(Finding finding) {
        return switch (finding.severity()) {
            case ERROR -> "org.faultwright.workbench.error";
            case WARNING -> "org.faultwright.workbench.warning";
            case ADVICE -> "org.faultwright.workbench.advice";
        };
    }
}

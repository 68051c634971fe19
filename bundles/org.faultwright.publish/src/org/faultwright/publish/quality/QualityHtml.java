/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.page.HtmlText;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.StyleSheet;

/** The quality report for a browser. */
public final class QualityHtml implements FolderExport {
    @Override
    public String name() {
        return "quality-html";
    }

    @Override
    public String title() {
        return "Quality report, HTML";
    }

    @Override
    public PublishedFiles publish(ProcedureFolder folder) {
        QualityReport report = QualityReport.of(folder);
        return new PublishedFiles(report.fileName(".html"), "text/html",
                HtmlText.of(QualityPage.of(report, Medium.SCREEN), StyleSheet.of("page", "screen", "list", "quality")));
    }
}

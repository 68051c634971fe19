/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.Optional;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.PageSheet;
import org.faultwright.publish.page.PdfPrint;
import org.faultwright.publish.page.PdfStamp;
import org.faultwright.publish.page.StyleSheet;

/** The quality report for print and archive. */
public final class QualityPdf implements FolderExport {
    @Override
    public String name() {
        return "quality-pdf";
    }

    @Override
    public String title() {
        return "Quality report, PDF";
    }

    @Override
    public PublishedFiles publish(ProcedureFolder folder) {
        QualityReport report = QualityReport.of(folder);
        byte[] pdf = PdfPrint.of(PageSheet.of(QualityPage.of(report, Medium.PAPER), StyleSheet.of("page", "paper", "list", "quality")),
                new PdfStamp(report.digest(), Optional.empty()), false);
        return new PublishedFiles(report.fileName(".pdf"), "application/pdf", pdf);
    }
}

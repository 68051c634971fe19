/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Published;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.PdfStamp;
import org.faultwright.publish.page.PdfText;
import org.faultwright.publish.page.StyleSheet;
import org.faultwright.publish.plan.Plan;

/** The bench card for print and archive: A4, PDF/A-2a and PDF/UA-1. */
public final class CardPdf implements ProcedureExport {
    @Override
    public String name() {
        return "card-pdf";
    }

    @Override
    public String title() {
        return "Bench card, PDF";
    }

    @Override
    public Published publish(Publication publication) {
        Plan plan = new Plan(publication);
        byte[] pdf = PdfText.of(BenchCard.page(plan, Medium.PAPER), StyleSheet.of("page", "paper"),
                new PdfStamp(publication.digest(), publication.dated()), plan.places(), publication.hasErrors());
        return new Published(FileName.of(publication.procedure(), ".pdf"), "application/pdf", pdf);
    }
}

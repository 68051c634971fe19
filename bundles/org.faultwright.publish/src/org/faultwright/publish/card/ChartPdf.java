/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import org.faultwright.publish.Caution;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.page.PdfPrint;
import org.faultwright.publish.page.PdfStamp;
import org.faultwright.publish.page.PrintDocument;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;

/**
 * The chart of the steps alone, of the routines that stand apart too, on as many pages of A4 as it needs. Steps in the box of another
 * are not drawn.
 */
public final class ChartPdf implements ProcedureExport {
    @Override
    public String name() {
        return "chart-pdf";
    }

    @Override
    public String title() {
        return "Chart of the steps, PDF";
    }

    @Override
    public PublishedFiles publish(Publication publication) {
        CardPlan plan = TypesetPlan.of(publication);
        Paper paper = Paper.A4;
        PrintDocument sheet = new PrintDocument(paper, 1, publication.title(), "Chart of the steps of " + publication.procedure().name().text() + ", "
                + publication.revision(), publication.revision(), (publication.hasErrors() ? "DRAFT \u00B7 " : "") + "SHA-256 " + publication.digest());
        Fo flow = sheet.flow();
        flow.add("block", "role", "H1", "font-size", "14pt", "line-height", "18pt", "font-weight", "bold").text(publication.title());
        Paint.line(flow).text("Numbers are those of the bench card. The likeliest way goes straight down; what parts from it is set in. The word before an arrow is"
                + " what is seen; of a step that follows a routine it is how the routine ends. \u25A0 ends the job. Small steps with a letter, such as 4b, are left out: they stand"
                + " on the card, below the step with their number.");
        Fo caution = Paint.line(flow);
        Paint.bold(caution, Caution.FIRST).verbatim(" ").text(Caution.TRAINED);
        for (CardSection section : plan.sections()) {
            Fo heading = flow.add("block", "id", section.isRoutine() ? CardPlan.anchor(section) : "steps", "keep-with-next.within-column", "always");
            Paint.heading(heading, section.isRoutine() ? "Routine " + section.letter() + ": " + PaperCard.title(section.graph()) : "Steps");
            new PaperChart(paper.room(), true).add(flow.add("block"), plan, section);
        }
        byte[] pdf = PdfPrint.of(sheet, new PdfStamp(publication.digest(), publication.dated()), publication.hasErrors());
        return new PublishedFiles(FileName.of(publication.procedure(), ".chart.pdf"), "application/pdf", pdf);
    }
}

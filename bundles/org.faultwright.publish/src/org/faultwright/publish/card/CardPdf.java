/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.page.Paper;

/** The bench card for print and archive: PDF/A-2a and PDF/UA-1. */
public final class CardPdf implements ProcedureExport {
    private final Paper paper;

    /** For A4. */
    public CardPdf() {
        this(Paper.A4);
    }

    public CardPdf(Paper paper) {
        this.paper = paper;
    }

    @Override
    public String name() {
        return switch (paper) {
            case A4 -> "card-pdf";
            case A5 -> "card-pdf-a5";
            case A4_ACROSS -> "card-pdf-across";
            case LETTER -> "card-pdf-letter";
        };
    }

    @Override
    public String title() {
        return switch (paper) {
            case A4 -> "Bench card, PDF, A4";
            case A5 -> "Bench card, PDF, A5";
            case A4_ACROSS -> "Bench card, PDF, A4 across";
            case LETTER -> "Bench card, PDF, Letter";
        };
    }

    @Override
    public PublishedFiles publish(Publication publication) {
        return new PublishedFiles(FileName.of(publication.procedure(), ending()), "application/pdf", TypesetPlan.printed(publication, paper));
    }

    private String ending() {
        return switch (paper) {
            case A4 -> ".pdf";
            case A5 -> ".a5.pdf";
            case A4_ACROSS -> ".across.pdf";
            case LETTER -> ".letter.pdf";
        };
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;

/** What a reader of the printed card reads, page by page, white space evened out. */
final class CardText {
    /** What stands above the first step. */
    static final String STEPS = "Steps: begin at 1";

    private static final Map<Publication, CardText> PRINTED = new ConcurrentHashMap<>();

    private final List<String> pages;
    private final List<String> spaced;

    private CardText(List<String> spaced) {
        this.spaced = List.copyOf(spaced);
        this.pages = spaced.stream().map(CardText::even).toList();
    }

    /** Printed once. */
    static CardText of(Publication publication) {
        return PRINTED.computeIfAbsent(publication, CardText::print);
    }

    private static CardText print(Publication publication) {
        return of(Samples.publish("card-pdf", publication).bytes());
    }

    static CardText of(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(false);
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replaceAll("[\\s\u00A0\u2002\u2003]+", " "));
            }
            return new CardText(pages);
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }

    /** Without white space: where a line ends is the printer's business. */
    static String even(String text) {
        return text.replaceAll("[\\s\u00A0\u2002\u2003]+", "");
    }

    List<String> pages() {
        return pages;
    }

    /** With one space where white space is. */
    List<String> spaced() {
        return spaced;
    }

    String all() {
        return String.join("", pages);
    }

    boolean says(String words) {
        return all().contains(even(words));
    }

    int position(String words) {
        return all().indexOf(even(words));
    }
}

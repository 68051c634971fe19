/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import javax.print.DocFlavor;
import javax.print.PrintService;
import javax.print.StreamPrintServiceFactory;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pages for a printer, as Java's own PostScript service takes them. */
class CardPrintingTest {
    private final ByteArrayOutputStream paper = new ByteArrayOutputStream();
    private final PrintService printer = StreamPrintServiceFactory.lookupStreamPrintServiceFactories(DocFlavor.SERVICE_FORMATTED.PAGEABLE,
            "application/postscript")[0].getPrintService(paper);

    /** "PostScript Language Document Structuring Conventions", version 3.0: each page begins with its number. */
    @ParameterizedTest
    @ValueSource(strings = { "card-pdf", "card-pdf-a5", "card-pdf-across", "card-pdf-letter" })
    void should_print_every_page_of_every_paper(String export) throws Exception {
        try (CardPages pages = CardPages.open(Samples.publish(export, Samples.everything()).bytes())) {
            CardPrinting.print(pages, printer, new CardPrinting.PrintRequest("Card", 1, true));

            assertEquals(pages.count(), paper.toString(StandardCharsets.ISO_8859_1).lines().filter(line -> line.startsWith("%%Page: ")).count());
        }
    }

    @Test
    void should_refuse_no_copy_and_a_hundred() {
        assertThrows(IllegalArgumentException.class, () -> new CardPrinting.PrintRequest("Card", 0, false));
        assertThrows(IllegalArgumentException.class, () -> new CardPrinting.PrintRequest("Card", CardPrinting.MOST_COPIES + 1, false));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;

/** What a step needs at the bench beside its words: tables of readings, waits, settings, parts and pictures. */
class BenchClausesTest {
    private static final String HTML = Samples.string("card-html", Samples.demo(Samples.REFERENCE));
    private static final String PLAIN = HTML.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");

    @Test
    void should_print_one_table_for_several_readings() {
        assertEquals(1, count("<table class=\"readings\""));
        assertTrue(PLAIN.contains("C9, plus side (up to 14 V dc) 12 V +/- 10 %"), PLAIN);
        assertTrue(PLAIN.contains("all within"), PLAIN);
        assertTrue(PLAIN.contains("outside : C9, plus side") || PLAIN.contains("outside: C9, plus side"), PLAIN);
    }

    @Test
    void should_print_wait_setting_part_number_and_stock() {
        assertTrue(PLAIN.contains("Wait 30 s"), PLAIN);
        assertTrue(PLAIN.contains("1.2 N.m +/- 10 %, torque of four cover screws"), PLAIN);
        assertTrue(PLAIN.contains("no. DUN-L5-A2, have 1 at hand"), PLAIN);
        assertTrue(PLAIN.contains("Written down"), PLAIN);
    }

    @Test
    void should_hold_the_picture_itself_with_its_words() {
        assertEquals(1, count("<img alt=\"C12 between the jack and the heat sink\" src=\"data:image/png;base64,")
                + count("<img src=\"data:image/png;base64,[A-Za-z0-9+/=]+\" alt=\"C12 between the jack and the heat sink\""));
        assertTrue(HTML.contains("img-src data:"));
        assertFalse(HTML.contains("src=\"http"));
    }

    /** Beside the code with the digest, which every card has on its first page. */
    @Test
    void should_print_the_picture_on_paper_with_its_words() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(Samples.publish("card-pdf", Samples.demo(Samples.REFERENCE)).bytes())) {
            int images = 0;
            for (PDPage page : pdf.getPages()) {
                for (COSName name : page.getResources().getXObjectNames()) {
                    images += page.getResources().isImageXObject(name) ? 1 : 0;
                }
            }
            assertTrue(images >= 2, images + " images");
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertTrue(text.contains("C12 between the jack and the heat sink"), text);
        }
    }

    @Test
    void should_tell_in_words_what_cannot_be_shown() {
        String html = Samples.string("card-html", Samples.text("""
                procedure T "T"
                begin at A
                check A "Look" { picture "../a<b>.png" shows "where \\"C1\\" <is>" yes -> B no -> B }
                conclude B "B" { finds nothing }
                """));

        assertFalse(html.contains("<img"));
        assertTrue(html.contains("where &quot;C1&quot; &lt;is&gt; (not found: ../a&lt;b&gt;.png)"), html);
    }

    private static long count(String pattern) {
        return Pattern.compile(pattern).matcher(HTML).results().count();
    }
}

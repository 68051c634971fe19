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
        assertTrue(PLAIN.contains("C9, plus side (up to 14 V dc) 12 V \u00B1 10 %"), PLAIN);
        assertTrue(PLAIN.contains("all within"), PLAIN);
        assertTrue(PLAIN.contains("outside : C9, plus side") || PLAIN.contains("outside: C9, plus side"), PLAIN);
    }

    @Test
    void should_print_wait_setting_part_number_and_stock() {
        assertTrue(PLAIN.contains("wait 30 s"), PLAIN);
        assertTrue(PLAIN.contains("torque of four cover screws 1.2 N\u00B7m \u00B1 10 %"), PLAIN);
        assertTrue(PLAIN.contains("part no. DUN-L5-A2, 1 at hand"), PLAIN);
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
        assertTrue(html.contains("where &quot;C1&quot; &lt;is&gt; (cannot be shown: ../a&lt;b&gt;.png is no name of a picture; write a PNG"), html);
    }

    /** What is wrong with a picture is told, so that it can be put right: it need not be missing. */
    @Test
    void should_say_on_paper_why_a_picture_cannot_be_shown() {
        CardText card = CardText.of(Samples.text("""
                procedure T "T"
                begin at A
                check A "Look" { picture "board.gif" shows "The board" yes -> B no -> B }
                conclude B "B" { finds nothing }
                """));

        assertTrue(card.says("The board (cannot be shown: board.gif is no name of a picture; write a PNG or JPEG"), card.all());
    }

    private static final String PROVING = """
            procedure T "T"
            condition Charge "Stored charge" { present, absent } charged when present starts present
            condition Jig "Jig" { on, off } starts on
            instrument Meter "Hand meter" { dc voltage up to 600 V ac voltage up to 600 V dc current up to 1 A }
            point Bank "C20" carries up to 400 V dc
            begin at Try
            check Try "Does it read?" { tries Meter yes -> Read no -> End }
            measure Read "Read it" { dc voltage at Bank using Meter gone at most 5 V -> Draw proves Charge absent left over 5 V -> End }
            measure Draw "What it draws" { dc current through Bank using Meter expects at most 1 A within -> Expect outside -> End }
            measure Expect "Read it again" { dc voltage at Bank using Meter expects at most 5 V
                within -> Other proves Charge absent outside -> End }
            measure Other "Jig" { dc voltage at Bank using Meter low at most 6 V -> End proves Jig off high over 6 V -> End }
            conclude End "End" { finds nothing }
            """;

    @Test
    void should_lead_a_current_through_a_point_and_read_a_voltage_at_one() {
        CardText card = CardText.of(Samples.text(PROVING));

        assertTrue(card.says("Through C20 (up to 400 V dc) Measure dc current, Hand meter"), card.all());
        assertTrue(card.says("At C20 (up to 400 V dc) Measure dc voltage, Hand meter"), card.all());
    }

    /** A charge has the sign that the leads give it; a limit upwards that proves something holds for both (common practice). */
    @Test
    void should_say_where_a_reading_counts_without_its_sign_and_nowhere_else() {
        String html = Samples.string("card-html", Samples.text(PROVING));
        String bounded = Samples.string("card-html", Samples.text(PROVING.replace("low at most 6 V", "low -6 V .. 6 V")));
        CardText card = CardText.of(Samples.text(PROVING));

        assertTrue(html.contains("<b>gone</b>: at most 5 V, without its sign"), html);
        assertTrue(html.contains("<b>within</b>: at most 5 V, without its sign"), html);
        assertTrue(html.contains("<b>low</b>: at most 6 V, without its sign"), html);
        assertEquals(3, html.split("without its sign", -1).length - 1, html);
        assertEquals(2, bounded.split("without its sign", -1).length - 1, "a limit of its own to both sides");
        assertTrue(card.says("gone at most 5 V, without its sign (proves Stored charge absent)"), card.all());
        assertTrue(card.says("within without its sign (proves Stored charge absent)"), card.all());
        assertEquals(3, card.all().split("withoutitssign", -1).length - 1, card.all());
    }

    /** A dead meter proves everything dead (common practice). */
    @Test
    void should_ask_for_a_known_source_before_an_instrument_proves() {
        assertTrue(CardText.of(Samples.text(PROVING)).says("Try first Hand meter on a known source"));
        assertTrue(Samples.string("card-html", Samples.text(PROVING)).replaceAll("<[^>]*>", "").contains("Try first Hand meter on a known source"));
    }

    private static long count(String pattern) {
        return Pattern.compile(pattern).matcher(HTML).results().count();
    }
}

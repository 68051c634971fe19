/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The basics of WCAG 2.2 that can be told from the page alone. */
class CardHtmlTest {
    private static final String HTML = Samples.string("card-html", Samples.everything());

    private static List<String> found(String pattern) {
        List<String> found = new ArrayList<>();
        Matcher matcher = Pattern.compile(pattern).matcher(HTML);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    /** WCAG 3.1.1, 2.4.2. */
    @Test
    void should_state_language_and_title() {
        assertEquals(List.of("en"), found("<html lang=\"([a-z]+)\">"));
        assertEquals(List.of("Plate stays cold &amp; the display shows &lt; 40 \u00B0C"), found("<title>([^<]*)</title>"));
    }

    /** WCAG 1.3.1: one main heading, and no level left out. */
    @Test
    void should_nest_headings() {
        List<Integer> levels = found("<h([1-6])[ >]").stream().map(Integer::valueOf).toList();
        assertEquals(1, levels.stream().filter(level -> level == 1).count());
        assertEquals(1, levels.get(0));
        for (int i = 1; i < levels.size(); i++) {
            assertTrue(levels.get(i) - levels.get(i - 1) <= 1, "heading " + i + " of " + levels);
        }
        assertTrue(levels.size() > 30);
    }

    /** WCAG 1.3.1: each table has header cells that say what they head. */
    @Test
    void should_head_every_table() {
        List<String> tables = found("(?s)(<table.*?</table>)");
        assertTrue(tables.size() > 10);
        tables.forEach(table -> assertTrue(table.contains("<th"), table));
        long headers = found("(<th[ >])").size();
        assertEquals(headers, found("<th[^>]* scope=\"(row|col)\"").size());
    }

    @Test
    void should_give_each_id_once_and_lead_every_link_to_one() {
        List<String> ids = found(" id=\"([^\"]*)\"");
        Set<String> once = new HashSet<>(ids);
        assertEquals(ids.size(), once.size());
        List<String> links = found("href=\"#([^\"]*)\"");
        assertTrue(links.size() > 30);
        links.forEach(link -> assertTrue(once.contains(link), link));
    }

    @Test
    void should_depend_on_nothing_outside_the_file() {
        assertFalse(HTML.contains("http://"));
        assertFalse(HTML.contains("https://"));
        assertFalse(HTML.contains("url("));
        assertFalse(HTML.contains("@import"));
    }

    /**
     * WCAG 2.2, 1.4.3: 4.5 to 1 for text of this size. ANSI Z535.4 sets danger in white on red, warning in black on
     * orange, caution in black on yellow, notice in white on blue.
     */
    @ParameterizedTest
    @CsvSource({ "danger .word", "warning .word", "note.caution .word", "notice .word", "step h3 .number" })
    void should_set_words_in_enough_contrast(String style) {
        Matcher rule = Pattern.compile("(?s)\\." + Pattern.quote(style) + " \\{[^}]*?\\}").matcher(HTML);
        assertTrue(rule.find(), style);
        double ground = luminance(rule.group(), "background-color: #([0-9a-f]{6})");
        double ink = luminance(rule.group(), "[ ;{]color: #([0-9a-f]{6})");
        double contrast = (Math.max(ground, ink) + 0.05) / (Math.min(ground, ink) + 0.05);
        assertTrue(contrast >= 4.5, style + " has a contrast of " + contrast);
    }

    /** Relative luminance after WCAG 2.2, from sRGB (IEC 61966-2-1). */
    private static double luminance(String rule, String pattern) {
        Matcher colour = Pattern.compile(pattern).matcher(rule);
        assertTrue(colour.find(), rule);
        int rgb = Integer.parseInt(colour.group(1), 16);
        return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.node.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** CommonMark 0.31.2, 2.4 "Backslash escapes": a sign of ASCII behind a backslash is that sign; 5.2, what begins an entry of a list. */
class MarkdownTest {
    @ParameterizedTest
    @ValueSource(strings = {"24 V", "**bold** _and_ `code`", "1. first", "12) twelfth", "4.7 kohm", "- a dash", "--- x", "+5 V", "= even", "===", "~~~ x", "> 5 V", "# heading",
        "<b>&amp;</b>", "a | b", "[here](http://x)", "![p](x.png)", "back\\slash \\* twice", "\u03a9 < 5 & more", "-5 V .. +5 V", "1."})
    void should_mean_nothing_but_themselves(String words) {
        assertEquals(words, said(Markdown.plain(words)));
        assertEquals(words, said("before\n" + Markdown.plain(words)).substring("before".length()));
    }

    @Test
    void should_keep_words_in_one_line() {
        assertEquals("a b c", Markdown.plain("a\n\nb\tc"));
    }

    @Test
    void should_mean_nothing_but_themselves_whatever_they_are() {
        Random random = new Random(20261127);
        String signs = "ab1. -+=~*_`<>&|#[]()!\\\"':/9";
        for (int i = 0; i < 5_000; i++) {
            StringBuilder words = new StringBuilder("x".repeat(random.nextInt(2)));
            for (int length = 1 + random.nextInt(12); length > 0; length--) {
                words.append(signs.charAt(random.nextInt(signs.length())));
            }
            String line = words.toString().strip().replaceAll(" +", " ");
            if (!line.isEmpty()) {
                assertEquals(line, said(Markdown.plain(line)));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\u0000", "```", "| a |\n|---", "[[[[[[", "**", "- - - - - - -", "<!--", "\ud800"})
    void should_read_whatever_is_there(String markdown) {
        assertNotNull(Markdown.read(markdown));
    }

    /** The words of a page that is one paragraph of words alone. */
    private static String said(String markdown) {
        Node page = Markdown.read(markdown);
        Node paragraph = page.getFirstChild();
        assertTrue(paragraph instanceof Paragraph && paragraph.getNext() == null, () -> "\"" + markdown + "\" is more than a paragraph: " + paragraph);
        StringBuilder said = new StringBuilder();
        for (Node part = paragraph.getFirstChild(); part != null; part = part.getNext()) {
            if (part instanceof Text text) {
                said.append(text.getLiteral());
            } else {
                assertEquals("SoftLineBreak", part.getClass().getSimpleName(), () -> "\"" + markdown + "\" is more than words");
            }
        }
        return said.toString();
    }
}

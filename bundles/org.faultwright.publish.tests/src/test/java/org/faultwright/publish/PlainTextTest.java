/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.faultwright.publish.page.PlainText;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainTextTest {
    // Escapes are written twice so that the control characters do not stand in this file.
    @ParameterizedTest
    @CsvSource({
        "'plain words', 'plain words'",
        "'  two   gaps  ', 'two gaps'",
        "'line\\u000Aline', 'line line'",
        "'bell\\u0007\\u0000here', 'bell here'",
        "'right-to-left \\u202Eover\\u202Cride', 'right-to-left override'",
        "'zero\\u200Bwidth\\uFEFF', 'zerowidth'",
        "'half \\uD83D pair', 'half \\uFFFD pair'",
        "'never \\uFFFE a character', 'never \\uFFFD a character'",
        "'own \\uE000 use', 'own \\uFFFD use'",
        "'\\u03A9 \\u00B5 \\u00B1 \\u00B0 \\u2265 \\u2264 \\u2192', '\\u03A9 \\u00B5 \\u00B1 \\u00B0 \\u2265 \\u2264 \\u2192'",
        "'no\\u00A0break', 'no break'",
        "'', ''" })
    void should_leave_only_what_can_be_shown(String written, String shown) {
        assertEquals(unescaped(shown), PlainText.line(unescaped(written)));
    }

    private static String unescaped(String text) {
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            if (text.startsWith("\\u", i)) {
                plain.append((char) Integer.parseInt(text.substring(i + 2, i + 6), 16));
                i += 5;
            } else {
                plain.append(text.charAt(i));
            }
        }
        return plain.toString();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FileNameTest {
    @ParameterizedTest
    @ValueSource(strings = { "OllenbyFaintLabels", "a", "A_1-b" })
    void should_keep_plain_names(String name) {
        assertEquals(name, FileName.plain(name));
    }

    @ParameterizedTest
    @ValueSource(strings = { "", ".", "..", "../../etc/passwd", "C:\\Windows", "a/b", "nul", "COM1", "\u0000", "\u00B5Volt",
        "a b", "a.b", "\u202Egnp.exe", "-rf /", "name\nwith\rlines" })
    void should_make_a_plain_name_of_anything(String name) {
        String plain = FileName.plain(name);
        assertTrue(plain.matches("[A-Za-z0-9_-]+"), plain);
        assertNotEquals(name, plain);
    }

    @Test
    void should_keep_names_apart_that_differ_only_in_what_is_replaced() {
        assertNotEquals(FileName.plain("\u00B5Volt"), FileName.plain("\u03A9Volt"));
    }

    @Test
    void should_shorten_long_names_and_keep_them_apart() {
        String one = FileName.plain("x".repeat(5000));
        assertTrue(one.length() < 100, one);
        assertNotEquals(one, FileName.plain("x".repeat(5001)));
    }

    @ParameterizedTest
    @ValueSource(strings = { "a/b.pdf", "..", "a", "a.p df", "/a.pdf", "a.pdf/" })
    void should_never_publish_under_a_path(String name) {
        assertThrows(IllegalArgumentException.class, () -> new PublishedFiles(name, "application/pdf", new byte[0]));
    }
}

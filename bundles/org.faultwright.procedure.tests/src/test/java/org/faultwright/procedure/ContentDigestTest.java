/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ContentDigestTest {
    @Test
    void should_be_sha256_of_text_and_end_mark() {
        // FIPS 180-4; computed with an independent program: printf 'library A\0' | sha256sum
        assertEquals(INDEPENDENT, ContentDigest.of(library("library A")));
    }

    @Test
    void should_not_depend_on_line_ends_or_on_a_digest_quoted() {
        String plain = "library A\nrevision 2 released digest \"\"\n";
        String windows = "library A\r\nrevision 2 released digest \"0123abcd\"\r\n";

        assertEquals(ContentDigest.of(library(plain)), ContentDigest.of(library(windows)));
        assertEquals(ContentDigest.of(library("library A\nrevision 2 released\n")), ContentDigest.of(library(plain)));
    }

    @Test
    void should_change_with_the_text_and_with_a_library_used() {
        Library used = library("library B");

        assertNotEquals(ContentDigest.of(library("library A")), ContentDigest.of(library("library C")));
        assertNotEquals(ContentDigest.of(library("library A")), ContentDigest.of(library("library A", used)));
    }

    private static final String INDEPENDENT = "a59b5782b078fb342dbbb2a66433eee91e74a00e22c85ad22b4f667bf6637106";

    private static Library library(String text, Library... used) {
        SourceText source = new SourceText("A.procedure", text);
        SourceRange whole = new SourceRange(source, 0, text.length());
        return new Library(source, new Name("A", whole), "A", List.of(), List.of(used), Declarations.NONE,
                Optional.empty(), Optional.empty(), List.of(), whole);
    }
}

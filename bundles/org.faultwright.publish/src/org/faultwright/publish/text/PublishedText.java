/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.text;

import java.nio.charset.StandardCharsets;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.SourceText;
import org.faultwright.publish.FileName;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;

/**
 * The text itself, letter by letter, so that a later revision can be compared with this one. Its ending keeps it from
 * being taken for a text to work on.
 */
public final class PublishedText {
    /** Of texts as they were published. */
    public static final String ENDING = ".procedure.txt";

    private PublishedText() {
    }

    public static PublishedFiles of(Publication publication) {
        return of(FileName.of(publication.procedure(), ENDING), publication.procedure().source());
    }

    /** Of a library that published procedures use. */
    public static PublishedFiles of(Library library) {
        return of(FileName.of(library, ENDING), library.source());
    }

    private static PublishedFiles of(String file, SourceText text) {
        return new PublishedFiles(file, "text/plain", text.content().getBytes(StandardCharsets.UTF_8));
    }
}

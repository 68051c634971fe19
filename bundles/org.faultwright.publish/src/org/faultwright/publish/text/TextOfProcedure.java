/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.text;

import java.nio.charset.StandardCharsets;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Published;

/**
 * The text itself, letter by letter, so that a later revision can be compared with this one. Its ending keeps it from
 * being taken for a text to work on.
 */
public final class TextOfProcedure implements ProcedureExport {
    /** Of texts as they were published. */
    public static final String ENDING = ".procedure.txt";

    @Override
    public String name() {
        return "procedure-text";
    }

    @Override
    public String title() {
        return "Text as published";
    }

    @Override
    public Published publish(Publication publication) {
        return new Published(FileName.of(publication.procedure(), ENDING), "text/plain",
                publication.procedure().source().content().getBytes(StandardCharsets.UTF_8));
    }
}

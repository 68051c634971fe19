/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.text;

import java.nio.charset.StandardCharsets;
import org.faultwright.procedure.Library;
import org.faultwright.publish.FileName;
import org.faultwright.publish.LibraryExport;
import org.faultwright.publish.Published;

/** The text of a library that published procedures use, letter by letter. */
public final class TextOfLibrary implements LibraryExport {
    @Override
    public String name() {
        return "library-text";
    }

    @Override
    public String title() {
        return "Text of the libraries used";
    }

    @Override
    public Published publish(Library library) {
        return new Published(FileName.of(library, TextOfProcedure.ENDING), "text/plain",
                library.source().content().getBytes(StandardCharsets.UTF_8));
    }
}

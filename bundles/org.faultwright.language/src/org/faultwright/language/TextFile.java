/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.faultwright.procedure.SourceText;

/** Reads a file as UTF-8. */
final class TextFile {
    private TextFile() {
    }

    static SourceText read(Path file) throws IOException {
        return read(file, file.toString());
    }

    /** Of a file that is too long to be a procedure, just enough to say so. */
    static SourceText read(Path file, String name) throws IOException {
        try (InputStream bytes = Files.newInputStream(file)) {
            return new SourceText(name, new String(bytes.readNBytes(4 * SingleTexts.LONGEST), StandardCharsets.UTF_8));
        }
    }
}

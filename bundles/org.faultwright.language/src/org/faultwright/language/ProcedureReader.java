/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.faultwright.language.blocks.BlockReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;

/**
 * Reads procedures and libraries. Whatever the text, a document comes back, with the words that could
 * not be read as its problems. Readers may be shared between threads.
 */
public final class ProcedureReader {
    private final SingleTexts texts = new SingleTexts();
    private final Libraries libraries;

    public ProcedureReader(LibraryFinder finder) {
        this.libraries = new Libraries(finder, texts);
    }

    /** A reader that looks for libraries in the file system, as {@link FileLibraryFinder} describes. */
    public static ProcedureReader overFiles() {
        return new ProcedureReader(new FileLibraryFinder());
    }

    /** Never throws, whatever the text. */
    public Document read(SourceText text) {
        return libraries.resolve(texts.read(text));
    }

    /** The same. @param looked is told of each library that is looked for, found or not */
    public Document read(SourceText text, Consumer<LibraryLookup> looked) {
        return libraries.resolve(texts.read(text), looked);
    }

    /** Reads one text again and again while it changes. May be shared between threads. */
    public final class Changing {
        private final AtomicReference<BlockReader.Reading> last = new AtomicReference<>();

        /** The same as {@link ProcedureReader#read(SourceText)} gives, sooner. */
        public synchronized Document read(SourceText text) {
            return libraries.resolve(texts.read(text, last));
        }
    }

    /** For a text that is being written. */
    public Changing changing() {
        return new Changing();
    }

    /** @throws IOException if the file cannot be read at all */
    public Document read(Path file) throws IOException {
        return read(text(file));
    }

    /** What a file says, unread. @throws IOException if the file cannot be read at all */
    public static SourceText text(Path file) throws IOException {
        return TextFile.read(file);
    }
}

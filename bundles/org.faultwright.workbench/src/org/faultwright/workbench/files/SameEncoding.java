/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.files;

import java.nio.charset.Charset;
import java.util.Optional;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;

/**
 * Writes a text in the encoding that it was read in. The platform asks the text itself, which cannot know, and would
 * otherwise remember it in a file of settings, where it is wrong as soon as another program writes the file.
 */
public final class SameEncoding {
    private static final ThreadLocal<Charset> WRITING = new ThreadLocal<>();

    private SameEncoding() {
    }

    /** The encoding of the text that this thread is writing; absent while it writes none. */
    static Optional<Charset> ofTextBeingWritten() {
        return Optional.ofNullable(WRITING.get());
    }

    /** What may fail. */
    @FunctionalInterface
    public interface Write {
        void run() throws CoreException;
    }

    public static void commit(ITextFileBuffer buffer, IProgressMonitor monitor) throws CoreException {
        during(Charset.forName(buffer.getEncoding()), () -> buffer.commit(monitor, false));
    }

    public static void during(Charset encoding, Write write) throws CoreException {
        WRITING.set(encoding);
        try {
            write.run();
        } finally {
            WRITING.remove();
        }
    }
}

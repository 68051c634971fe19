/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.files;

import java.nio.charset.Charset;
import java.util.Optional;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
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
        during(buffer, () -> buffer.commit(monitor, false));
    }

    /** Writes a buffer; the file stays as it was where that fails. */
    public static void during(ITextFileBuffer buffer, Write write) throws CoreException {
        Charset encoding = Charset.forName(buffer.getEncoding());
        IFile file = ResourcesPlugin.getWorkspace().getRoot().getFile(buffer.getLocation());
        WRITING.set(encoding);
        try {
            SafeOverwrite.during(file, buffer.getDocument().get().getBytes(encoding).length, write);
        } finally {
            WRITING.remove();
        }
    }
}

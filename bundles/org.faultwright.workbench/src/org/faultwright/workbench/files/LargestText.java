/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.files;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;

/** What is too large to be a procedure, and would stop the window for minutes if it were laid out. */
public final class LargestText {
    /** In bytes; the demo's longest text has 13,000. */
    public static final int LARGEST_FILE = 4_000_000;
    /** In characters (bytes, in a file). */
    public static final int LONGEST_LINE = 100_000;

    private LargestText() {
    }

    /** @throws CoreException with a sentence for the user when the file is too large to be opened */
    public static void check(IFile file) throws CoreException {
        Optional<String> why = refusal(file);
        if (why.isPresent()) {
            throw new CoreException(new Status(IStatus.WARNING, "org.faultwright.workbench", why.get() + " It was not opened."));
        }
    }

    /** Why a file is not read, in a sentence; absent for what a procedure can be. */
    public static Optional<String> refusal(IFile file) {
        Path path = file.getLocation() == null ? null : file.getLocation().toPath();
        if (path == null || !Files.isRegularFile(path)) {
            return Optional.empty();
        }
        String name = "\"" + file.getName() + "\"";
        try {
            long size = Files.size(path);
            if (size > LARGEST_FILE) {
                return Optional.of(name + " has " + size / 1_000_000 + " MB; a procedure has at most " + LARGEST_FILE / 1_000_000
                        + " MB.");
            }
            return size > LONGEST_LINE && hasTooLongLine(path) ? Optional.of(name + " has a line of more than "
                    + LONGEST_LINE / 1000 + ",000 characters, as no procedure has.") : Optional.empty();
        } catch (IOException unreadable) {
            return Optional.of(name + " cannot be read: may you read it?");
        }
    }

    public static boolean hasTooLongLine(String text) {
        int from = 0;
        while (text.length() - from > LONGEST_LINE) {
            int end = text.indexOf('\n', from);
            if (end < 0 || end - from > LONGEST_LINE) {
                return true;
            }
            from = end + 1;
        }
        return false;
    }

    private static boolean hasTooLongLine(Path file) throws IOException {
        try (InputStream bytes = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
            int length = 0;
            for (int next = bytes.read(); next >= 0; next = bytes.read()) {
                length = next == '\n' ? 0 : length + 1;
                if (length > LONGEST_LINE) {
                    return true;
                }
            }
            return false;
        }
    }
}

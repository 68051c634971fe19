/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.files;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.Status;

/**
 * Writes over a file so that the old text stays where the new one cannot be written whole. The platform empties a file before it
 * knows whether there is room; the file itself is kept, and not another one put in its place, so that its owner, its links and
 * who may read it stay.
 */
public final class SafeOverwrite {
    private SafeOverwrite() {
    }

    /**
     * @param size of what is written, in bytes
     * @throws CoreException when it cannot be written; what the file held is still there then
     */
    public static void during(IFile file, long size, SameEncoding.Write write) throws CoreException {
        Path path = file.getLocation() == null ? null : file.getLocation().toPath();
        if (path == null || !Files.isRegularFile(path)) {
            write.run();
            return;
        }
        try {
            byte[] before = Files.readAllBytes(path);
            FileTime written = Files.getLastModifiedTime(path);
            requireRoom(path, size);
            try {
                write.run();
            } catch (CoreException refused) {
                putBack(path, before, written);
                throw refused;
            }
        } catch (IOException refused) {
            throw new CoreException(Status.error("There is no room for " + path + ", or it cannot be read.", refused));
        }
    }

    /** @throws IOException where there is no room for as much beside the file */
    private static void requireRoom(Path path, long size) throws IOException {
        Path trial;
        try {
            trial = Files.createTempFile(path.getParent(), ".writing-", ".part");
        } catch (AccessDeniedException folderOfAnother) {
            return;
        }
        try {
            Files.write(trial, new byte[Math.toIntExact(size)]);
        } finally {
            Files.deleteIfExists(trial);
        }
    }

    /** With its time, so that nobody takes it for a change by another program. */
    private static void putBack(Path path, byte[] before, FileTime written) {
        try {
            if (!Arrays.equals(before, Files.readAllBytes(path))) {
                Files.write(path, before);
                Files.setLastModifiedTime(path, written);
            }
        } catch (IOException lost) {
            ILog.of(SafeOverwrite.class).error(path + " could not be put back as it was.", lost);
        }
    }
}

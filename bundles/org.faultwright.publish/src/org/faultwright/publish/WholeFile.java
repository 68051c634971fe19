/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;

/** Writes a file whole or not at all: a reader never meets half of one, and an old one stays until the new one stands. */
public final class WholeFile {
    private WholeFile() {
    }

    /**
     * Writes into the folder, which is made where it is missing.
     *
     * @throws PublishingRefused with one sentence for the user; the folder is then as it was
     */
    public static Path write(Path folder, Published published) throws PublishingRefused {
        Path target = folder.resolve(published.fileName());
        try {
            Files.createDirectories(folder);
            Path part = Files.createTempFile(folder, ".publishing-", ".part");
            try {
                Files.write(part, published.bytes());
                readableLikeOthers(part);
                move(part, target);
            } finally {
                Files.deleteIfExists(part);
            }
            return target;
        } catch (IOException | SecurityException refused) {
            throw new PublishingRefused("Cannot write " + published.fileName() + " into the folder " + folder + " ("
                    + reason(folder, refused) + "): choose a folder that you may write to.", refused);
        }
    }

    private static void move(Path part, Path target) throws IOException {
        try {
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException crossing) {
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** A temporary file is made for its owner alone, but a card is there to be read. */
    private static void readableLikeOthers(Path part) throws IOException {
        if (part.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(part, PosixFilePermissions.fromString("rw-r--r--"));
        }
    }

    private static String reason(Path folder, Exception refused) {
        if (refused instanceof FileAlreadyExistsException || refused instanceof NotDirectoryException) {
            return "a file of that name is in the way";
        }
        if (refused instanceof AccessDeniedException || refused instanceof SecurityException
                || Files.isDirectory(folder) && !Files.isWritable(folder)) {
            return "not allowed";
        }
        return String.valueOf(refused.getMessage()).replaceAll("\\s+", " ");
    }
}

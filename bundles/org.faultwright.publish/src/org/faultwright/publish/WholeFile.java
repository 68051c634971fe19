/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
    public static Path write(Path folder, PublishedFiles published) throws PublishingRefused {
        Path target = folder.resolve(published.fileName());
        try {
            replace(target, published.bytes());
            return target;
        } catch (IOException | SecurityException refused) {
            throw new PublishingRefused("Cannot write " + published.fileName() + " into the folder " + folder + " ("
                    + reason(folder, refused) + "): choose a folder that you may write to.", refused);
        }
    }

    /**
     * Puts the content in the place of what is there, or makes the file and its folder; who may read it stays as it was.
     *
     * @throws IOException if it cannot be written; what was there before is still there then
     */
    public static void replace(Path target, byte[] content) throws IOException {
        Path part = part(target, content);
        try {
            move(part, target);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /**
     * Makes a file that is not there yet, and its folder; others may read it.
     *
     * @throws FileAlreadyExistsException where there is one of that name, which stays as it is
     * @throws IOException if it cannot be written; nothing of it is there then
     */
    public static void create(Path target, String text) throws IOException {
        Path part = part(target, text.getBytes(StandardCharsets.UTF_8));
        try {
            Files.createLink(target, part);
        } catch (FileAlreadyExistsException there) {
            throw there;
        } catch (IOException | UnsupportedOperationException noLinks) {
            // not every file system has links, such as that of most memory sticks; this refuses a file that is there, too
            Files.move(part, target);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** The content beside the file that it is for. */
    private static Path part(Path target, byte[] content) throws IOException {
        Path folder = target.toAbsolutePath().getParent();
        Files.createDirectories(folder);
        Path part = Files.createTempFile(folder, ".writing-", ".part");
        try {
            Files.write(part, content);
            readableAs(target, part);
            return part;
        } catch (IOException refused) {
            Files.deleteIfExists(part);
            throw refused;
        }
    }

    /** A text in UTF-8 in the place of what is there. */
    public static void replace(Path target, String text) throws IOException {
        replace(target, text.getBytes(StandardCharsets.UTF_8));
    }

    private static void move(Path part, Path target) throws IOException {
        try {
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException crossing) {
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** A temporary file is made for its owner alone, but a new one is there to be read. */
    private static void readableAs(Path target, Path part) throws IOException {
        if (part.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(part, Files.exists(target) ? Files.getPosixFilePermissions(target)
                    : PosixFilePermissions.fromString("rw-r--r--"));
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

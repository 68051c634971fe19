/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes procedure texts whole or not at all. */
final class Texts {
    private Texts() {
    }

    /** @throws CannotProceed if the file cannot be written; it is then as it was */
    static void replace(Path file, String content) {
        Path target = file.toAbsolutePath();
        try {
            Path part = Files.createTempFile(target.getParent(), ".changing-", ".part");
            try {
                Files.write(part, content.getBytes(StandardCharsets.UTF_8));
                keepPermissions(target, part);
                move(part, target);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException refused) {
            throw new CannotProceed("The file " + file + " cannot be written (" + refused.getMessage()
                    + "); it is as it was.");
        }
    }

    /** @throws CannotProceed if there is a file of that name, or if it cannot be written; a file that was there is as it was */
    static void create(Path file, String content) {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new CannotProceed(file + " is there already, and is left as it is; choose another name.");
        }
        Path folder = file.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new CannotProceed("There is no folder " + folder + "; make it first, or check the spelling.");
        }
        replace(file, content);
    }

    private static void keepPermissions(Path from, Path to) throws IOException {
        if (Files.exists(from) && from.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
        }
    }

    private static void move(Path part, Path target) throws IOException {
        try {
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException elsewhere) {
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}

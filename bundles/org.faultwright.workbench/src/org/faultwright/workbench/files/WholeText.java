/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a text in UTF-8, whole or not at all. */
public final class WholeText {
    private WholeText() {
    }

    /** @throws IOException if it cannot be written; what was there before is still there then */
    public static void write(Path target, String text) throws IOException {
        Files.createDirectories(target.toAbsolutePath().getParent());
        Path part = target.resolveSibling("." + target.getFileName() + ".part");
        try {
            Files.write(part, text.getBytes(StandardCharsets.UTF_8));
            move(part, target);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static void move(Path part, Path target) throws IOException {
        try {
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException crossing) {
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}

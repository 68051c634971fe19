/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.recovery;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.core.runtime.ILog;
import org.faultwright.publish.WholeFile;

/**
 * A copy of a text that was typed and not saved.
 *
 * @param file the path of the file it belongs to
 * @param text the whole text as it stood in the editor
 */
record UnsavedText(String file, String text) {
    private static final String ENDING = ".unsaved";

    void keep(Path folder) throws IOException {
        WholeFile.replace(folder.resolve(nameFor(file)), whole());
    }

    /** Keeps it under a name of its own instead of the one under which the next copy of its file is kept. */
    void putAside(Path folder) throws IOException {
        WholeFile.replace(folder.resolve(nameFor(whole())), whole());
        dropUsual(folder);
    }

    void dropAside(Path folder) throws IOException {
        Files.deleteIfExists(folder.resolve(nameFor(whole())));
    }

    /** Another text of the same file stays. */
    private void dropUsual(Path folder) throws IOException {
        Path usual = folder.resolve(nameFor(file));
        if (Files.exists(usual) && read(usual).filter(this::equals).isPresent()) {
            Files.delete(usual);
        }
    }

    /** Drops it under both names. */
    void drop(Path folder) {
        try {
            dropAside(folder);
            dropUsual(folder);
        } catch (IOException refused) {
            ILog.of(UnsavedText.class).warn("The copy of " + file + " cannot be deleted.", refused);
        }
    }

    private String whole() {
        return file + "\n" + text;
    }

    /** The copy in a file of the folder; absent where it is none. */
    static Optional<UnsavedText> read(Path copy) {
        try {
            String whole = Files.readString(copy, StandardCharsets.UTF_8);
            int end = whole.indexOf('\n');
            return end < 0 ? Optional.empty() : Optional.of(new UnsavedText(whole.substring(0, end), whole.substring(end + 1)));
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }

    static boolean isCopy(Path path) {
        return path.getFileName().toString().endsWith(ENDING);
    }

    /** Two files never share a copy: their paths' characters are told apart by a digest. */
    static String nameFor(String file) {
        try {
            byte[] digest = java.security.MessageDigest.getInstance("SHA-256").digest(file.getBytes(StandardCharsets.UTF_8));
            return java.util.HexFormat.of().formatHex(digest, 0, 12) + ENDING;
        } catch (java.security.NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }
}

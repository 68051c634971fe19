/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import org.faultwright.procedure.SourceText;

/**
 * Looks for a library as a file of its name: in the folder of the file that uses it, in that folder's
 * {@code library}, then in the folder above and its {@code library}, up to eight levels. The nearest wins.
 */
public final class FileLibraryFinder implements LibraryFinder {
    private static final int LEVELS = 8;
    private static final String EXTENSION = ".procedure";

    @Override
    public Optional<SourceText> find(String library, String fromFile) {
        return file(library, fromFile).flatMap(FileLibraryFinder::read);
    }

    /** The file that holds the library; absent when there is none. */
    public Optional<Path> file(String library, String fromFile) {
        try {
            Path folder = Path.of(fromFile).toAbsolutePath().normalize().getParent();
            for (int level = 0; level < LEVELS && folder != null; level++, folder = folder.getParent()) {
                for (Path place : new Path[] {folder, folder.resolve("library")}) {
                    Path file = place.resolve(library + EXTENSION);
                    if (Files.isRegularFile(file)) {
                        return Optional.of(file);
                    }
                }
            }
        } catch (InvalidPathException noPath) {
            return Optional.empty();
        }
        return Optional.empty();
    }

    private static Optional<SourceText> read(Path file) {
        try {
            return Optional.of(TextFile.read(file));
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }
}

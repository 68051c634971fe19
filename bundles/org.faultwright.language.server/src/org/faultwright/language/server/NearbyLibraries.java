/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The libraries that a file could use, by their file names; the folders are those in which {@code uses} looks. */
final class NearbyLibraries {
    private static final int LEVELS = 8;
    private static final String EXTENSION = ".procedure";

    private NearbyLibraries() {
    }

    static List<String> of(String file) {
        TreeSet<String> names = new TreeSet<>();
        try {
            Path folder = Path.of(file).toAbsolutePath().normalize().getParent();
            for (int level = 0; level < LEVELS && folder != null; level++, folder = folder.getParent()) {
                addFrom(folder.resolve("library"), names);
            }
        } catch (InvalidPathException | IOException unreadable) {
            return List.copyOf(names);
        }
        return List.copyOf(names);
    }

    private static void addFrom(Path folder, TreeSet<String> names) throws IOException {
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.list(folder)) {
                files.map(path -> path.getFileName().toString()).filter(name -> name.endsWith(EXTENSION))
                        .forEach(name -> names.add(name.substring(0, name.length() - EXTENSION.length())));
            }
        }
    }
}

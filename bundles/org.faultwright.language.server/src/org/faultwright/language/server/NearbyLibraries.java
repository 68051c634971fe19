/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The libraries that a file could use, by their file names; the folders are those in which {@code uses} looks. */
final class NearbyLibraries {
    private static final int LEVELS = 8;
    private static final String EXTENSION = ".procedure";
    private static final Pattern LIBRARY = Pattern.compile("(?m)^\\s*library\\s");
    private static final int BEGINNING = 4_096;
    private static final int MOST_FILES = 500;

    private NearbyLibraries() {
    }

    static List<String> of(String file) {
        TreeSet<String> names = new TreeSet<>();
        try {
            Path folder = (file.startsWith("file:") ? Path.of(URI.create(file)) : Path.of(file)).toAbsolutePath().normalize().getParent();
            for (int level = 0; level < LEVELS && folder != null; level++, folder = folder.getParent()) {
                addFrom(folder.resolve("library"), names);
                addFrom(folder, names);
            }
        } catch (IllegalArgumentException | FileSystemNotFoundException | IOException unreadable) {
            return List.copyOf(names);
        }
        return List.copyOf(names);
    }

    private static void addFrom(Path folder, TreeSet<String> names) throws IOException {
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.list(folder)) {
                files.filter(path -> path.getFileName().toString().endsWith(EXTENSION)).limit(MOST_FILES).filter(NearbyLibraries::isLibrary).map(path -> path.getFileName().toString())
                        .forEach(name -> names.add(name.substring(0, name.length() - EXTENSION.length())));
            }
        }
    }

    /** Beside the libraries there are procedures; the beginning of a file tells them apart. */
    private static boolean isLibrary(Path file) {
        try (InputStream bytes = Files.newInputStream(file)) {
            return LIBRARY.matcher(new String(bytes.readNBytes(BEGINNING), StandardCharsets.UTF_8)).find();
        } catch (IOException unreadable) {
            return false;
        }
    }
}

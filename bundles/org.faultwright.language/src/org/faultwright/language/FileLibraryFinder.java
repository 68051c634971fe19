/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import org.faultwright.procedure.SourceText;

/**
 * Looks for a library as a file of its name: in the folder of the file that uses it, in that folder's
 * {@code library}, then in the folder above and its {@code library}, up to eight levels. The nearest wins.
 * Files are named by path or by {@code file:} address. A file is read again when its time or size changes.
 */
public final class FileLibraryFinder implements LibraryFinder {
    private static final int LEVELS = 8;
    private static final int MOST_KEPT = 256;
    private static final String EXTENSION = ".procedure";

    /** A name of the language, so that no name leads out of the folders searched. */
    private static final Pattern NAME = Pattern.compile("[\\p{L}_\u00B0\u00B5][\\p{L}\\p{N}_\u00B0\u00B5]*");

    private final Map<Path, KnownFile> known = new ConcurrentHashMap<>();

    private record KnownFile(FileTime changed, long size, SourceText text) {
    }

    @Override
    public Optional<SourceText> find(String library, String fromFile) {
        return file(library, fromFile).flatMap(file -> text(file, fromFile.startsWith("file:")));
    }

    /** The file that holds the library; absent when there is none. */
    public Optional<Path> file(String library, String fromFile) {
        if (!NAME.matcher(library).matches()) {
            return Optional.empty();
        }
        return path(fromFile).flatMap(user -> upward(library, user.toAbsolutePath().normalize().getParent()));
    }

    private static Optional<Path> upward(String library, Path start) {
        Path folder = start;
        for (int level = 0; level < LEVELS && folder != null; level++, folder = folder.getParent()) {
            for (Path place : new Path[] {folder, folder.resolve("library")}) {
                Path file = place.resolve(library + EXTENSION);
                if (Files.isRegularFile(file)) {
                    return Optional.of(file);
                }
            }
        }
        return Optional.empty();
    }

    /** A name that is no path, as a text that was never saved may have, has no folder to search. */
    private static Optional<Path> path(String file) {
        try {
            return Optional.of(file.startsWith("file:") ? Path.of(URI.create(file)) : Path.of(file));
        } catch (IllegalArgumentException | FileSystemNotFoundException noPath) {
            return Optional.empty();
        }
    }

    /** A file that vanishes or may not be read counts as not found, which the rule about names then reports. */
    private Optional<SourceText> text(Path file, boolean asAddress) {
        try {
            BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
            String name = asAddress ? file.toUri().toString() : file.toString();
            KnownFile before = known.get(file);
            if (before != null && before.changed().equals(now.lastModifiedTime()) && before.size() == now.size()
                    && before.text().name().equals(name)) {
                return Optional.of(before.text());
            }
            SourceText text = TextFile.read(file, name);
            if (known.size() >= MOST_KEPT) {
                known.clear();
            }
            known.put(file, new KnownFile(now.lastModifiedTime(), now.size(), text));
            return Optional.of(text);
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }
}

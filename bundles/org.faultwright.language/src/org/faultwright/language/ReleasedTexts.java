/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/** Reads the texts that were published with a release: {@code Name.procedure.txt}, with their libraries beside them. */
public final class ReleasedTexts {
    static final String PUBLISHED = ".procedure.txt";
    private static final String WRITTEN = ".procedure";

    private ReleasedTexts() {
    }

    /**
     * The procedures of one text or of all texts of a folder. Where a folder has texts as published, its other files count
     * for nothing.
     *
     * @return empty where there is none
     * @throws IOException if something cannot be read
     */
    public static List<Procedure> in(Path place) throws IOException {
        List<Path> files = Files.isDirectory(place) ? inFolder(place) : List.of(place);
        ProcedureReader reader = new ProcedureReader(ReleasedTexts::library);
        List<Procedure> procedures = new ArrayList<>();
        for (Path file : files) {
            if (reader.read(file) instanceof Procedure procedure) {
                procedures.add(procedure);
            }
        }
        return List.copyOf(procedures);
    }

    private static List<Path> inFolder(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            List<Path> files = all.filter(Files::isRegularFile).sorted().toList();
            List<Path> published = files.stream().filter(file -> file.toString().endsWith(PUBLISHED)).toList();
            return published.isEmpty() ? files.stream().filter(file -> file.toString().endsWith(WRITTEN)).toList() : published;
        }
    }

    private static Optional<SourceText> library(String name, String fromFile) {
        Path beside = Path.of(fromFile).toAbsolutePath().resolveSibling(name + PUBLISHED);
        if (!fromFile.endsWith(PUBLISHED)) {
            return new FileLibraryFinder().find(name, fromFile);
        }
        // today's library in a folder above would hide what the released one said
        if (!Files.isRegularFile(beside)) {
            return Optional.empty();
        }
        try {
            return Optional.of(TextFile.read(beside));
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }
}

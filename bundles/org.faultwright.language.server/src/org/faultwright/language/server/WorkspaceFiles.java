/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.faultwright.language.ProcedureReader;

/** The procedures and libraries of the folders that an editor has open. */
final class WorkspaceFiles {
    /** More than anybody reads through. */
    private static final int MOST_TOLD = 500;
    private static final int MOST_FILES = 5_000;
    private static final int DEEPEST = 12;

    private volatile List<Path> folders = List.of();

    void open(List<Path> opened) {
        folders = List.copyOf(opened);
    }

    /** Those whose name or title hold every word that was asked for, whatever their capitals and accents; unreadable files are passed by. */
    List<WorkspaceSymbol> named(String asked) {
        WantedWords wanted = WantedWords.of(asked);
        List<WorkspaceSymbol> found = new ArrayList<>();
        ProcedureReader reader = ProcedureReader.overFiles();
        for (Path file : all()) {
            try {
                collect(Outline.of(reader.read(file)), wanted, found);
            } catch (IOException unreadable) {
                continue;
            }
            if (found.size() >= MOST_TOLD) {
                return found.subList(0, MOST_TOLD);
            }
        }
        return found;
    }

    /** Every file there is, in the order of folders and names. */
    List<Path> all() {
        return folders.stream().flatMap(folder -> files(folder).stream()).distinct().toList();
    }

    private static List<Path> files(Path folder) {
        try (Stream<Path> all = Files.walk(folder, DEEPEST)) {
            return all.filter(file -> file.toString().endsWith(".procedure") && Files.isRegularFile(file)).sorted().limit(MOST_FILES).toList();
        } catch (IOException | UncheckedIOException gone) {
            return List.of();
        }
    }

    private static void collect(List<OutlineItem> items, WantedWords wanted, List<WorkspaceSymbol> found) {
        for (OutlineItem item : items) {
            if (wanted.allIn(item.label() + " " + item.detail())) {
                Location at = ProtocolPositions.location(item.nameAt());
                found.add(new WorkspaceSymbol(item.label(), ProtocolForms.kind(item), Either.forLeft(at), item.detail()));
            }
            collect(item.children(), wanted, found);
        }
    }
}

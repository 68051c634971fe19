/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.language.beginning.BenchInterview;
import org.faultwright.language.beginning.Interview;
import org.faultwright.language.beginning.InterviewProgress;

/** Asks for a library: the bench, an instrument, what can hurt there. */
final class NewLibraryDialog extends QuestionDialog {
    static final String TITLE = "New library";
    private static final String LIBRARIES = "library";

    private final LibraryPage bench;
    private final DangersPage dangers;
    private final PlacePage place;

    NewLibraryDialog(Shell shell, Path folder) {
        this(shell, new LibraryPage(), new DangersPage(false), folder);
    }

    private NewLibraryDialog(Shell shell, LibraryPage bench, DangersPage dangers, Path folder) {
        this(shell, bench, dangers, new PlacePage(() -> suggested(bench), beside(folder), ""));
    }

    private NewLibraryDialog(Shell shell, LibraryPage bench, DangersPage dangers, PlacePage place) {
        super(shell, TITLE, List.of(bench, dangers, place));
        this.bench = bench;
        this.dangers = dangers;
        this.place = place;
    }

    private static String suggested(LibraryPage bench) {
        return Interview.suggestedName("", bench.bench().isBlank() ? "Own bench" : bench.bench());
    }

    /** Libraries lie beside the others, where there is a folder for them. */
    static Path beside(Path folder) {
        Path libraries = folder.resolve(LIBRARIES);
        return Files.isDirectory(libraries) ? libraries : folder;
    }

    @Override
    Supplier<InterviewProgress> growing() {
        BenchInterview asked = bench.asked(place.isUnnamed() ? suggested(bench) : place.procedureName(), dangers);
        return () -> InterviewProgress.of(asked);
    }

    @Override
    boolean write(InterviewProgress grown) {
        return place.folder().isPresent() && NewText.write(getShell(), TITLE, place.folder().get(), place.procedureName(), grown.text());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Finding;
import org.faultwright.procedure.Library;

/**
 * A folder of procedures that are published together.
 *
 * @param title      what to call it: the folder's or the library's name
 * @param procedures in the order they are listed
 * @param files      names of the files that stand beside the page, so that it links only to what is there
 * @param libraries  the libraries of the folder itself, with what was found in them
 * @param since      the procedures of the last release, where they are known
 * @param asOf       the day that due dates and the age of sources are held against, where one was given
 * @param sourceAge  after how many months a source is old
 */
public record ProcedureFolder(String title, List<Publication> procedures, Set<String> files,
        List<CheckedLibrary> libraries, Optional<EarlierRelease> since, Optional<LocalDate> asOf,
        int sourceAge) {
    private static final int FIVE_YEARS = 60;

    /** A library with its own findings. */
    public record CheckedLibrary(Library library, List<Finding> findings) {
    }

    public ProcedureFolder(String title, List<Publication> procedures, Set<String> files) {
        this(title, procedures, files, List.of(), Optional.empty(), Optional.empty(), FIVE_YEARS);
    }

    /** The same with other files beside the page. */
    public ProcedureFolder with(Set<String> there) {
        return new ProcedureFolder(title, procedures, Set.copyOf(there), libraries, since, asOf, sourceAge);
    }
}

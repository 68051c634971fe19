/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Finding;
import org.faultwright.procedure.Library;
import org.faultwright.publish.since.EarlierRelease;

/**
 * A folder of procedures that are published together.
 *
 * @param title      what to call it: the folder's or the library's name
 * @param procedures in the order they are listed
 * @param files      names of the files that stand beside the page, so that it links only to what is there
 * @param libraries  the libraries of the folder itself, with what was found in them
 * @param since      the trees of the last release, where they are known
 */
public record ProcedureFolder(String title, List<Publication> procedures, Set<String> files,
        List<CheckedLibrary> libraries, Optional<EarlierRelease> since) {
    /** A library with its own findings. */
    public record CheckedLibrary(Library library, List<Finding> findings) {
    }

    public ProcedureFolder(String title, List<Publication> procedures, Set<String> files) {
        this(title, procedures, files, List.of(), Optional.empty());
    }
}

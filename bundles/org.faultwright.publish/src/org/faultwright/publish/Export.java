/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** A form that procedures are published in, reached by its name from the command line and the workbench alike. */
public sealed interface Export permits ProcedureExport, LibraryExport, FolderExport {
    /** Lower case with hyphens, such as {@code card-pdf}. */
    String name();

    /** For a menu or listing, such as {@code Bench card, PDF}. */
    String title();
}

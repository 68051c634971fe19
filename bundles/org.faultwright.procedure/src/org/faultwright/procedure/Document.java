/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;

/** What one file holds: a library or a procedure. */
public sealed interface Document permits Library, Procedure {
    SourceText source();

    Name name();

    String title();

    /** The libraries named by {@code uses}, as written. */
    List<Name> uses();

    /** Those that were found, and in turn what they use, each once, nearest first. */
    List<Library> libraries();

    /** What is declared in this file itself. */
    Declarations own();

    /** The whole declaration. */
    SourceRange at();

    /** Words that could not be read. */
    List<ReadingProblem> problems();

    /** Everything that can be named here: this file's own declarations, then its libraries'. */
    default Scope scope() {
        return Scope.of(this);
    }

    /** The step graphs in this file: a procedure's own steps, then its routines. */
    List<StepGraph> graphs();
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;

/**
 * What procedures of one bench share.
 *
 * @param closesBy   the routine that closes the unit, for procedures that name none
 * @param statedRule the house's rule for readings near a limit, where it states one
 * @param at      the whole declaration
 */
public record Library(SourceText source, Name name, String title, List<Name> uses, List<Library> libraries,
        Declarations own, Optional<Written<StatedDecisionRule>> statedRule, Optional<Name> closesBy, List<ReadingProblem> problems, SourceRange at)
        implements Document {
    /** The same library with those that it uses, nearest first. */
    public Library with(List<Library> used) {
        return new Library(source, name, title, uses, List.copyOf(used), own, statedRule, closesBy, problems, at);
    }

    @Override
    public List<StepGraph> graphs() {
        return List.copyOf(own.routines());
    }
}

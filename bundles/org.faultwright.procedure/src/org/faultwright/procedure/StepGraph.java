/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;

/** Steps that lead on to one another: a procedure's own, or a routine's. */
public sealed interface StepGraph permits Procedure, Routine {
    Name name();

    String title();

    /** Where it begins, as written; the first step when not stated. */
    Optional<Name> begin();

    List<Step> steps();

    /** The steps that stand in the text; the steps that close the unit before a conclusion are not among them. */
    default List<Step> writtenSteps() {
        return steps().stream().filter(step -> !ClosingStep.is(step)).toList();
    }

    /** The names a routine can be left by; empty for a procedure, which ends at its conclusions. */
    List<Name> exits();

    SourceRange at();

    default Optional<Step> step(Name name) {
        return StepsByName.find(steps(), name);
    }

    /** The step it begins at; absent when the name is unknown or there is no step. */
    default Optional<Step> first() {
        return begin().isPresent() ? step(begin().get()) : steps().stream().findFirst();
    }

    default boolean isExit(Name name) {
        return exits().stream().anyMatch(exit -> exit.text().equals(name.text()));
    }
}

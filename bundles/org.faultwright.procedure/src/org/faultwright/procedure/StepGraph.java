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

    /** The steps that stand in the text. */
    default List<Step> writtenSteps() {
        return steps().stream().filter(step -> !step.isUnderstood()).toList();
    }

    /** The steps that a text can name: those that stand in it, and the conclusions of faults that an arrow leads to. */
    default List<Step> namedSteps() {
        return steps().stream().filter(step -> !ClosingStep.is(step)).toList();
    }

    /** The step that an offset of the text lies in or right behind; within a fault the conclusion that an arrow to it leads to. */
    default Optional<Step> stepAt(int offset) {
        return namedSteps().stream().filter(step -> {
            SourceRange at = step.isUnderstood() ? leadsToFaults().stream().filter(fault -> fault.name().equals(step.name())).map(Fault::at).findFirst()
                    .orElse(step.at()) : step.at();
            return at.offset() <= offset && offset <= at.end();
        }).findFirst();
    }

    /** The faults that an arrow can lead to; none in a routine, which does not conclude. */
    default List<Fault> leadsToFaults() {
        return List.of();
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

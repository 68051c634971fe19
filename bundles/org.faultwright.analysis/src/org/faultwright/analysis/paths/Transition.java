/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Optional;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;

/** What leads on from a place: an outcome, or going into a routine that is written out. */
public final class Transition {
    private final int index;
    private final InlinedStep from;
    private final Optional<Outcome> outcome;
    private final Optional<InlinedStep> to;
    private final Optional<InlinedStep> otherwise;

    Transition(int index, InlinedStep from, Optional<Outcome> outcome, Optional<InlinedStep> to, Optional<InlinedStep> otherwise) {
        this.index = index;
        this.from = from;
        this.outcome = outcome;
        this.to = to;
        this.otherwise = otherwise;
    }

    /** Counted from 0 within its {@link StepMap}; the ways of one place follow one another. */
    public int index() {
        return index;
    }

    public InlinedStep from() {
        return from;
    }

    /** The result taken; absent on going into a routine. */
    public Optional<Outcome> outcome() {
        return outcome;
    }

    /** Where it leads; absent in a broken text, and where nobody goes on from. */
    public Optional<InlinedStep> to() {
        return to;
    }

    /** Where it leads once it was taken as often as its bound allows. */
    public Optional<InlinedStep> otherwise() {
        return otherwise;
    }

    public boolean isBounded() {
        return outcome.flatMap(Outcome::repeat).isPresent();
    }

    /** How often it may be taken in one run: 0 or more; without a bound the largest integer. */
    public int atMost() {
        return outcome.flatMap(Outcome::repeat).map(repeat -> Math.max(0, repeat.atMost())).orElse(Integer.MAX_VALUE);
    }

    /** As a step of a path; absent on going into a routine, which shows by the steps that follow. */
    public Optional<PathStep> taken() {
        return outcome.map(result -> new PathStep(from.label(), from.exit().map(Name::text).orElseGet(result::key),
                from.step().name().at()));
    }

    @Override
    public String toString() {
        return taken().map(PathStep::toString).orElse(from.label()) + " -> " + to.map(InlinedStep::toString).orElse("?");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;

/**
 * Where a step stands once every routine is written out behind the step that performs it. A step of a
 * routine has a place for each perform step that leads to it. Coming back from a routine is a place of
 * its own: there the perform step sets what it leaves and takes its outcome.
 */
public final class InlinedStep {
    private final int index;
    private final Step step;
    private final Optional<InlinedStep> caller;
    private final Optional<Name> exit;
    private final boolean writtenOut;
    private final String label;

    InlinedStep(int index, Step step, Optional<InlinedStep> caller, Optional<Name> exit, boolean writtenOut) {
        this.index = index;
        this.step = step;
        this.caller = caller;
        this.exit = exit;
        this.writtenOut = writtenOut;
        this.label = caller.map(outer -> outer.label + "/").orElse("") + step.name().text();
    }

    /** Counted from 0 within its {@link StepMap}. */
    public int index() {
        return index;
    }

    public Step step() {
        return step;
    }

    /** The perform step in whose routine this stands. */
    public Optional<InlinedStep> caller() {
        return caller;
    }

    /** The step of the procedure itself that this belongs to: the place itself outside routines. */
    public InlinedStep outermost() {
        InlinedStep outer = this;
        while (outer.caller.isPresent()) {
            outer = outer.caller.get();
        }
        return outer;
    }

    /** The exit by which a routine has come back to its perform step here; absent where a step begins. */
    public Optional<Name> exit() {
        return exit;
    }

    /** Whether a step begins here, rather than a routine coming back. */
    public boolean isStep() {
        return exit.isEmpty();
    }

    /** Whether the routine that this step performs follows, step by step. */
    public boolean isWrittenOut() {
        return writtenOut;
    }

    /** The step's name; inside a routine {@code Perform/Step}. */
    public String label() {
        return label;
    }

    /** What must hold on coming here. */
    public List<Setting> needs() {
        return begins().needs();
    }

    /** What is set on going on from here, whatever the outcome. */
    public List<Setting> sets() {
        return writtenOut ? List.of() : step.frame().sets();
    }

    /** The notes read here, before the step. */
    public List<Name> notes() {
        return begins().notes();
    }

    /** Whether a note about the hazard stands at the step, or at one that performs it. */
    public boolean isToldOf(Hazard hazard, Scope scope) {
        return step.frame().notes().stream().flatMap(name -> scope.note(name).stream())
                .anyMatch(note -> note.covers().stream().anyMatch(covered -> covered.value() == hazard))
                || caller.filter(outer -> outer.isToldOf(hazard, scope)).isPresent();
    }

    /** The parts touched here. */
    public List<Name> handles() {
        return begins().handles();
    }

    /** The hazards that the step itself declares. */
    public List<Written<Hazard>> hazards() {
        return begins().hazards();
    }

    public boolean confirmsComplaint() {
        return begins().confirms().isPresent();
    }

    /** Whether the repair has been verified once this is passed; a perform step verifies by its whole routine. */
    public boolean verifiesRepair() {
        return begins().verifies().isPresent();
    }

    /** As the last step of a path. */
    public PathStep here() {
        return new PathStep(label, exit.map(Name::text).orElse(""), step.name().at());
    }

    private StepFrame begins() {
        return isStep() ? step.frame() : StepFrame.PLAIN;
    }

    @Override
    public String toString() {
        return here().toString();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Step;

/**
 * A step where it is printed. A step of a short routine is printed at each place that performs it.
 *
 * @param label such as {@code 7}, {@code A2}, or {@code 7b} for a routine's step printed in place
 */
public record PlacedStep(String label, Step step, StepRun run) {
    /** The id of the place. */
    public String anchor() {
        return "step-" + label;
    }

    /** Its name; before it, those of the steps in whose box it is printed, but for the outermost. */
    public List<String> path() {
        List<String> path = new ArrayList<>(List.of(step.name().text()));
        Optional<PlacedStep> caller = run.caller();
        while (caller.flatMap(within -> within.run().caller()).isPresent()) {
            path.add(0, caller.get().step().name().text());
            caller = caller.get().run().caller();
        }
        return List.copyOf(path);
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return label.hashCode();
    }
}

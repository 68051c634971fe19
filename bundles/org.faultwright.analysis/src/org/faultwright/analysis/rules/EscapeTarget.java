/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Where a way out can be proposed to lead that the author has not thought of. */
final class EscapeTarget {
    private EscapeTarget() {
    }

    /** The first conclusion that hands the unit on to somebody else. */
    static Optional<String> in(StepGraph graph) {
        return graph.steps().stream()
                .filter(step -> step instanceof Step.Conclude conclude && conclude.refersTo().isPresent())
                .map(step -> step.name().text()).findFirst();
    }
}

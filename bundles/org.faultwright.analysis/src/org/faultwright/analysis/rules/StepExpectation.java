/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.procedure.Step;

/** What a step says that it expects. */
final class StepExpectation {
    private StepExpectation() {
    }

    static Optional<Step.Expectation> of(Step step) {
        if (step instanceof Step.Measure measure) {
            return measure.expects();
        }
        return step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
    }
}

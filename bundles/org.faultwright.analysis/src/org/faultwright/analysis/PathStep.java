/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import org.faultwright.procedure.SourceRange;

/**
 * One step of the path that proves a finding.
 *
 * @param step    the step's name; inside a routine {@code Perform/Step}
 * @param outcome the result taken from it; empty where the path stops
 */
public record PathStep(String step, String outcome, SourceRange at) {
    @Override
    public String toString() {
        return outcome.isEmpty() ? step : step + " (" + outcome + ")";
    }
}

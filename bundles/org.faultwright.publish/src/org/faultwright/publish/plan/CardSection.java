/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.List;
import org.faultwright.procedure.StepGraph;

/**
 * The steps of the procedure itself, or of one routine that is printed apart, in working order.
 *
 * @param letter empty for the procedure, {@code A}, {@code B} and so on for its routines
 * @param steps  conclusions included
 */
public record CardSection(String letter, StepGraph graph, List<PlacedStep> steps) {
    public boolean isRoutine() {
        return !letter.isEmpty();
    }
}

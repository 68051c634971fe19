/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.List;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * The steps of the procedure itself, or of one routine, in the order they are printed.
 *
 * @param letter  empty for the procedure, {@code A}, {@code B} and so on for its routines
 * @param steps   all but the conclusions
 * @param endings the conclusions
 */
public record Section(String letter, StepGraph graph, List<Step> steps, List<Step> endings) {
    public boolean isRoutine() {
        return !letter.isEmpty();
    }
}

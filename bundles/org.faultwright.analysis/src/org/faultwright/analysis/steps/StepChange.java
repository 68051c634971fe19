/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.steps;

import java.util.List;
import java.util.Map;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.procedure.Document;

/** What a change of the steps, asked for where they are drawn, comes to in the text. */
public sealed interface StepChange {
    /** Why it cannot be made, in one sentence for the writer. */
    record Refused(String sentence) implements StepChange {
    }

    /**
     * Edits of the text. They are offered once {@link #holds} was asked about the changed text.
     *
     * @param graph  the name of the procedure or routine that is changed
     * @param arrows where each of its steps must lead then
     */
    record Offered(Fix fix, String graph, Map<String, List<String>> arrows) implements StepChange {
        /** Whether the changed text can be read, every arrow leads where it should and no other has moved, and every comment is there still. */
        public boolean holds(Document after) {
            return after.problems().isEmpty()
                    && after.graphs().stream().anyMatch(one -> one.name().text().equals(graph) && ArrowTargets.of(one).equals(arrows))
                    && Remarks.in(after.source().content()).equals(Remarks.in(fix.edits().get(0).at().source().content()));
        }
    }
}

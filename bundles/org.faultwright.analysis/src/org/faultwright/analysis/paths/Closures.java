/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.List;
import org.faultwright.procedure.Condition;

/** What keeps hands away from the circuit or joins it: covers, domes, plugs, links. */
public final class Closures {
    private Closures() {
    }

    /**
     * Whether changing this condition opens, closes, connects or disconnects something. What must be put back at the end does,
     * unless it switches the supply or tells of a charge, or may be changed live, as a paper lid may.
     */
    public static boolean isClosure(Condition condition) {
        return condition.ends().filter(condition::has).isPresent() && condition.live().isEmpty() && condition.charged().isEmpty()
                && !condition.mayChangeLive();
    }

    static List<Condition> among(List<Condition> conditions) {
        return conditions.stream().filter(Closures::isClosure).toList();
    }
}

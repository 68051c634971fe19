/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** An order of tests that depends on their outcomes. Tests, outcomes and faults are known by number. */
public sealed interface TestTree {
    /**
     * A test, and what follows each outcome that a fault still possible can show.
     *
     * @param next in the order of the outcomes
     */
    record Ask(int test, Map<Integer, TestTree> next) implements TestTree {
        public Ask {
            next = Collections.unmodifiableMap(new TreeMap<>(next));
        }
    }

    /** Nothing more is to be asked. @param faults those still possible: one, or several that nothing tells apart */
    record Left(List<Integer> faults) implements TestTree {
        public Left {
            faults = List.copyOf(faults);
        }
    }
}

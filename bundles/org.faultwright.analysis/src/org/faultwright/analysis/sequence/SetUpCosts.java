/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.List;
import org.faultwright.quantity.Exact;

/**
 * What it costs to get the set-up ready for a test: covers to open, supplies to switch. Set-ups are known by
 * number.
 */
public interface SetUpCosts {
    /** The set-up in which it begins. */
    int start();

    /** The cost of the test itself and of the changes before it. */
    Exact cost(int setUp, int test);

    /** The cost of the test itself where nothing has to be changed for it; never more than {@link #cost}. */
    Exact leastCost(int test);

    int after(int setUp, int test, int outcome);

    /** The cost of the changes between the last test and going on with what was found. */
    Exact finish(int setUp, int goal);

    /**
     * What is opened, switched on or otherwise taken out of its first state for this test and not so yet, one bit each.
     * As long as another test that helps needs only a part of it, this one has to wait.
     */
    long exposure(int setUp, int test);

    /** Whether nothing ever has to be changed, so that each test always costs the same. */
    default boolean areFixed() {
        return false;
    }

    /** Tests that need no set-up. @param costs of each test */
    static SetUpCosts none(List<Exact> costs) {
        return new SetUpCosts() {
            @Override
            public int start() {
                return 0;
            }

            @Override
            public Exact cost(int setUp, int test) {
                return costs.get(test);
            }

            @Override
            public Exact leastCost(int test) {
                return costs.get(test);
            }

            @Override
            public int after(int setUp, int test, int outcome) {
                return 0;
            }

            @Override
            public Exact finish(int setUp, int goal) {
                return Exact.ZERO;
            }

            @Override
            public boolean areFixed() {
                return true;
            }

            @Override
            public long exposure(int setUp, int test) {
                return 0;
            }
        };
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import org.faultwright.analysis.sequence.SetUpCosts;
import org.faultwright.quantity.Exact;

/**
 * Set-ups that take every cover to be dearer than its time says: whoever opens a unit can break it, and meets what is inside. An order sought
 * with it opens late; what it really takes is told by the set-ups behind it.
 *
 * @param opening what is added for each cover taken off before a test, in seconds
 */
record CoversLast(PartSetUps setUps, Exact opening) implements SetUpCosts {
    @Override
    public int start() {
        return setUps.start();
    }

    @Override
    public Exact cost(int setUp, int test) {
        return setUps.cost(setUp, test).plus(opening.times(Exact.of(setUps.opened(setUp, test))));
    }

    @Override
    public Exact leastCost(int test) {
        return setUps.leastCost(test);
    }

    @Override
    public int after(int setUp, int test, int outcome) {
        return setUps.after(setUp, test, outcome);
    }

    @Override
    public Exact finish(int setUp, int goal) {
        return setUps.finish(setUp, goal);
    }

    @Override
    public long exposure(int setUp, int test) {
        return setUps.exposure(setUp, test);
    }
}

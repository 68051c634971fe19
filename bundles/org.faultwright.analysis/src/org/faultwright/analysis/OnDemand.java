/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.function.Supplier;

/** A value that is computed when it is asked for first, once, whichever thread asks; the others wait for it. */
public final class OnDemand<T> {
    private volatile T value;

    /** @param compute gives the value, never null; what it throws goes to whoever asked, and the next one asks it again */
    public T get(Supplier<? extends T> compute) {
        T known = value;
        if (known == null) {
            synchronized (this) {
                known = value;
                if (known == null) {
                    known = compute.get();
                    value = known;
                }
            }
        }
        return known;
    }
}

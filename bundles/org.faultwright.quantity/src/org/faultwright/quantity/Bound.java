/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

/**
 * One end of an interval, in the coherent SI unit.
 *
 * @param value    where it lies
 * @param included whether that value belongs to the interval
 */
public record Bound(Exact value, boolean included) {
    public static Bound including(Exact value) {
        return new Bound(value, true);
    }

    public static Bound excluding(Exact value) {
        return new Bound(value, false);
    }

    /** The end at the same place of what lies on the other side: it belongs there where it does not belong here. */
    public Bound opposite() {
        return new Bound(value, !included);
    }
}

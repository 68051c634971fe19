/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.Arrays;

/** What is known of each state of the search: faults still possible, and the circumstances by number. */
final class SearchMemory {
    private static final int EMPTY = -1;

    private final int most;
    private long[] faults = new long[1 << 10];
    private int[] circumstances = new int[1 << 10];
    private double[] value = new double[1 << 10];
    private byte[] test = new byte[1 << 10];
    private int[] slots = emptySlots(1 << 11);
    private int size;

    SearchMemory(int most) {
        this.most = most;
    }

    private static int[] emptySlots(int count) {
        int[] slots = new int[count];
        Arrays.fill(slots, EMPTY);
        return slots;
    }

    boolean isFull() {
        return size >= most;
    }

    /** The number of the state; -1 when it is not known. */
    int find(long mask, int circumstance) {
        return slots[slot(mask, circumstance)];
    }

    /** Remembers a state, or what is now known of it. */
    void put(long mask, int circumstance, double worth, int best) {
        int slot = slot(mask, circumstance);
        if (slots[slot] == EMPTY) {
            if (size == faults.length) {
                grow();
                slot = slot(mask, circumstance);
            }
            faults[size] = mask;
            circumstances[size] = circumstance;
            slots[slot] = size++;
        }
        value[slots[slot]] = worth;
        test[slots[slot]] = (byte) best;
    }

    double value(int number) {
        return value[number];
    }

    /** The best test; -1 where nothing is to be asked. */
    int test(int number) {
        return test[number];
    }

    private int slot(long mask, int circumstance) {
        long mixed = (mask ^ (long) circumstance * 0x9E3779B97F4A7C15L) * 0xD6E8FEB86659FD93L;
        int slot = (int) (mixed ^ mixed >>> 32) & slots.length - 1;
        while (slots[slot] != EMPTY && (faults[slots[slot]] != mask || circumstances[slots[slot]] != circumstance)) {
            slot = slot + 1 & slots.length - 1;
        }
        return slot;
    }

    private void grow() {
        faults = Arrays.copyOf(faults, 2 * size);
        circumstances = Arrays.copyOf(circumstances, 2 * size);
        value = Arrays.copyOf(value, 2 * size);
        test = Arrays.copyOf(test, 2 * size);
        slots = emptySlots(4 * size);
        for (int i = 0; i < size; i++) {
            slots[slot(faults[i], circumstances[i])] = i;
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Arrays;

/**
 * States met so far, each once, in the order they were met. Where place and bits together make a small
 * number a state is found by it, else in a growing table with open addressing.
 */
final class StateStore {
    /** Up to this many bits a table of every state there could be is smaller than one worth hashing for. */
    private static final int FEW_BITS = 21;

    private final int words;
    private final int most;
    private final int shift;
    private final boolean direct;
    private int size;
    private int[] place;
    private int[] parent;
    private int[] branch;
    private long[] bits;
    private int[] table;

    /**
     * @param places   how many places there are
     * @param bitCount how many bits of a state are in use
     * @param words    the longs they are spread over
     * @param most     the states there is room for
     */
    StateStore(int places, int bitCount, int words, int most) {
        this.words = words;
        this.most = most;
        this.shift = bitCount;
        int placeBits = Integer.SIZE - Integer.numberOfLeadingZeros(places);
        this.direct = words == 1 && bitCount + placeBits <= FEW_BITS;
        this.table = new int[direct ? 1 << bitCount + placeBits : 1024];
        int room = Math.min(most, 256);
        this.place = new int[room];
        this.parent = new int[room];
        this.branch = new int[room];
        this.bits = new long[room * words];
    }

    int size() {
        return size;
    }

    int place(int state) {
        return place[state];
    }

    /** The state it was first met from; -1 for the first. */
    int parent(int state) {
        return parent[state];
    }

    /** How it was first met: twice the number of the way, plus 1 where that led otherwise. */
    int branch(int state) {
        return branch[state];
    }

    void read(int state, long[] into) {
        System.arraycopy(bits, state * words, into, 0, words);
    }

    /** The number of a state, new or known; -1 when it is new and there is no room left. */
    int add(int atPlace, long[] state, int from, int by) {
        int slot = direct ? (int) ((long) atPlace << shift | state[0]) : hash(atPlace, state) & table.length - 1;
        while (table[slot] != 0) {
            if (direct || same(table[slot] - 1, atPlace, state)) {
                return table[slot] - 1;
            }
            slot = slot + 1 & table.length - 1;
        }
        if (size == most) {
            return -1;
        }
        room();
        place[size] = atPlace;
        parent[size] = from;
        branch[size] = by;
        System.arraycopy(state, 0, bits, size * words, words);
        table[slot] = ++size;
        if (!direct && size * 2 > table.length) {
            rehash();
        }
        return size - 1;
    }

    private boolean same(int known, int atPlace, long[] state) {
        if (place[known] != atPlace) {
            return false;
        }
        for (int i = 0, at = known * words; i < words; i++, at++) {
            if (bits[at] != state[i]) {
                return false;
            }
        }
        return true;
    }

    private static int hash(int place, long[] state) {
        long hash = place;
        for (long word : state) {
            // multiplication by the golden ratio scatters neighbouring values (Knuth, volume 3, 6.4)
            hash = (hash ^ word) * 0x9E3779B97F4A7C15L;
            hash ^= hash >>> 32;
        }
        return (int) hash;
    }

    private void room() {
        if (size == place.length) {
            int more = Math.min(most, size * 2);
            place = Arrays.copyOf(place, more);
            parent = Arrays.copyOf(parent, more);
            branch = Arrays.copyOf(branch, more);
            bits = Arrays.copyOf(bits, more * words);
        }
    }

    private void rehash() {
        table = new int[table.length * 2];
        long[] state = new long[words];
        for (int i = 0; i < size; i++) {
            read(i, state);
            int slot = hash(place[i], state) & table.length - 1;
            while (table[slot] != 0) {
                slot = slot + 1 & table.length - 1;
            }
            table[slot] = i + 1;
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * Which nodes of a graph lie on every path from its beginning to a node: the iterative method of
 * K. D. Cooper, T. J. Harvey and K. Kennedy, "A simple, fast dominance algorithm" (2001).
 */
public final class Dominators {
    private static final int NONE = -1;

    private final int[] immediate;
    private final int[] order;
    private final int root;

    private Dominators(int[] immediate, int[] order, int root) {
        this.immediate = immediate;
        this.order = order;
        this.root = root;
    }

    /**
     * @param successors of each node
     * @param root       where every path begins; -1 for none
     */
    public static Dominators of(int[][] successors, int root) {
        int[] order = new int[successors.length];
        Arrays.fill(order, NONE);
        int[] immediate = new int[successors.length];
        Arrays.fill(immediate, NONE);
        Dominators dominators = new Dominators(immediate, order, root);
        if (root != NONE) {
            dominators.solve(successors, dominators.postorder(successors));
        }
        return dominators;
    }

    /** The last node before this one that is on every path to it; none for the root and for nodes out of reach. */
    public OptionalInt immediate(int node) {
        return node == root || immediate[node] == NONE ? OptionalInt.empty() : OptionalInt.of(immediate[node]);
    }

    public boolean isReached(int node) {
        return order[node] != NONE;
    }

    /** The nearest node on every path to both. Both must be within reach. */
    public int common(int first, int second) {
        int a = first;
        int b = second;
        while (a != b) {
            if (order[a] < order[b]) {
                a = immediate[a];
            } else {
                b = immediate[b];
            }
        }
        return a;
    }

    /** The nodes within reach, each behind its successors where there is no cycle. */
    private int[] postorder(int[][] successors) {
        int[] found = new int[successors.length];
        int[] stack = new int[successors.length];
        int[] next = new int[successors.length];
        boolean[] seen = new boolean[successors.length];
        int depth = 0;
        int count = 0;
        stack[depth++] = root;
        seen[root] = true;
        while (depth > 0) {
            int node = stack[depth - 1];
            if (next[node] < successors[node].length) {
                int to = successors[node][next[node]++];
                if (!seen[to]) {
                    seen[to] = true;
                    stack[depth++] = to;
                }
            } else {
                depth--;
                order[node] = count;
                found[count++] = node;
            }
        }
        return Arrays.copyOf(found, count);
    }

    private void solve(int[][] successors, int[] postorder) {
        int[][] predecessors = predecessors(successors, postorder);
        immediate[root] = root;
        for (boolean changed = true; changed;) {
            changed = false;
            for (int i = postorder.length - 2; i >= 0; i--) {
                int node = postorder[i];
                int best = NONE;
                for (int before : predecessors[node]) {
                    if (immediate[before] != NONE) {
                        best = best == NONE ? before : common(before, best);
                    }
                }
                changed |= immediate[node] != best;
                immediate[node] = best;
            }
        }
    }

    private static int[][] predecessors(int[][] successors, int[] reached) {
        int[] count = new int[successors.length];
        for (int node : reached) {
            for (int to : successors[node]) {
                count[to]++;
            }
        }
        int[][] predecessors = new int[successors.length][];
        Arrays.setAll(predecessors, node -> new int[count[node]]);
        for (int node : reached) {
            for (int to : successors[node]) {
                predecessors[to][--count[to]] = node;
            }
        }
        return predecessors;
    }
}

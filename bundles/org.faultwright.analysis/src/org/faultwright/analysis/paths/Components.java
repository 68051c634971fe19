/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Arrays;

/**
 * The strongly connected components of a graph: nodes that lead to each other both ways. The method is
 * R. Tarjan's, "Depth-first search and linear graph algorithms" (1972), without recursion.
 */
public final class Components {
    private final int[] component;
    private final int[] size;
    private final boolean[] leadsToItself;

    private Components(int[] component, int[] size, boolean[] leadsToItself) {
        this.component = component;
        this.size = size;
        this.leadsToItself = leadsToItself;
    }

    /** @param successors of each node */
    public static Components of(int[][] successors) {
        Search search = new Search(successors);
        for (int node = 0; node < successors.length; node++) {
            search.from(node);
        }
        int[] size = new int[search.count];
        boolean[] leadsToItself = new boolean[successors.length];
        for (int node = 0; node < successors.length; node++) {
            int self = node;
            size[search.component[node]]++;
            leadsToItself[node] = Arrays.stream(successors[node]).anyMatch(to -> to == self);
        }
        return new Components(search.component, size, leadsToItself);
    }

    /** The number of a node's component; a component has a lower number than those that lead to it. */
    public int of(int node) {
        return component[node];
    }

    public boolean together(int a, int b) {
        return component[a] == component[b];
    }

    /** Whether a path leads from the node back to it. */
    public boolean isOnCycle(int node) {
        return size[component[node]] > 1 || leadsToItself[node];
    }

    private static final class Search {
        final int[][] successors;
        final int[] component;
        final int[] number;
        final int[] low;
        final int[] next;
        final int[] open;
        final int[] path;
        int opened;
        int depth;
        int numbered;
        int count;

        Search(int[][] successors) {
            int nodes = successors.length;
            this.successors = successors;
            this.component = new int[nodes];
            Arrays.fill(component, -1);
            this.number = new int[nodes];
            this.low = new int[nodes];
            this.next = new int[nodes];
            this.open = new int[nodes];
            this.path = new int[nodes];
        }

        void from(int start) {
            if (number[start] == 0) {
                enter(start);
            }
            while (depth > 0) {
                int node = path[depth - 1];
                if (next[node] < successors[node].length) {
                    visit(node, successors[node][next[node]++]);
                } else {
                    leave(node);
                }
            }
        }

        private void enter(int node) {
            number[node] = ++numbered;
            low[node] = numbered;
            open[opened++] = node;
            path[depth++] = node;
        }

        private void visit(int node, int to) {
            if (number[to] == 0) {
                enter(to);
            } else if (component[to] < 0) {
                low[node] = Math.min(low[node], number[to]);
            }
        }

        private void leave(int node) {
            depth--;
            if (depth > 0) {
                low[path[depth - 1]] = Math.min(low[path[depth - 1]], low[node]);
            }
            if (low[node] == number[node]) {
                int member;
                do {
                    member = open[--opened];
                    component[member] = count;
                } while (member != node);
                count++;
            }
        }
    }
}

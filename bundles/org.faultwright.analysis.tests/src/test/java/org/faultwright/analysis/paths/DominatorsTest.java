/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.ibm.wala.util.graph.Graph;
import com.ibm.wala.util.graph.impl.SlowSparseNumberedGraph;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DominatorsTest {
    /**
     * The flow graph of T. Lengauer and R. E. Tarjan, "A fast algorithm for finding dominators in a
     * flowgraph", ACM TOPLAS 1(1), 1979, figure 1, and its dominator tree, figure 2 (from memory; the
     * tree is confirmed below by an independent library).
     */
    private static final String NODES = "RABCDEFGHIJKL";
    private static final String[] ARROWS = {"RA", "RB", "RC", "AD", "BA", "BD", "BE", "CF", "CG", "DL", "EH", "FI",
        "GI", "GJ", "HE", "HK", "IK", "JI", "KI", "KR", "LH"};
    private static final String[] TREE = {"RA", "RB", "RC", "RD", "RE", "CF", "CG", "RH", "RI", "GJ", "RK", "DL"};

    @Test
    void should_find_the_published_dominator_tree() {
        Dominators dominators = Dominators.of(published(), 0);
        for (String edge : TREE) {
            assertEquals(OptionalInt.of(NODES.indexOf(edge.charAt(0))),
                    dominators.immediate(NODES.indexOf(edge.charAt(1))), edge);
        }
        assertEquals(OptionalInt.empty(), dominators.immediate(0));
        assertTrue(dominates(dominators, NODES.indexOf('C'), NODES.indexOf('J')));
        assertFalse(dominates(dominators, NODES.indexOf('D'), NODES.indexOf('H')));
        assertEquals(NODES.indexOf('C'), dominators.common(NODES.indexOf('F'), NODES.indexOf('J')));
    }

    /** Whether every path to the second node passes the first: then the two have no nearer node in common. */
    private static boolean dominates(Dominators dominators, int first, int second) {
        return dominators.isReached(first) && dominators.isReached(second) && dominators.common(first, second) == first;
    }

    @Test
    void should_agree_with_an_independent_library_on_the_published_graph() {
        assertAgrees(published());
    }

    /** Against com.ibm.wala.util, which follows Lengauer and Tarjan; ours follows Cooper, Harvey and Kennedy. */
    @Test
    void should_agree_with_an_independent_library_on_random_graphs() {
        Random random = new Random(1979);
        for (int i = 0; i < 2_000; i++) {
            assertAgrees(randomGraph(random, 1 + random.nextInt(25)));
        }
    }

    @Test
    void should_say_that_a_node_dominates_another_exactly_when_the_other_is_out_of_reach_without_it() {
        Random random = new Random(42);
        for (int i = 0; i < 300; i++) {
            int[][] graph = randomGraph(random, 1 + random.nextInt(9));
            Dominators dominators = Dominators.of(graph, 0);
            for (int a = 0; a < graph.length; a++) {
                for (int b = 0; b < graph.length; b++) {
                    boolean within = reach(graph, -1)[b];
                    assertEquals(within && !reach(graph, a)[b], dominates(dominators, a, b), a + " before " + b);
                }
            }
        }
    }

    @Test
    void should_know_nothing_of_a_graph_without_a_beginning() {
        Dominators dominators = Dominators.of(new int[][] {{0}, {}}, -1);
        assertFalse(dominators.isReached(0));
        assertFalse(dominates(dominators, 0, 0));
        assertEquals(OptionalInt.empty(), dominators.immediate(1));
    }

    @Test
    void should_find_the_dominators_of_a_path_of_a_hundred_thousand_nodes() {
        int[][] path = new int[100_000][];
        Arrays.setAll(path, node -> node + 1 < path.length ? new int[] {node + 1} : new int[0]);
        assertEquals(OptionalInt.of(path.length - 2), Dominators.of(path, 0).immediate(path.length - 1));
    }

    private static void assertAgrees(int[][] graph) {
        Graph<Integer> theirs = SlowSparseNumberedGraph.make();
        for (int node = 0; node < graph.length; node++) {
            theirs.addNode(node);
        }
        for (int node = 0; node < graph.length; node++) {
            for (int to : graph[node]) {
                theirs.addEdge(node, to);
            }
        }
        com.ibm.wala.util.graph.dominators.Dominators<Integer> expected =
                com.ibm.wala.util.graph.dominators.Dominators.make(theirs, 0);
        Dominators ours = Dominators.of(graph, 0);
        boolean[] reached = reach(graph, -1);
        for (int node = 1; node < graph.length; node++) {
            if (reached[node]) {
                assertEquals(OptionalInt.of(expected.getIdom(node)), ours.immediate(node),
                        Arrays.deepToString(graph) + " at " + node);
            } else {
                assertFalse(ours.isReached(node));
            }
        }
    }

    private static int[][] published() {
        int[][] graph = new int[NODES.length()][];
        Arrays.setAll(graph, node -> Arrays.stream(ARROWS).filter(arrow -> arrow.charAt(0) == NODES.charAt(node))
                .mapToInt(arrow -> NODES.indexOf(arrow.charAt(1))).toArray());
        return graph;
    }

    static int[][] randomGraph(Random random, int nodes) {
        int[][] graph = new int[nodes][];
        for (int node = 0; node < nodes; node++) {
            List<Integer> to = new ArrayList<>();
            for (int i = random.nextInt(4); i > 0; i--) {
                to.add(random.nextInt(nodes));
            }
            graph[node] = to.stream().distinct().mapToInt(Integer::intValue).toArray();
        }
        return graph;
    }

    /** What can be reached from node 0 without passing the node given. */
    private static boolean[] reach(int[][] graph, int without) {
        boolean[] reached = new boolean[graph.length];
        List<Integer> waiting = new ArrayList<>();
        if (without != 0) {
            reached[0] = true;
            waiting.add(0);
        }
        for (int i = 0; i < waiting.size(); i++) {
            for (int to : graph[waiting.get(i)]) {
                if (to != without && !reached[to]) {
                    reached[to] = true;
                    waiting.add(to);
                }
            }
        }
        return reached;
    }
}

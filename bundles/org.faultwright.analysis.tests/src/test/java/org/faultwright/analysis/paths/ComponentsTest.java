/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.KosarajuStrongConnectivityInspector;
import org.jgrapht.alg.cycle.CycleDetector;
import org.jgrapht.graph.DefaultDirectedGraph;
import org.jgrapht.graph.DefaultEdge;
import org.junit.jupiter.api.Test;

class ComponentsTest {
    /** Against jgrapht, which finds components by the method of Kosaraju and cycles by its own. */
    @Test
    void should_agree_with_an_independent_library_on_random_graphs() {
        Random random = new Random(1972);
        for (int i = 0; i < 2_000; i++) {
            int[][] graph = DominatorsTest.randomGraph(random, 1 + random.nextInt(20));
            Graph<Integer, DefaultEdge> theirs = graph(graph);
            Components ours = Components.of(graph);
            Map<Integer, Integer> expected = new HashMap<>();
            List<Set<Integer>> sets = new KosarajuStrongConnectivityInspector<>(theirs).stronglyConnectedSets();
            sets.forEach(set -> set.forEach(node -> expected.put(node, sets.indexOf(set))));
            Set<Integer> onCycles = new CycleDetector<>(theirs).findCycles();
            for (int a = 0; a < graph.length; a++) {
                assertEquals(onCycles.contains(a), ours.isOnCycle(a), Arrays.deepToString(graph));
                for (int b = 0; b < graph.length; b++) {
                    assertEquals(expected.get(a).equals(expected.get(b)), ours.together(a, b));
                }
            }
        }
    }

    @Test
    void should_number_a_component_below_those_that_lead_to_it() {
        Random random = new Random(7);
        for (int i = 0; i < 500; i++) {
            int[][] graph = DominatorsTest.randomGraph(random, 1 + random.nextInt(20));
            Components components = Components.of(graph);
            for (int node = 0; node < graph.length; node++) {
                for (int to : graph[node]) {
                    assertTrue(components.of(to) <= components.of(node));
                }
            }
        }
    }

    @Test
    void should_follow_a_path_of_a_hundred_thousand_nodes_round() {
        int[][] ring = new int[100_000][];
        Arrays.setAll(ring, node -> new int[] {(node + 1) % ring.length});
        assertTrue(Components.of(ring).together(0, ring.length - 1));
    }

    static Graph<Integer, DefaultEdge> graph(int[][] successors) {
        Graph<Integer, DefaultEdge> graph = new DefaultDirectedGraph<>(DefaultEdge.class);
        for (int node = 0; node < successors.length; node++) {
            graph.addVertex(node);
        }
        for (int node = 0; node < successors.length; node++) {
            for (int to : successors[node]) {
                graph.addEdge(node, to);
            }
        }
        return graph;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.faultwright.analysis.paths.Components;
import org.faultwright.quantity.Exact;

/**
 * A finite Markov chain with exact numbers. What is asked of it are the solutions of x = r + P x, found
 * component by component, so that only true loops are solved as equations (Kemeny and Snell, Finite
 * Markov Chains, chapter III).
 */
public final class MarkovChain {
    /** Larger loops are not solved: exact fractions would grow without sense. */
    private static final int LARGEST_LOOP = 200;

    /** @param share from 0 to 1 */
    public record Link(int to, Exact share) {
    }

    private final List<List<Link>> links;
    private final List<List<Integer>> components;

    /** @param links of each state; none for a state where the chain stays */
    public MarkovChain(List<List<Link>> links) {
        this.links = links.stream().map(own -> own.stream().filter(link -> link.share().signum() > 0).toList()).toList();
        this.components = components(this.links.stream()
                .map(own -> own.stream().mapToInt(Link::to).toArray()).toArray(int[][]::new));
    }

    /**
     * The expected sum of what each visit to a state is worth until the chain stays; absent for a state from
     * which it may never stay.
     */
    public List<Optional<Exact>> expected(List<Exact> worth) {
        return solve(worth, Optional.empty());
    }

    /** How likely the chain, from each state, ends in one of those given, which have no links. */
    public List<Optional<Exact>> endingIn(List<Integer> ends) {
        List<Exact> worth = new ArrayList<>(Collections.nCopies(links.size(), Exact.ZERO));
        ends.forEach(end -> worth.set(end, Exact.ONE));
        return solve(worth, Optional.of(Exact.ZERO));
    }

    private List<Optional<Exact>> solve(List<Exact> worth, Optional<Exact> trapped) {
        List<Optional<Exact>> solved = new ArrayList<>(Collections.nCopies(links.size(), Optional.empty()));
        for (List<Integer> component : components) {
            Map<Integer, Optional<Exact>> found = isLoop(component) ? loop(component, worth, solved, trapped)
                    : Map.of(component.get(0), straight(component.get(0), worth, solved));
            found.forEach(solved::set);
        }
        return solved;
    }

    private boolean isLoop(List<Integer> component) {
        int first = component.get(0);
        return component.size() > 1 || links.get(first).stream().anyMatch(link -> link.to() == first);
    }

    private Optional<Exact> straight(int state, List<Exact> worth, List<Optional<Exact>> solved) {
        Exact sum = worth.get(state);
        for (Link link : links.get(state)) {
            Optional<Exact> later = solved.get(link.to());
            if (later.isEmpty()) {
                return Optional.empty();
            }
            sum = sum.plus(link.share().times(later.get()));
        }
        return Optional.of(sum);
    }

    private Map<Integer, Optional<Exact>> loop(List<Integer> component, List<Exact> worth,
            List<Optional<Exact>> solved, Optional<Exact> trapped) {
        Set<Integer> inside = new HashSet<>(component);
        List<Link> leaving = component.stream().flatMap(state -> links.get(state).stream())
                .filter(link -> !inside.contains(link.to())).toList();
        boolean known = leaving.stream().allMatch(link -> solved.get(link.to()).isPresent());
        if (leaving.isEmpty() || !known || component.size() > LARGEST_LOOP) {
            return same(component, leaving.isEmpty() ? trapped : Optional.empty());
        }
        return eliminate(component, worth, solved);
    }

    private static Map<Integer, Optional<Exact>> same(List<Integer> component, Optional<Exact> value) {
        Map<Integer, Optional<Exact>> all = new HashMap<>();
        component.forEach(state -> all.put(state, value));
        return all;
    }

    /**
     * Gaussian elimination over sparse rows. Every pivot is positive where each state of the loop can leave it and its shares add up to no more
     * than one; of a broken text they may, and then nothing is known.
     */
    private Map<Integer, Optional<Exact>> eliminate(List<Integer> component, List<Exact> worth,
            List<Optional<Exact>> solved) {
        Map<Integer, Integer> place = new HashMap<>();
        component.forEach(state -> place.put(state, place.size()));
        int n = component.size();
        List<TreeMap<Integer, Exact>> rows = new ArrayList<>();
        Exact[] right = new Exact[n];
        for (int i = 0; i < n; i++) {
            TreeMap<Integer, Exact> row = new TreeMap<>(Map.of(i, Exact.ONE));
            right[i] = worth.get(component.get(i));
            for (Link link : links.get(component.get(i))) {
                if (place.containsKey(link.to())) {
                    row.merge(place.get(link.to()), link.share().negated(), Exact::plus);
                } else {
                    right[i] = right[i].plus(link.share().times(solved.get(link.to()).orElseThrow()));
                }
            }
            rows.add(row);
        }
        for (int i = 0; i < n; i++) {
            if (rows.get(i).getOrDefault(i, Exact.ZERO).signum() <= 0) {
                return same(component, Optional.empty());
            }
            for (int j = i + 1; j < n; j++) {
                subtract(rows, right, i, j);
            }
        }
        Exact[] x = new Exact[n];
        Map<Integer, Optional<Exact>> found = new HashMap<>();
        for (int i = n - 1; i >= 0; i--) {
            Exact value = right[i];
            for (Map.Entry<Integer, Exact> entry : rows.get(i).tailMap(i, false).entrySet()) {
                value = value.minus(entry.getValue().times(x[entry.getKey()]));
            }
            x[i] = value.dividedBy(rows.get(i).get(i));
            found.put(component.get(i), Optional.of(x[i]));
        }
        return found;
    }

    private static void subtract(List<TreeMap<Integer, Exact>> rows, Exact[] right, int pivot, int row) {
        Exact factor = rows.get(row).remove(pivot);
        if (factor == null || factor.signum() == 0) {
            return;
        }
        Exact scale = factor.dividedBy(rows.get(pivot).get(pivot));
        rows.get(pivot).tailMap(pivot, false).forEach((column, value) -> rows.get(row).merge(column,
                value.times(scale).negated(), Exact::plus));
        right[row] = right[row].minus(right[pivot].times(scale));
    }

    /** The states that lead to each other both ways, each group after all it leads to. */
    public static List<List<Integer>> components(int[][] successors) {
        Components components = Components.of(successors);
        List<List<Integer>> found = new ArrayList<>();
        for (int state = 0; state < successors.length; state++) {
            while (found.size() <= components.of(state)) {
                found.add(new ArrayList<>());
            }
            found.get(components.of(state)).add(state);
        }
        return found;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntUnaryOperator;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;

/**
 * How many paths end at a conclusion, the longest and the slowest of them. Worked out backwards over the
 * states, which is possible where every loop is bounded, so that no state comes again.
 */
final class PathTotals {
    private static final int NONE = -1;

    private final Routes routes;
    private final Exploration states;
    private final int[] order;
    private final BigInteger[] paths;

    private PathTotals(Routes routes, int[] order) {
        this.routes = routes;
        this.states = routes.states();
        this.order = order;
        this.paths = new BigInteger[states.size()];
        for (int i = order.length - 1; i >= 0; i--) {
            paths[order[i]] = isEnd(order[i]) ? BigInteger.ONE : sum(order[i]);
        }
    }

    /** Absent where a loop without a bound makes the paths endless. */
    static Optional<PathTotals> of(Routes routes) {
        int[] order = inOrder(routes);
        return order.length == routes.states().size() ? Optional.of(new PathTotals(routes, order)) : Optional.empty();
    }

    /** The states, each behind all that lead to it; those on a cycle or behind one are missing. */
    private static int[] inOrder(Routes routes) {
        int size = routes.states().size();
        int[] open = new int[size];
        for (int edge = 0; edge < routes.firstEdge(size); edge++) {
            open[routes.to(edge)]++;
        }
        int[] order = new int[size];
        int found = 0;
        if (size > 0 && open[0] == 0) {
            order[found++] = 0;
        }
        for (int i = 0; i < found; i++) {
            for (int edge = routes.firstEdge(order[i]); edge < routes.firstEdge(order[i] + 1); edge++) {
                if (--open[routes.to(edge)] == 0) {
                    order[found++] = routes.to(edge);
                }
            }
        }
        return Arrays.copyOf(order, found);
    }

    private boolean isEnd(int state) {
        return states.place(state).step() instanceof Step.Conclude;
    }

    private BigInteger sum(int state) {
        BigInteger sum = BigInteger.ZERO;
        for (int edge = routes.firstEdge(state); edge < routes.firstEdge(state + 1); edge++) {
            sum = sum.add(paths[routes.to(edge)]);
        }
        return sum;
    }

    /** How many different sequences of results end at a conclusion. */
    BigInteger paths() {
        return states.size() == 0 ? BigInteger.ZERO : paths[0];
    }

    /** The path of the most steps to a conclusion; absent when none is reached. */
    Optional<List<PathStep>> longest() {
        return heaviest(place -> Exact.of(place.isWrittenOut() ? 0 : 1)).map(Heaviest::path);
    }

    Optional<Heaviest> slowest() {
        return heaviest(PathTotals::seconds);
    }

    /** A path and what its places add up to. */
    record Heaviest(List<PathStep> path, Exact total) {
    }

    private Optional<Heaviest> heaviest(Function<InlinedStep, Exact> weight) {
        if (paths().signum() == 0) {
            return Optional.empty();
        }
        Exact[] total = new Exact[states.size()];
        int[] best = new int[states.size()];
        for (int i = order.length - 1; i >= 0; i--) {
            int state = order[i];
            best[state] = best(state, total);
            Exact rest = best[state] == NONE ? Exact.ZERO : total[routes.to(best[state])];
            total[state] = rest.plus(weight.apply(states.place(state)));
        }
        return Optional.of(new Heaviest(path(state -> best[state]), total[0]));
    }

    private int best(int state, Exact[] total) {
        int best = NONE;
        for (int edge = routes.firstEdge(state); edge < routes.firstEdge(state + 1); edge++) {
            if (paths[routes.to(edge)].signum() > 0
                    && (best == NONE || total[routes.to(edge)].compareTo(total[routes.to(best)]) > 0)) {
                best = edge;
            }
        }
        return best;
    }

    private List<PathStep> path(IntUnaryOperator best) {
        List<PathStep> path = new ArrayList<>();
        int state = 0;
        while (best.applyAsInt(state) != NONE) {
            routes.way(best.applyAsInt(state)).taken().ifPresent(path::add);
            state = routes.to(best.applyAsInt(state));
        }
        path.add(states.place(state).here());
        return List.copyOf(path);
    }

    /** The time a place takes, in seconds; a perform step that states its time states that of its whole routine. */
    static Exact seconds(InlinedStep place) {
        for (Optional<InlinedStep> outer = place.caller(); outer.isPresent(); outer = outer.get().caller()) {
            if (outer.get().step().frame().time().isPresent()) {
                return Exact.ZERO;
            }
        }
        return place.isStep() ? place.step().frame().time().map(Written::value)
                .filter(time -> time.fits(QuantityKind.TIME)).map(time -> time.base().max(Exact.ZERO))
                .orElse(Exact.ZERO) : Exact.ZERO;
    }
}

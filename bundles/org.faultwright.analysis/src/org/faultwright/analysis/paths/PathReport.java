/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * What the paths of a procedure come to, for cards and for whoever checks completeness. A routine's steps
 * count once, however many steps perform it.
 *
 * @param steps         how many steps there are, those of the routines performed included
 * @param stepsReached  how many of them some path comes to
 * @param outcomes      how many outcomes those steps have
 * @param outcomesTaken how many of them some path takes
 * @param states        places and values of all conditions together that can be met
 * @param complete      whether {@code states} are all; if not, there are more
 * @param exact         whether bounds were counted; if not, they were taken as open
 * @param always        the steps of the procedure itself that every path to a conclusion takes, in order; bounds left aside
 * @param shortest      a path of the fewest places to a conclusion; absent when none is reached
 * @param paths         how many sequences of results end at a conclusion; absent when a loop has no bound
 * @param longest       a path of the most steps to a conclusion; absent as for {@code paths}
 * @param slowest       a path of the longest time to a conclusion; absent as for {@code paths}
 * @param worstSeconds  the time of that path, in seconds
 */
public record PathReport(int steps, int stepsReached, int outcomes, int outcomesTaken, int states, boolean complete,
        boolean exact, List<Name> always, Optional<List<PathStep>> shortest, Optional<BigInteger> paths,
        Optional<List<PathStep>> longest, Optional<List<PathStep>> slowest, Optional<Exact> worstSeconds) {

    public static PathReport of(ProcedurePaths paths) {
        Set<Step> steps = identitySet();
        Set<Step> reached = identitySet();
        Set<Outcome> taken = identitySet();
        Exploration routes = paths.routes().states();
        for (InlinedStep place : paths.map().places()) {
            steps.add(place.step());
            if (paths.reaches(place)) {
                reached.add(place.step());
            }
        }
        for (Transition way : paths.map().ways()) {
            if (routes.isTaken(way) || routes.isTakenOtherwise(way)) {
                way.outcome().ifPresent(taken::add);
            }
        }
        Exploration together = paths.together();
        Optional<PathTotals> totals = PathTotals.of(paths.routes());
        Optional<PathTotals.Heaviest> slowest = totals.flatMap(PathTotals::slowest);
        return new PathReport(steps.size(), reached.size(), steps.stream().mapToInt(s -> s.outcomes().size()).sum(),
                taken.size(), together.size(), together.isComplete(), paths.countsRepeats(), always(paths),
                shortest(routes), totals.map(PathTotals::paths), totals.flatMap(PathTotals::longest),
                slowest.map(PathTotals.Heaviest::path), slowest.map(PathTotals.Heaviest::total));
    }

    private static <T> Set<T> identitySet() {
        return Collections.newSetFromMap(new IdentityHashMap<>());
    }

    private static Optional<List<PathStep>> shortest(Exploration routes) {
        for (int state = 0; state < routes.size(); state++) {
            if (routes.place(state).step() instanceof Step.Conclude) {
                return Optional.of(routes.path(state));
            }
        }
        return Optional.empty();
    }

    private static List<Name> always(ProcedurePaths paths) {
        Dominators dominators = paths.map().dominators();
        BitSet ends = new BitSet();
        paths.map().places().stream().filter(paths::reaches)
                .filter(place -> place.step() instanceof Step.Conclude).forEach(place -> ends.set(place.index()));
        if (ends.isEmpty()) {
            return List.of();
        }
        List<Name> always = new ArrayList<>();
        OptionalInt node = OptionalInt.of(ends.stream().reduce(dominators::common).orElseThrow());
        while (node.isPresent()) {
            InlinedStep place = paths.map().places().get(node.getAsInt());
            if (place.isStep() && place.caller().isEmpty()) {
                always.add(place.step().name());
            }
            node = dominators.immediate(node.getAsInt());
        }
        Collections.reverse(always);
        return List.copyOf(always);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

/** Thousands of small procedures, each gone through by {@link PaperWalk} as well, which knows none of our short cuts. */
class ExplorationAgainstTryingTest {
    private static final int PROCEDURES = 2_000;

    @Test
    void should_meet_the_same_places_with_the_same_values() {
        int states = 0;
        for (int seed = 0; seed < PROCEDURES; seed++) {
            Procedure procedure = Draft.at(seed, seed % 2 == 0, seed % 3);
            ProcedurePaths paths = ProcedurePaths.of(procedure);
            Exploration together = paths.together();
            Set<String> seen = new HashSet<>();
            for (int state = 0; state < together.size(); state++) {
                seen.add(seen(together, state));
            }
            states += together.size();
            assertEquals(PaperWalk.fewest(new PaperWalk(procedure).positions(), PaperWalk.Position::seen).keySet(), seen, "seed " + seed);
        }
        assertTrue(states > 5 * PROCEDURES, "the procedures are large enough to mean something: " + states);
    }

    private static String seen(Exploration exploration, int state) {
        Map<String, String> values = new TreeMap<>();
        for (Condition condition : exploration.map().conditions()) {
            values.put(condition.name().text(), exploration.value(state, condition).text());
        }
        return place(exploration.place(state)) + " " + values;
    }

    private static String place(InlinedStep place) {
        return place.label() + place.exit().map(exit -> " (" + exit + ")").orElse("");
    }

    @Test
    void should_follow_each_condition_alone_exactly_as_all_together() {
        int compared = 0;
        for (int seed = 0; seed < PROCEDURES; seed++) {
            Procedure procedure = Draft.at(seed, seed % 2 == 0, seed % 3);
            ProcedurePaths paths = ProcedurePaths.of(procedure);
            PaperWalk trying = new PaperWalk(procedure);
            Map<PaperWalk.Position, Integer> positions = trying.positions();
            for (Condition condition : procedure.own().conditions()) {
                String name = condition.name().text();
                ConditionStates states = paths.states(condition).orElseThrow();
                assertEquals(values(positions.keySet(), position -> position.values().get(name)),
                        values(paths.map(), states::arriving), "seed " + seed + ", coming with " + name);
                assertEquals(values(positions.keySet(), position -> trying.withNeeds(position).get(name)),
                        values(paths.map(), states::holding), "seed " + seed + ", with needs met " + name);
                compared++;
            }
        }
        assertTrue(compared > PROCEDURES);
    }

    private static Map<String, Set<String>> values(Set<PaperWalk.Position> positions,
            Function<PaperWalk.Position, String> value) {
        return positions.stream().collect(Collectors.groupingBy(PaperWalk.Position::place,
                Collectors.mapping(value, Collectors.toSet())));
    }

    private static Map<String, Set<String>> values(StepMap map,
            Function<InlinedStep, List<Name>> values) {
        Map<String, Set<String>> byPlace = new HashMap<>();
        map.places().stream().filter(place -> !values.apply(place).isEmpty()).forEach(place -> byPlace.put(place(place),
                values.apply(place).stream().map(name -> name.text()).collect(Collectors.toSet())));
        return byPlace;
    }

    /** Without routines every move shows as one step of the path, so lengths can be compared. */
    @Test
    void should_prove_each_value_by_a_shortest_path() {
        int compared = 0;
        for (int seed = 0; seed < PROCEDURES; seed++) {
            Procedure procedure = Draft.at(seed, seed % 2 == 0, 0);
            ProcedurePaths paths = ProcedurePaths.of(procedure);
            Map<PaperWalk.Position, Integer> positions = new PaperWalk(procedure).positions();
            for (Condition condition : procedure.own().conditions()) {
                String name = condition.name().text();
                Map<String, Integer> fewest = PaperWalk.fewest(positions, p -> p.place() + " " + p.values().get(name));
                ConditionStates states = paths.states(condition).orElseThrow();
                for (InlinedStep place : paths.map().places()) {
                    for (Name value : states.arriving(place)) {
                        List<PathStep> path = states.pathArriving(place, value).orElseThrow();
                        assertEquals(fewest.get(place(place) + " " + value), path.size() - 1, "seed " + seed);
                        assertEquals(place.label(), path.get(path.size() - 1).step());
                        compared++;
                    }
                }
            }
        }
        assertTrue(compared > 3 * PROCEDURES);
    }

    @Test
    void should_know_before_what_a_look_from_each_place_finds() {
        int leading = 0;
        for (int seed = 0; seed < PROCEDURES; seed++) {
            ProcedurePaths paths = ProcedurePaths.of(Draft.at(seed, seed % 2 == 0, seed % 3));
            int of = 2 + seed % 3;
            Predicate<InlinedStep> goal = place -> place.index() % of == 1;
            Predicate<InlinedStep> closed = place -> place.index() % 4 == 3;
            Set<InlinedStep> before = paths.routes().before(goal, closed);
            for (InlinedStep place : paths.map().places()) {
                Routes.Reach after = paths.routes().after(first -> first == place, closed);
                boolean leads = paths.map().places().stream().filter(goal).anyMatch(after::has);
                assertEquals(leads, before.contains(place), "seed " + seed + ", " + place);
                leading += leads ? 1 : 0;
            }
        }
        assertTrue(leading > PROCEDURES);
    }

    @Test
    void should_only_show_paths_that_can_be_gone() {
        for (int seed = 0; seed < PROCEDURES; seed++) {
            Procedure procedure = Draft.at(seed, seed % 2 == 0, 2);
            ProcedurePaths paths = ProcedurePaths.of(procedure);
            for (InlinedStep place : paths.map().places()) {
                Optional<List<PathStep>> path = paths.routes().states().path(place);
                assertEquals(paths.reaches(place), path.isPresent());
                path.ifPresent(steps -> assertTrue(canBeGone(new PaperWalk(procedure), steps), steps.toString()));
            }
        }
    }

    private static boolean canBeGone(PaperWalk trying, List<PathStep> path) {
        Optional<PaperWalk.Position> at = trying.start().map(start -> intoRoutines(trying, start));
        for (PathStep step : path.subList(0, path.size() - 1)) {
            at = at.filter(position -> position.label().equals(step.step())).flatMap(position -> trying.moves(position)
                    .stream().filter(move -> move.result().equals(step.outcome())).findFirst())
                    .map(move -> intoRoutines(trying, move.to()));
        }
        PathStep last = path.get(path.size() - 1);
        return at.filter(position -> position.label().equals(last.step())
                || position.label().startsWith(last.step() + "/")).isPresent();
    }

    /** Going into a routine does not show in a path. */
    private static PaperWalk.Position intoRoutines(PaperWalk trying, PaperWalk.Position position) {
        PaperWalk.Position at = position;
        List<PaperWalk.Move> moves = trying.moves(at);
        while (moves.size() == 1 && moves.get(0).result().isEmpty()) {
            at = moves.get(0).to();
            moves = trying.moves(at);
        }
        return at;
    }

    @Test
    void should_count_every_path_and_find_the_longest_and_the_slowest() {
        int counted = 0;
        for (int seed = 0; seed < PROCEDURES; seed++) {
            Procedure procedure = Draft.at(seed, true, seed % 3);
            PaperWalk trying = new PaperWalk(procedure);
            Tally tally = new Tally(trying);
            if (!trying.eachPath(3_000, tally::add)) {
                continue;
            }
            PathReport report = PathReport.of(ProcedurePaths.of(procedure));
            if (report.paths().isEmpty()) {
                // a bounded arrow may lead otherwise in a circle as well
                continue;
            }
            counted++;
            assertEquals(BigInteger.valueOf(tally.paths), report.paths().get(), "seed " + seed);
            assertEquals(tally.paths > 0, report.worstSeconds().isPresent());
            if (tally.paths > 0) {
                assertEquals(tally.longest, report.longest().orElseThrow().size(), "seed " + seed);
                assertEquals(Exact.of(tally.slowest * 60), report.worstSeconds().get(), "seed " + seed);
            }
        }
        assertTrue(counted > PROCEDURES / 2, "counted " + counted);
    }

    /** What all paths come to; times in whole minutes. */
    private static final class Tally {
        final PaperWalk trying;
        long paths;
        int longest;
        long slowest;

        Tally(PaperWalk trying) {
            this.trying = trying;
        }

        void add(List<PaperWalk.Move> path) {
            paths++;
            longest = Math.max(longest, 1 + (int) path.stream().filter(move -> !move.result().isEmpty()).count());
            slowest = Math.max(slowest, path.stream().map(PaperWalk.Move::to).filter(at -> at.back().isEmpty())
                    .filter(at -> !trying.isTimedAsAWhole(at)).mapToLong(at -> minutes(at.step())).sum());
        }

        private static long minutes(Step step) {
            return step.frame().takes().map(Written::value).map(time -> Math.round(time.base().doubleValue() / 60)).orElse(0L);
        }
    }

    @Test
    void should_know_which_places_can_be_reached_round_others() {
        for (int seed = 0; seed < PROCEDURES; seed++) {
            Procedure procedure = Draft.at(seed, true, 0);
            ProcedurePaths paths = ProcedurePaths.of(procedure);
            Predicate<String> closed = name -> name.hashCode() % 3 == seedOf(procedure) % 3;
            Predicate<String> first = name -> name.hashCode() % 4 == 1;
            Map<String, Integer> round = new HashMap<>();
            Map<String, Integer> after = new HashMap<>();
            boolean all = tryAll(new PaperWalk(procedure), closed, first, round, after);
            if (!all) {
                continue;
            }
            Routes.Reach without = paths.routes().without(place -> closed.test(place.label()));
            Routes.Reach behind = paths.routes().after(place -> first.test(place.label()), place -> closed.test(place.label()));
            for (InlinedStep place : paths.map().places()) {
                assertEquals(Optional.ofNullable(round.get(place.label())),
                        without.path(place).map(path -> path.size() - 1), "seed " + seed + " round " + place);
                assertEquals(Optional.ofNullable(after.get(place.label())),
                        behind.path(place).map(path -> path.size() - 1), "seed " + seed + " after " + place);
            }
        }
    }

    private static int seedOf(Procedure procedure) {
        return procedure.steps().size();
    }

    /** The fewest moves to each step, on prefixes of paths, round the closed ones and after the first ones. */
    private static boolean tryAll(PaperWalk trying, Predicate<String> closed, Predicate<String> first,
            Map<String, Integer> round, Map<String, Integer> after) {
        int[] left = {5_000};
        trying.start().ifPresent(start -> tryAll(trying, start, 0, !closed.test(start.label()), 0, closed, first, round, after, left));
        return left[0] > 0;
    }

    /** @param phase 0 before one of the first, 1 after it, 2 where a closed one was met since */
    private static void tryAll(PaperWalk trying, PaperWalk.Position at, int moves, boolean open, int phase,
            Predicate<String> closed, Predicate<String> first, Map<String, Integer> round, Map<String, Integer> after, int[] left) {
        if (--left[0] <= 0) {
            return;
        }
        if (open) {
            round.merge(at.label(), moves, Math::min);
        }
        if (phase == 1) {
            after.merge(at.label(), moves, Math::min);
        }
        for (PaperWalk.Move move : trying.moves(at)) {
            String next = move.to().label();
            // the path may pass the first place again, and be counted from there anew
            int then = first.test(at.label()) || phase == 1 ? 1 : phase == 2 ? 2 : 0;
            tryAll(trying, move.to(), moves + 1, open && !closed.test(next), then == 1 && closed.test(next) ? 2 : then,
                    closed, first, round, after, left);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * Goes through a procedure the way a person with paper would: one position, one sheet of values, one
 * tally for each bounded arrow, a stack for routines. Written straight from the description of the
 * language and sharing nothing with the exploration it is held against.
 */
final class PaperWalk {
    private final Procedure procedure;

    PaperWalk(Procedure procedure) {
        this.procedure = procedure;
    }

    /** Where somebody stands; {@code back} is the exit a routine has just come back by. */
    record Position(List<String> callers, StepGraph graph, Step step, String back, Map<String, String> values,
            Map<String, Integer> tallies) {
        String label() {
            return String.join("/", callers) + (callers.isEmpty() ? "" : "/") + step.name();
        }

        String place() {
            return label() + (back.isEmpty() ? "" : " (" + back + ")");
        }

        String seen() {
            return place() + " " + values;
        }

        String whole() {
            return seen() + " " + tallies;
        }
    }

    /** @param result what was taken; empty on going into a routine */
    record Move(String result, Position to) {
    }

    Optional<Position> start() {
        Map<String, String> values = new TreeMap<>();
        for (Condition condition : procedure.own().conditions()) {
            values.put(condition.name().text(), condition.starts().orElse(condition.values().get(0)).text());
        }
        force(values);
        return procedure.first().map(step -> new Position(List.of(), procedure, step, "", values, new TreeMap<>()));
    }

    Map<String, String> withNeeds(Position at) {
        Map<String, String> values = new TreeMap<>(at.values());
        if (at.back().isEmpty()) {
            set(at.step().frame().needs(), values);
        }
        return values;
    }

    List<Move> moves(Position at) {
        List<Move> moves = new ArrayList<>();
        Map<String, String> values = withNeeds(at);
        Optional<Routine> routine = at.back().isEmpty() ? routine(at.step()) : Optional.empty();
        if (routine.isPresent()) {
            List<String> callers = new ArrayList<>(at.callers());
            callers.add(at.step().name().text());
            routine.get().first().ifPresent(step -> moves.add(new Move("",
                    new Position(callers, routine.get(), step, "", values, at.tallies()))));
            return moves;
        }
        set(at.step().frame().sets(), values);
        for (Outcome outcome : at.step().outcomes()) {
            if (at.back().isEmpty() || at.back().equals(outcome.key())) {
                take(at, outcome, new TreeMap<>(values)).ifPresent(to -> moves.add(new Move(outcome.key(), to)));
            }
        }
        return moves;
    }

    private Optional<Position> take(Position at, Outcome outcome, Map<String, String> values) {
        set(outcome.proves(), values);
        Map<String, Integer> tallies = new TreeMap<>(at.tallies());
        Optional<Name> target = outcome.target();
        if (outcome.repeat().isPresent()) {
            String arrow = at.label() + " " + outcome.key();
            int times = tallies.getOrDefault(arrow, 0);
            if (times < outcome.repeat().get().atMost()) {
                tallies.put(arrow, times + 1);
            } else {
                target = Optional.of(outcome.repeat().get().otherwise());
            }
        }
        return target.flatMap(name -> arrive(at, name, values, tallies));
    }

    private Optional<Position> arrive(Position at, Name name, Map<String, String> values, Map<String, Integer> tallies) {
        Optional<Step> step = at.graph().step(name);
        if (step.isPresent()) {
            return Optional.of(new Position(at.callers(), at.graph(), step.get(), "", values, tallies));
        }
        if (!at.graph().isExit(name) || at.callers().isEmpty()) {
            return Optional.empty();
        }
        List<String> outer = at.callers().subList(0, at.callers().size() - 1);
        StepGraph graph = procedure;
        for (String caller : outer) {
            graph = routine(graph.step(Draft.name(caller)).orElseThrow()).orElseThrow();
        }
        Step caller = graph.step(Draft.name(at.callers().get(outer.size()))).orElseThrow();
        return Optional.of(new Position(outer, graph, caller, name.text(), values, tallies));
    }

    private Optional<Routine> routine(Step step) {
        return step instanceof Step.Perform perform ? perform.routine().flatMap(name -> procedure.own().routines().stream()
                .filter(routine -> routine.name().text().equals(name.text())).findFirst()) : Optional.empty();
    }

    /** Whether a perform step around this position states the time of its whole routine. */
    boolean isTimedAsAWhole(Position at) {
        StepGraph graph = procedure;
        for (String caller : at.callers()) {
            Step perform = graph.step(Draft.name(caller)).orElseThrow();
            if (perform.frame().takes().isPresent()) {
                return true;
            }
            graph = routine(perform).orElseThrow();
        }
        return false;
    }

    private void set(List<Setting> settings, Map<String, String> values) {
        settings.forEach(setting -> values.put(setting.condition().text(), setting.value().text()));
        force(values);
    }

    private void force(Map<String, String> values) {
        for (int again = 0; again < 10; again++) {
            for (Condition condition : procedure.own().conditions()) {
                for (Condition.Becomes becomes : condition.becomes()) {
                    if (values.get(becomes.when().condition().text()).equals(becomes.when().value().text())) {
                        values.put(condition.name().text(), becomes.value().text());
                    }
                }
            }
        }
    }

    /** Every position that can be met, by whole state, with the fewest moves to it. */
    Map<Position, Integer> positions() {
        Map<String, Position> met = new LinkedHashMap<>();
        Map<Position, Integer> distance = new LinkedHashMap<>();
        Deque<Position> waiting = new ArrayDeque<>();
        start().ifPresent(position -> {
            met.put(position.whole(), position);
            distance.put(position, 0);
            waiting.add(position);
        });
        while (!waiting.isEmpty()) {
            Position at = waiting.remove();
            for (Move move : moves(at)) {
                if (met.putIfAbsent(move.to().whole(), move.to()) == null) {
                    distance.put(move.to(), distance.get(at) + 1);
                    waiting.add(move.to());
                }
            }
        }
        return distance;
    }

    /** Every path to a conclusion, one after the other; false when there are more than can be tried. */
    boolean eachPath(int most, Consumer<List<Move>> told) {
        int[] left = {most};
        start().ifPresent(position -> follow(new ArrayList<>(List.of(new Move("", position))), left, told));
        return left[0] > 0;
    }

    private void follow(List<Move> path, int[] left, Consumer<List<Move>> told) {
        Position at = path.get(path.size() - 1).to();
        if (left[0] <= 0) {
            return;
        }
        if (at.step() instanceof Step.Conclude) {
            left[0]--;
            told.accept(List.copyOf(path));
            return;
        }
        for (Move move : moves(at)) {
            left[0]--;
            path.add(move);
            follow(path, left, told);
            path.remove(path.size() - 1);
        }
    }

    static Map<String, Integer> fewest(Map<Position, Integer> distances, Function<Position, String> by) {
        Map<String, Integer> fewest = new HashMap<>();
        distances.forEach((position, moves) -> fewest.merge(by.apply(position), moves, Math::min));
        return fewest;
    }
}

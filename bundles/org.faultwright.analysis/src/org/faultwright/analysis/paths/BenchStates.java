/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.nio.LongBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Setting;

/**
 * What can be live, charged, open and isolated at the same time, at every place. A single condition tells whether the supply
 * may be on at a place, and another whether the cover may be off; only both together tell whether hands may come to what is live.
 */
public final class BenchStates {
    private final ProcedurePaths paths;
    private final List<Condition> live;
    private final List<Condition> charged;
    private final List<Condition> closures;
    private final Exploration states;
    private final Steps steps;
    private final List<List<State>> at = new ArrayList<>();
    private final List<State> byNumber = new ArrayList<>();
    /** By the packed values: there are few of them and many states, and every rule about dangers asks. */
    private final Map<LongBuffer, Dangers> dangers = new ConcurrentHashMap<>();

    /** What is live, charged and open while the conditions have these values. */
    private record Dangers(long[] packed, List<Condition> live, List<Condition> charged, List<Condition> open) {
        /** Whether any of these is not among the others. */
        static boolean isAnyNew(List<Condition> these, List<Condition> others) {
            for (Condition one : these) {
                if (!isAmong(one, others)) {
                    return true;
                }
            }
            return false;
        }

        static boolean isAmong(Condition condition, List<Condition> these) {
            for (Condition one : these) {
                if (one.name().text().equals(condition.name().text())) {
                    return true;
                }
            }
            return false;
        }
    }

    /** Every step from one state to another: where to, and by which branch. */
    private static final class Steps implements Explorer.Arrivals {
        private final List<int[]> from = new ArrayList<>();

        @Override
        public void arrive(int fromState, int byBranch, int toState, long[] state) {
            while (from.size() <= fromState) {
                from.add(new int[0]);
            }
            int[] known = from.get(fromState);
            int[] more = Arrays.copyOf(known, known.length + 2);
            more[known.length] = toState;
            more[known.length + 1] = byBranch;
            from.set(fromState, more);
        }

        int[] from(int state) {
            return state < from.size() ? from.get(state) : new int[0];
        }
    }

    private BenchStates(ProcedurePaths paths, Exploration states, Steps steps) {
        List<Condition> all = paths.map().conditions();
        this.paths = paths;
        this.live = live(all);
        this.charged = charged(all);
        this.closures = Closures.among(all);
        this.states = states;
        this.steps = steps;
        paths.map().places().forEach(place -> at.add(new ArrayList<>()));
        for (int state = 0; state < states.size(); state++) {
            InlinedStep place = states.place(state);
            byNumber.add(new State(place, state));
            at.get(place.index()).add(byNumber.get(state));
        }
    }

    static BenchStates of(ProcedurePaths paths, boolean counts, int most) {
        List<Condition> followed = followed(paths);
        Steps steps = new Steps();
        Exploration exploration = Exploration.of(paths.map(), followed, counts, most, steps);
        return exploration.isComplete() || !counts ? new BenchStates(paths, exploration, steps) : of(paths, false, most);
    }

    /** Those that say something of danger, and all that may force them. */
    private static List<Condition> followed(ProcedurePaths paths) {
        List<Condition> all = paths.map().conditions();
        List<String> isolating = Stream.concat(paths.map().scope().points().stream().map(point -> point.isolated()),
                paths.map().scope().parts().stream().map(part -> part.isolated())).flatMap(Optional::stream)
                .flatMap(isolated -> isolated.when().stream()).map(setting -> setting.condition().text()).toList();
        List<Condition> wanted = all.stream().filter(one -> !one.values().isEmpty()).filter(one -> !one.live().isEmpty()
                || !one.charged().isEmpty() || Closures.isClosure(one) || isolating.contains(one.name().text())).toList();
        Set<String> cone = wanted.stream().flatMap(one -> StatePacking.withThoseForcing(one, all).stream()).map(one -> one.name().text()).collect(Collectors.toSet());
        return all.stream().filter(one -> cone.contains(one.name().text())).toList();
    }

    private static List<Condition> live(List<Condition> all) {
        return all.stream().filter(one -> !one.live().isEmpty() && !one.values().isEmpty()).toList();
    }

    private static List<Condition> charged(List<Condition> all) {
        return all.stream().filter(one -> !one.charged().isEmpty() && !one.values().isEmpty()).toList();
    }

    private Dangers dangers(long[] packed) {
        return dangers.computeIfAbsent(LongBuffer.wrap(packed), any -> new Dangers(packed, having(live, packed, Condition::live), having(charged, packed, Condition::charged),
                closures.stream().filter(closure -> !value(packed, closure).text().equals(closure.ends().orElseThrow().text())).toList()));
    }

    private List<Condition> having(List<Condition> among, long[] packed, Function<Condition, List<Name>> values) {
        return among.stream().filter(condition -> values.apply(condition).stream().anyMatch(value -> value.text().equals(value(packed, condition).text()))).toList();
    }

    private Name value(long[] packed, Condition condition) {
        return condition.values().get(states.value(packed, condition));
    }

    public List<Condition> live() {
        return live;
    }

    public List<Condition> charged() {
        return charged;
    }

    /** Whether every state was looked at. */
    public boolean isComplete() {
        return states.isComplete();
    }

    /** Whether bounds were kept. */
    public boolean countsRepeats() {
        return states.countsRepeats();
    }

    /** The states that can be met at a place, those with the shortest paths first. */
    public List<State> at(InlinedStep place) {
        return at.get(place.index());
    }

    /** What is passed on a way of states that follow one another. */
    public List<PathStep> path(List<State> way) {
        List<PathStep> path = new ArrayList<>();
        for (int i = 1; i < way.size(); i++) {
            int[] follow = steps.from(way.get(i - 1).number);
            int to = way.get(i).number;
            IntStream.range(0, follow.length / 2).filter(k -> follow[2 * k] == to).findFirst()
                    .ifPresent(k -> states.map().ways().get(follow[2 * k + 1] / 2).taken().ifPresent(path::add));
        }
        path.add(way.get(way.size() - 1).place().here());
        return List.copyOf(path);
    }

    /** Every state that can be met, those with the shortest paths first. */
    public Stream<State> all() {
        return byNumber.stream();
    }

    /** One state at a place, once the needs of the place are met. */
    public final class State {
        private final InlinedStep place;
        private final int number;
        /** Like the next two worked out when it is first asked for; whichever thread does it, the same comes out. */
        private Dangers here;
        private Dangers onComing;
        private List<State> next;

        private State(InlinedStep place, int number) {
            this.place = place;
            this.number = number;
        }

        public InlinedStep place() {
            return place;
        }

        private Dangers here() {
            Dangers known = here;
            if (known == null) {
                known = dangers(states.withNeedsMet(number));
                here = known;
            }
            return known;
        }

        /** Before the needs of the place are taken as met. */
        private Dangers onComing() {
            Dangers known = onComing;
            if (known == null) {
                known = dangers(states.onComing(number));
                onComing = known;
            }
            return known;
        }

        public Name value(Condition condition) {
            return BenchStates.this.value(here().packed, condition);
        }

        public boolean isLive(Condition condition) {
            return Dangers.isAmong(condition, here().live);
        }

        public boolean isCharged(Condition condition) {
            return Dangers.isAmong(condition, here().charged);
        }

        /** Whether anything is live or charged. */
        public boolean isEnergised() {
            return !here().live.isEmpty() || !here().charged.isEmpty();
        }

        /** What is live here and is not switched off by the step itself. */
        public Optional<Condition> staysLive() {
            return here().live.stream().filter(condition -> place.sets().stream()
                    .filter(setting -> setting.condition().text().equals(condition.name().text()))
                    .noneMatch(setting -> condition.live().stream()
                            .noneMatch(value -> value.text().equals(setting.value().text())))).findFirst();
        }

        /** Whether something that must be closed at the end is open. */
        public boolean isOpen() {
            return !here().open.isEmpty();
        }

        /** Whether the step itself opens, closes, connects or disconnects something. */
        public boolean movesClosure() {
            return closures.stream().anyMatch(closure -> place.sets().stream().anyMatch(setting -> setting.condition().text().equals(closure.name().text())
                    && !setting.value().text().equals(value(closure).text())));
        }

        /** Whether there is something to close, and all of it is closed. */
        public boolean isClosed() {
            return !closures.isEmpty() && !isOpen();
        }

        /** Whether supply and charge are kept away here from what is isolated so. */
        public boolean keepsAway(Optional<Isolation> isolated) {
            return isolated.isPresent() && isolated.get().when().stream().allMatch(this::holds);
        }

        private boolean holds(Setting setting) {
            return paths.map().scope().condition(setting.condition()).filter(one -> !one.values().isEmpty())
                    .map(one -> value(one).text().equals(setting.value().text())).orElse(false);
        }

        /** The states that follow it. */
        public List<State> next() {
            List<State> known = next;
            if (known == null) {
                int[] follow = steps.from(number);
                List<State> found = new ArrayList<>(follow.length / 2);
                for (int i = 0; i < follow.length; i += 2) {
                    found.add(byNumber.get(follow[i]));
                }
                known = Collections.unmodifiableList(found);
                next = known;
            }
            return known;
        }

        /** Whether something becomes live by going on from here to a state that follows. */
        public boolean raisesVoltage(State next) {
            return Dangers.isAnyNew(next.onComing().live, here().live);
        }

        /** What is open at the moment at which something becomes live by going on from here; nothing where nothing does. */
        public List<Setting> openWhenMadeLive() {
            List<Setting> open = new ArrayList<>();
            for (State following : next()) {
                if (raisesVoltage(following)) {
                    following.onComing().open.stream().map(closure -> new Setting(closure.name(), following.valueOnComing(closure), closure.at()))
                            .filter(one -> open.stream().noneMatch(one::says)).forEach(open::add);
                }
            }
            return open;
        }

        /** Whether a charge comes back by going on from here to a state that follows. */
        public boolean raisesCharge(State next) {
            return Dangers.isAnyNew(next.onComing().charged, here().charged);
        }

        private Name valueOnComing(Condition condition) {
            return BenchStates.this.value(onComing().packed, condition);
        }

        /** A shortest path to it. */
        public List<PathStep> path() {
            return states.path(number);
        }

        /** The states passed on the way, from the beginning to this one. */
        public List<State> way() {
            return states.way(number).stream().map(byNumber::get).toList();
        }
    }
}

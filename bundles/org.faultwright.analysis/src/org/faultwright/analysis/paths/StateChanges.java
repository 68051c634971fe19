/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Outcome;

/** What coming to a place and going on from it do to a state, worked out once for each place and way. */
final class StateChanges {
    private final StatePacking packing;
    private final int words;
    private final long[] clearOnNeed;
    private final long[] setOnNeed;
    private final long[] clearOnLeaving;
    private final long[] setOnLeaving;
    private final long[] clearOnWay;
    private final long[] setOnWay;
    private final List<List<Forced>> forced = new ArrayList<>();

    /** A value that another condition forces. */
    private record Forced(StatePacking.Bits when, StatePacking.Bits becomes) {
    }

    StateChanges(StepMap map, StatePacking packing) {
        this.packing = packing;
        this.words = packing.words();
        this.clearOnNeed = new long[map.places().size() * words];
        this.setOnNeed = new long[map.places().size() * words];
        this.clearOnLeaving = new long[clearOnNeed.length];
        this.setOnLeaving = new long[clearOnNeed.length];
        this.clearOnWay = new long[map.ways().size() * words];
        this.setOnWay = new long[map.ways().size() * words];
        packing.conditions().forEach(condition -> {
            List<Forced> of = condition.becomes().stream().flatMap(becomes -> forced(condition, becomes).stream())
                    .toList();
            if (!of.isEmpty()) {
                forced.add(of);
            }
        });
        map.places().forEach(place -> {
            packing.bits(place.needs()).forEach(bits -> add(bits, clearOnNeed, setOnNeed, place.index()));
            packing.bits(place.sets()).forEach(bits -> add(bits, clearOnLeaving, setOnLeaving, place.index()));
        });
        map.ways().forEach(way -> packing.bits(way.outcome().map(Outcome::proves).orElse(List.of()))
                .forEach(bits -> add(bits, clearOnWay, setOnWay, way.index())));
    }

    private Optional<Forced> forced(Condition condition, Condition.Becomes becomes) {
        return packing.bits(becomes.when()).flatMap(when -> StatePacking.value(condition, becomes.value())
                .map(value -> new Forced(when, new StatePacking.Bits(packing.field(condition), value))));
    }

    private void add(StatePacking.Bits bits, long[] clear, long[] set, int index) {
        int at = index * words + bits.field().word();
        long field = bits.field().mask() << bits.field().shift();
        clear[at] |= field;
        set[at] = set[at] & ~field | (long) bits.value() << bits.field().shift();
    }

    /** The values that conditions start at: as stated, else the first. */
    void start(long[] state) {
        for (Condition condition : packing.conditions()) {
            condition.starts().flatMap(name -> StatePacking.value(condition, name))
                    .ifPresent(value -> packing.field(condition).write(state, value));
        }
        force(state);
    }

    /**
     * Takes the needs of a place as met. Where they are not, that is a finding of its own; what follows
     * is looked at as it will be once the author has put it right.
     */
    void meetNeeds(int place, long[] state) {
        apply(clearOnNeed, setOnNeed, place, state);
    }

    /** What the step leaves, whatever its outcome. */
    void leave(int place, long[] state) {
        apply(clearOnLeaving, setOnLeaving, place, state);
    }

    /** What the outcome proves, after what the step leaves. */
    void prove(int way, long[] state) {
        apply(clearOnWay, setOnWay, way, state);
    }

    private void apply(long[] clear, long[] set, int index, long[] state) {
        long touched = 0;
        for (int i = 0, at = index * words; i < words; i++, at++) {
            touched |= clear[at];
            state[i] = state[i] & ~clear[at] | set[at];
        }
        if (touched != 0) {
            force(state);
        }
    }

    /**
     * Gives forced conditions their value; of several that would apply to one condition the first. Values
     * that force one another round in a circle would never settle, so the rounds are counted.
     */
    private void force(long[] state) {
        boolean changed = true;
        for (int round = 0; changed && round <= forced.size(); round++) {
            changed = false;
            for (List<Forced> of : forced) {
                changed |= force(of, state);
            }
        }
    }

    private static boolean force(List<Forced> ofOneCondition, long[] state) {
        for (Forced one : ofOneCondition) {
            if (one.when().hold(state)) {
                boolean differs = !one.becomes().hold(state);
                one.becomes().set(state);
                return differs;
            }
        }
        return false;
    }
}

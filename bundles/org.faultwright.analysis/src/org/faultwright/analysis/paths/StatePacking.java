/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Setting;

/** Where each condition's value and each bounded way's count stand in the bits of a state. */
final class StatePacking {
    private final List<Condition> conditions;
    private final Map<String, Field> byCondition = new HashMap<>();
    private final Map<Transition, Field> byWay = new HashMap<>();
    private int word;
    private int shift;
    private int lastWord;
    private int lastShift;
    private final int countsFromWord;
    private final int countsFromShift;

    /** A few bits of one word. */
    record Field(int word, int shift, long mask) {
        int read(long[] state) {
            return (int) (state[word] >>> shift & mask);
        }

        void write(long[] state, int value) {
            state[word] = state[word] & ~(mask << shift) | (long) value << shift;
        }
    }

    /** @param loops the bounded ways to count, in groups of which only one matters at a time: they share bits */
    StatePacking(List<Condition> conditions, Collection<List<Transition>> loops) {
        this.conditions = List.copyOf(conditions);
        this.conditions.forEach(condition -> byCondition.put(condition.name().text(),
                field(condition.values().size() - 1)));
        countsFromWord = word;
        countsFromShift = shift;
        for (List<Transition> loop : loops) {
            word = countsFromWord;
            shift = countsFromShift;
            loop.forEach(way -> byWay.put(way, field(way.atMost())));
        }
    }

    private Field field(int largest) {
        int bits = Integer.SIZE - Integer.numberOfLeadingZeros(Math.max(0, largest));
        if (shift + bits > Long.SIZE) {
            word++;
            shift = 0;
        }
        Field field = new Field(word, shift, (1L << bits) - 1);
        shift += bits;
        lastWord = Math.max(lastWord, word);
        lastShift = Math.max(lastShift, shift);
        return field;
    }

    int words() {
        return lastWord + 1;
    }

    /** How many bits are in use; more than 64 where they are spread over several words. */
    int bitCount() {
        return lastWord > 0 ? Long.SIZE + 1 : lastShift;
    }

    /** Sets every count to 0. */
    void forgetCounts(long[] state) {
        state[countsFromWord] &= countsFromShift == Long.SIZE ? -1L : (1L << countsFromShift) - 1;
        Arrays.fill(state, countsFromWord + 1, state.length, 0);
    }

    List<Condition> conditions() {
        return conditions;
    }

    Field field(Condition condition) {
        return byCondition.get(condition.name().text());
    }

    Optional<Field> field(Transition way) {
        return Optional.ofNullable(byWay.get(way));
    }

    /** A setting as bits; absent for a condition that is not followed or a value it does not have. */
    Optional<Bits> bits(Setting setting) {
        Field field = byCondition.get(setting.condition().text());
        // of the conditions, one or two are followed; every place and way asks
        return field == null ? Optional.empty() : conditions.stream().filter(one -> one.name().text().equals(setting.condition().text())).findFirst()
                .flatMap(condition -> value(condition, setting.value()).map(value -> new Bits(field, value)));
    }

    /** A field and what it is set to or compared with. */
    record Bits(Field field, int value) {
        boolean hold(long[] state) {
            return field.read(state) == value;
        }

        void set(long[] state) {
            field.write(state, value);
        }
    }

    List<Bits> bits(List<Setting> settings) {
        List<Bits> all = List.of();
        for (Setting setting : settings) {
            Optional<Bits> bits = bits(setting);
            if (bits.isPresent()) {
                all = all.isEmpty() ? new ArrayList<>() : all;
                all.add(bits.get());
            }
        }
        return all;
    }

    /** The place of a value among those of its condition, counted from 0. */
    static Optional<Integer> value(Condition condition, Name value) {
        for (int i = 0; i < condition.values().size(); i++) {
            if (condition.values().get(i).text().equals(value.text())) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    /** The condition and all that may force it, in the order of the scope. */
    static List<Condition> withThoseForcing(Condition condition, List<Condition> all) {
        List<Condition> cone = new ArrayList<>(List.of(condition));
        Set<String> names = new HashSet<>(Set.of(condition.name().text()));
        for (int i = 0; i < cone.size(); i++) {
            for (Condition.Becomes becomes : cone.get(i).becomes()) {
                all.stream().filter(one -> one.name().text().equals(becomes.when().condition().text()))
                        .filter(one -> names.add(one.name().text())).forEach(cone::add);
            }
        }
        return all.stream().filter(one -> names.contains(one.name().text())).toList();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.quantity.Limit;

/**
 * The declarations that a library shares and a procedure may also hold for itself.
 *
 * @param ambient the temperatures at the bench, where stated
 */
public record Declarations(List<Condition> conditions, List<NamedSetUp> setUps, List<Instrument> instruments, List<Point> points,
        List<Part> parts, List<Indicator> indicators, List<Note> notes, List<Routine> routines,
        Optional<Written<Limit>> ambient) {
    public static final Declarations NONE = new Declarations(List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
            List.of(), List.of(), Optional.empty());

    /** All of them, in the order in which the kinds are told of. */
    public Map<ThingKind, List<? extends Declaration>> byKind() {
        Map<ThingKind, List<? extends Declaration>> byKind = new EnumMap<>(ThingKind.class);
        byKind.put(ThingKind.CONDITION, conditions);
        byKind.put(ThingKind.SET_UP, setUps);
        byKind.put(ThingKind.INSTRUMENT, instruments);
        byKind.put(ThingKind.POINT, points);
        byKind.put(ThingKind.PART, parts);
        byKind.put(ThingKind.INDICATOR, indicators);
        byKind.put(ThingKind.NOTE, notes);
        byKind.put(ThingKind.ROUTINE, routines);
        return byKind;
    }

    public Stream<Declaration> all() {
        return byKind().values().stream().flatMap(List::stream);
    }

    public Declarations with(List<Condition> otherConditions, List<Routine> otherRoutines) {
        return new Declarations(otherConditions, setUps, instruments, points, parts, indicators, notes, otherRoutines, ambient);
    }
}

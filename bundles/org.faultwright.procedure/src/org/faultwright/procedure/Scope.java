/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.quantity.Limit;

/** What a document can name: its own declarations first, then those of the libraries it uses. */
public final class Scope {
    private final Map<String, Condition> conditions = new LinkedHashMap<>();
    private final Map<String, NamedSetUp> setUps = new LinkedHashMap<>();
    private final Map<String, Instrument> instruments = new LinkedHashMap<>();
    private final Map<String, Point> points = new LinkedHashMap<>();
    private final Map<String, Part> parts = new LinkedHashMap<>();
    private final Map<String, Indicator> indicators = new LinkedHashMap<>();
    private final Map<String, Note> notes = new LinkedHashMap<>();
    private final Map<String, Routine> routines = new LinkedHashMap<>();

    private Optional<Written<Limit>> ambient = Optional.empty();

    private Scope() {
    }

    static Scope of(Document document) {
        Scope scope = new Scope();
        scope.add(document.own());
        document.libraries().forEach(library -> scope.add(library.own()));
        return scope;
    }

    private void add(Declarations declared) {
        put(conditions, declared.conditions());
        put(setUps, declared.setUps());
        put(instruments, declared.instruments());
        put(points, declared.points());
        put(parts, declared.parts());
        put(indicators, declared.indicators());
        put(notes, declared.notes());
        put(routines, declared.routines());
        ambient = ambient.or(declared::ambient);
    }

    private static <T extends Declaration> void put(Map<String, T> into, List<T> declared) {
        declared.forEach(one -> into.putIfAbsent(one.name().text(), one));
    }

    public Optional<Condition> condition(Name name) {
        return Optional.ofNullable(conditions.get(name.text()));
    }

    public Optional<NamedSetUp> setUp(Name name) {
        return Optional.ofNullable(setUps.get(name.text()));
    }

    public Optional<Instrument> instrument(Name name) {
        return Optional.ofNullable(instruments.get(name.text()));
    }

    public Optional<Point> point(Name name) {
        return Optional.ofNullable(points.get(name.text()));
    }

    public Optional<Part> part(Name name) {
        return Optional.ofNullable(parts.get(name.text()));
    }

    public Optional<Indicator> indicator(Name name) {
        return Optional.ofNullable(indicators.get(name.text()));
    }

    public Optional<Note> note(Name name) {
        return Optional.ofNullable(notes.get(name.text()));
    }

    public Optional<Routine> routine(Name name) {
        return Optional.ofNullable(routines.get(name.text()));
    }

    /** The routine that a step performs; absent where it performs none, or one that nothing declares. */
    public Optional<Routine> performedBy(Step step) {
        return step instanceof Step.Perform perform ? perform.routine().flatMap(this::routine) : Optional.empty();
    }

    /** The temperatures at the bench: the document's own, else those of the nearest library that states them. */
    public Optional<Written<Limit>> ambient() {
        return ambient;
    }

    /** Everything that can be named. */
    public Stream<Declaration> all() {
        return Stream.of(conditions, setUps, instruments, points, parts, indicators, notes, routines).flatMap(kind -> kind.values().stream());
    }

    public List<Condition> conditions() {
        return List.copyOf(conditions.values());
    }

    public List<NamedSetUp> setUps() {
        return List.copyOf(setUps.values());
    }

    public List<Instrument> instruments() {
        return List.copyOf(instruments.values());
    }

    public List<Point> points() {
        return List.copyOf(points.values());
    }

    public List<Part> parts() {
        return List.copyOf(parts.values());
    }

    public List<Indicator> indicators() {
        return List.copyOf(indicators.values());
    }

    public List<Note> notes() {
        return List.copyOf(notes.values());
    }

    public List<Routine> routines() {
        return List.copyOf(routines.values());
    }
}

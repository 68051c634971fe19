/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.lang.ref.SoftReference;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.StepGraph;

/**
 * What the rules look at: one document, and what is computed from it once and shared by several rules. May be shared between threads: what is computed does
 * not change afterwards, or keeps its own lock.
 */
public final class Subject {
    private final Document document;
    private final Scope scope;
    private final Optional<LocalDate> today;
    private final Object beginning = new Object();
    /** Given up where memory runs short, as with a thousand texts open, and computed again when it is asked for. */
    private volatile SoftReference<Map<Class<?>, OnDemand<Object>>> results = new SoftReference<>(null);

    /** @param today the day that due dates are held against; absent leaves them alone */
    public Subject(Document document, Optional<LocalDate> today) {
        this(document, document.scope(), today);
    }

    /** A part of a document, with all that the whole one can name. */
    public Subject(Document document, Scope scope, Optional<LocalDate> today) {
        this.document = document;
        this.scope = scope;
        this.today = today;
    }

    public Document document() {
        return document;
    }

    /** The document if it is a procedure. */
    public Optional<Procedure> procedure() {
        return document instanceof Procedure procedure ? Optional.of(procedure) : Optional.empty();
    }

    public List<StepGraph> graphs() {
        return document.graphs();
    }

    public Scope scope() {
        return scope;
    }

    public Optional<LocalDate> today() {
        return today;
    }

    /** Takes over a result that was computed for another state of the text and holds for this one, before anything asks for it. */
    public <T> void takeOver(Class<T> type, T result) {
        result(type).get(() -> result);
    }

    /** A result that several rules need, computed the first time it is asked for. */
    public <T> T shared(Class<T> type, Function<Subject, T> compute) {
        return type.cast(result(type).get(() -> compute.apply(this)));
    }

    private OnDemand<Object> result(Class<?> type) {
        return results().computeIfAbsent(type, any -> new OnDemand<>());
    }

    private Map<Class<?>, OnDemand<Object>> results() {
        Map<Class<?>, OnDemand<Object>> shared = results.get();
        return shared != null ? shared : begun();
    }

    private Map<Class<?>, OnDemand<Object>> begun() {
        // its own lock: whoever checks a subject may hold that of the subject meanwhile
        synchronized (beginning) {
            Map<Class<?>, OnDemand<Object>> shared = results.get();
            if (shared == null) {
                shared = new ConcurrentHashMap<>();
                results = new SoftReference<>(shared);
            }
            return shared;
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.lang.ref.SoftReference;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.StepGraph;

/** What the rules look at: one document, and what is computed from it once and shared by several rules. */
public final class Subject {
    private final Document document;
    private final Scope scope;
    private final Optional<LocalDate> today;
    /** Given up where memory runs short, as with a thousand texts open, and computed again when it is asked for. */
    private SoftReference<Map<Class<?>, Object>> results = new SoftReference<>(null);

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
        results().putIfAbsent(type, result);
    }

    /** A result that several rules need, computed the first time it is asked for. */
    public <T> T shared(Class<T> type, Function<Subject, T> compute) {
        Map<Class<?>, Object> shared = results();
        Object known = shared.get(type);
        if (known == null) {
            known = compute.apply(this);
            shared.put(type, known);
        }
        return type.cast(known);
    }

    private Map<Class<?>, Object> results() {
        Map<Class<?>, Object> shared = results.get();
        if (shared == null) {
            shared = new HashMap<>();
            results = new SoftReference<>(shared);
        }
        return shared;
    }
}

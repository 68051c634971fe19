/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.faultwright.analysis.rules.Reference;
import org.faultwright.analysis.rules.References;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.ThingKind;

/** Every name in a text: those declared in it, and those that refer to something. */
final class NamesInText {
    private record Entry(Name name, ThingKind kind, Optional<Name> declared) {
        boolean sameThing(Entry other) {
            return declared.isPresent() && declared.equals(other.declared);
        }
    }

    private final List<Entry> entries = new ArrayList<>();
    private final String file;

    private NamesInText(OpenText text) {
        file = text.source().name();
        Map<Name, ThingKind> declarations = declarations(text.document());
        declarations.forEach((name, kind) -> entries.add(new Entry(name, kind, Optional.of(name))));
        for (Reference reference : List.copyOf(References.of(text.subject()))) {
            ThingKind kind = reference.declared().map(declarations::get).orElse(reference.kind().thing());
            entries.add(new Entry(reference.name(), kind, reference.declared()));
        }
        entries.removeIf(entry -> !entry.name().at().source().name().equals(file) || entry.name().at().length() == 0 && !isNamesake(entry));
        entries.sort(Comparator.comparingInt(entry -> entry.name().at().offset()));
    }

    static NamesInText of(OpenText text) {
        synchronized (text.subject()) {
            return new NamesInText(text);
        }
    }

    /** A step that follows a routine for having its name uses the routine and does not say so. */
    private static boolean isNamesake(Entry entry) {
        return entry.kind() == ThingKind.ROUTINE && entry.name().isUnderstood();
    }

    Optional<NameInText> at(int offset) {
        return entries.stream().filter(entry -> entry.name().at().length() > 0 && holds(entry.name().at(), offset)).findFirst().map(this::withUses);
    }

    /** Where this text says the name that is declared there, however often the declaring file was read. */
    List<SourceRange> usesOf(Name declared) {
        return entries.stream().filter(entry -> entry.declared().filter(other -> isSame(other, declared)).isPresent())
                .map(entry -> entry.name().at()).distinct().toList();
    }

    private static boolean isSame(Name one, Name other) {
        return one.text().equals(other.text()) && one.at().offset() == other.at().offset()
                && one.at().source().name().equals(other.at().source().name());
    }

    /** Whether something of this kind is declared under that name in this text. */
    boolean declares(String name, ThingKind kind) {
        return entries.stream().anyMatch(entry -> entry.kind() == kind && entry.name().text().equals(name)
                && entry.declared().filter(entry.name()::equals).isPresent());
    }

    private NameInText withUses(Entry entry) {
        List<SourceRange> uses = entries.stream().filter(other -> other == entry || other.sameThing(entry))
                .map(other -> other.name().at()).filter(Objects::nonNull).distinct().toList();
        return new NameInText(entry.name(), entry.kind(), entry.declared(), uses);
    }

    private static boolean holds(SourceRange at, int offset) {
        return at.offset() <= offset && offset <= at.end();
    }

    private static Map<Name, ThingKind> declarations(Document document) {
        Map<Name, ThingKind> declared = new HashMap<>();
        Declarations own = document.own();
        own.byKind().forEach((kind, some) -> put(declared, some, kind));
        own.conditions().forEach(condition -> condition.values().forEach(value -> declared.put(value, ThingKind.VALUE)));
        for (StepGraph graph : document.graphs()) {
            put(declared, graph.writtenSteps(), ThingKind.STEP);
            graph.exits().forEach(exit -> declared.put(exit, ThingKind.EXIT));
        }
        if (document instanceof Procedure procedure) {
            put(declared, procedure.faults(), ThingKind.FAULT);
        }
        return declared;
    }

    private static void put(Map<Name, ThingKind> declared, List<? extends Declaration> some, ThingKind kind) {
        some.forEach(one -> declared.put(one.name(), kind));
    }
}

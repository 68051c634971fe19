/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import org.faultwright.analysis.paths.Closing;
import org.faultwright.analysis.paths.Understood;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/** Finds what {@code uses} names, and what that uses in turn. Each library is read once as long as its text stays. */
final class Libraries {
    private static final int MOST_KEPT = 256;

    /** More than any bench has; an endless chain of libraries must end somewhere. */
    private static final int MOST_USED = 200;

    private final LibraryFinder finder;
    private final SingleTexts texts;
    private final Map<String, Document> read = new ConcurrentHashMap<>();

    Libraries(LibraryFinder finder, SingleTexts texts) {
        this.finder = finder;
        this.texts = texts;
    }

    /** The document with its libraries: nearest first, each once, itself never. */
    Document resolve(Document document) {
        return resolve(document, lookup -> { });
    }

    /** @param looked is told of each library that is looked for, found or not */
    Document resolve(Document document, Consumer<LibraryLookup> looked) {
        List<Library> found = document.uses().isEmpty() ? List.of() : closure(document, looked);
        if (document instanceof Library library) {
            return Understood.in(library.with(found));
        }
        Procedure procedure = (Procedure) document;
        return Closing.of(Understood.in(procedure.with(found, procedure.own())));
    }

    /** Breadth first, so that the nearest comes first; a library that has been met is not followed again. */
    private List<Library> closure(Document document, Consumer<LibraryLookup> looked) {
        Map<String, Library> found = new LinkedHashMap<>();
        Deque<Document> toDo = new ArrayDeque<>(List.of(document));
        while (!toDo.isEmpty() && found.size() < MOST_USED) {
            Document user = toDo.poll();
            for (Name use : user.uses()) {
                find(use, user, looked).filter(library -> !library.source().name().equals(document.source().name()))
                        .filter(library -> found.putIfAbsent(library.source().name(), library) == null)
                        .ifPresent(toDo::add);
            }
        }
        return List.copyOf(found.values());
    }

    private Optional<Library> find(Name use, Document user, Consumer<LibraryLookup> looked) {
        Optional<SourceText> text = finder.find(use.text(), user.source().name());
        looked.accept(new LibraryLookup(use.text(), user.source().name(), text));
        return text.map(this::read).flatMap(read -> read instanceof Library library ? Optional.of(library) : Optional.empty());
    }

    private Document read(SourceText text) {
        Document known = read.get(text.name());
        if (known != null && known.source().content().equals(text.content())) {
            return known;
        }
        Document fresh = texts.read(text);
        if (read.size() >= MOST_KEPT) {
            read.clear();
        }
        read.put(text.name(), fresh);
        return fresh;
    }
}

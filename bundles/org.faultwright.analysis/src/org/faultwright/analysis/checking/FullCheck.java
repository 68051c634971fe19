/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;

/**
 * Checks whole: every rule, over a procedure and over the libraries it uses. The way to a {@link CheckedProcedure}, so that nothing is
 * published that some rule has not seen. What was found in a library is kept, since many procedures use one. Safe between threads.
 */
public final class FullCheck {
    /** While a library is written there is a new text of it at every key. */
    private static final int MOST_KEPT = 64;

    private final Checker every;
    private final Map<List<String>, List<Finding>> libraries = new ConcurrentHashMap<>();

    /** @param today the day that due dates are held against; absent leaves them alone */
    public FullCheck(Optional<LocalDate> today) {
        every = new Checker(RuleSet.all(), today);
    }

    public CheckedProcedure check(Procedure procedure) {
        Subject subject = every.subject(procedure);
        return new CheckedProcedure(procedure, own(subject), inLibraries(procedure), subject);
    }

    /** With what was found in the procedure so far, for a card that is looked at while the text is written: nothing of it is published. */
    public CheckedProcedure soFar(Procedure procedure, List<Finding> found) {
        return new CheckedProcedure(procedure, List.copyOf(found), inLibraries(procedure), every.subject(procedure));
    }

    private List<Finding> inLibraries(Procedure procedure) {
        List<Finding> found = new ArrayList<>();
        procedure.libraries().forEach(library -> found.addAll(of(library.with(used(library, procedure.libraries())))));
        return List.copyOf(found);
    }

    /** What a library uses, and that in turn, among those that a procedure was read with: a procedure has them all, they have none. */
    private static List<Library> used(Library user, List<Library> all) {
        Map<String, Library> found = new LinkedHashMap<>();
        Deque<Library> toDo = new ArrayDeque<>(List.of(user));
        while (!toDo.isEmpty()) {
            for (Name use : toDo.poll().uses()) {
                all.stream().filter(library -> library != user && isFile(library, use.text()))
                        .filter(library -> found.putIfAbsent(library.source().name(), library) == null).forEach(toDo::add);
            }
        }
        return List.copyOf(found.values());
    }

    private static boolean isFile(Library library, String use) {
        String file = library.source().name().replace('\\', '/');
        return file.substring(file.lastIndexOf('/') + 1).equals(use + ".procedure");
    }

    /** What every rule finds in a library, in reading order. @param library with those it uses */
    public List<Finding> of(Library library) {
        if (libraries.size() >= MOST_KEPT) {
            libraries.clear();
        }
        return libraries.computeIfAbsent(texts(library), text -> own(every.subject(library)));
    }

    private static List<String> texts(Library library) {
        return Stream.concat(Stream.of(library), library.libraries().stream())
                .flatMap(one -> Stream.of(one.source().name(), one.source().content())).toList();
    }

    /** What is wrong in a library is told of the library. */
    private List<Finding> own(Subject subject) {
        String file = subject.document().source().name();
        return every.check(subject).stream().filter(finding -> finding.at().source().name().equals(file)).toList();
    }
}

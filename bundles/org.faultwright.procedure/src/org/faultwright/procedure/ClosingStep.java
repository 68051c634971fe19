/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.faultwright.procedure.Outcome.Word;

/**
 * The step that closes the unit before a conclusion, where a text says {@code closes by}. Nobody writes it: it is put in where
 * something is open, and every proof sees it. Its name has spaces, so that no step of a text can have it.
 */
public final class ClosingStep {
    private static final String BEFORE = " before ";

    private ClosingStep() {
    }

    /** What performs the routine and goes on to the conclusion, whichever way the routine is left. */
    public static Step before(Step.Conclude conclusion, Routine routine) {
        SourceRange at = conclusion.name().at();
        Name target = conclusion.name();
        List<Outcome> outcomes = routine.exits().stream().map(exit -> new Outcome(new Word(new Name(exit.text(), at)), Optional.of(target),
                Optional.empty(), List.of(), at)).toList();
        return new Step.Perform(new Name(name(routine, conclusion), at), title(routine), Optional.of(new Name(routine.name().text(), at)),
                StepFrame.PLAIN, outcomes, new SourceRange(at.source(), at.end(), 0));
    }

    /** What stands on the card and in the tree. */
    private static String title(Routine routine) {
        String work = routine.title();
        return "Before you write the result" + (work.isBlank() ? "" : ": " + work.substring(0, 1).toLowerCase(Locale.ROOT) + work.substring(1));
    }

    static String name(Routine routine, Step.Conclude conclusion) {
        return routine.name().text() + BEFORE + conclusion.name().text();
    }

    public static boolean is(Step step) {
        return step.name().text().contains(BEFORE);
    }

    /** The name as its author wrote it: of a closing step that of the conclusion behind it. */
    public static String written(String name) {
        int before = name.indexOf(BEFORE);
        return before < 0 ? name : name.substring(before + BEFORE.length());
    }
}

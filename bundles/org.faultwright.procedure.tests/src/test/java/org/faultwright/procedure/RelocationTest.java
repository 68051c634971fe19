/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A part of a document that stands elsewhere is the same but for its places. */
class RelocationTest {
    private static final SourceText BEFORE = new SourceText("A.procedure", "check Look \"Look\" { yes -> Done }");
    private static final SourceText NOW = new SourceText("A.procedure", "// new\ncheck Look \"Look\" { yes -> Done }");
    private static final int BY = 7;

    private static Step look(SourceText text, int by, String title, String target) {
        Name name = new Name("Look", new SourceRange(text, 6 + by, 4));
        SourceRange yes = new SourceRange(text, 20 + by, 3);
        Outcome outcome = new Outcome(new Outcome.Word(new Name("yes", yes)), Optional.of(new Name(target, new SourceRange(text, 27 + by, 4))),
                Optional.empty(), List.of(), new SourceRange(text, 20 + by, 11));
        return new Step.Check(name, title, StepFrame.PLAIN, List.of(outcome), new SourceRange(text, by, 33));
    }

    @Test
    void should_move_every_place_and_nothing_else() {
        Step moved = new Relocation(NOW, BY).of(look(BEFORE, 0, "Look", "Done"));
        assertEquals(look(NOW, BY, "Look", "Done"), moved);
        assertEquals("Look", moved.name().at().text());
        assertSame(StepFrame.PLAIN, moved.frame());
    }

    @Test
    void should_move_the_steps_of_a_routine_that_are_still_found_by_name() {
        Routine before = new Routine(new Name("R", new SourceRange(BEFORE, 0, 1)), "R", List.of(), Optional.empty(), Optional.empty(), Optional.empty(),
                List.of(look(BEFORE, 0, "Look", "Done")), new SourceRange(BEFORE, 0, 33));
        Routine moved = new Relocation(NOW, BY).of(before);
        assertEquals(Optional.of(look(NOW, BY, "Look", "Done")), moved.step(moved.steps().get(0).name()));
    }

    @Test
    void should_give_back_what_holds_no_place() {
        Optional<String> words = Optional.of("words");
        List<Optional<String>> list = List.of(words);
        assertSame(words, new Relocation(NOW, BY).of(words));
        assertSame(list, new Relocation(NOW, BY).of(list));
    }

    @Test
    void should_compare_meanings_with_or_without_words_and_places() {
        Step before = look(BEFORE, 0, "Look", "Done");
        assertTrue(SameMeaning.wordsAside(before, look(NOW, BY, "Look closely", "Done")));
        assertFalse(SameMeaning.wordsAside(before, look(NOW, BY, "Look", "Fine")));
        SameMeaning.Places moved = (one, other) -> other.offset() == one.offset() + BY && other.length() == one.length();
        assertTrue(SameMeaning.with(moved, before, look(NOW, BY, "Look", "Done")));
        assertFalse(SameMeaning.with(moved, before, look(NOW, BY, "Look closely", "Done")));
        assertFalse(SameMeaning.with(moved, before, look(NOW, BY + 1, "Look", "Done")));
    }

    @Test
    void should_count_the_title_of_an_example_as_its_name() {
        Example before = example("One");
        assertTrue(SameMeaning.wordsAside(before, example("One")));
        assertFalse(SameMeaning.wordsAside(before, example("Two")));
    }

    private static Example example(String title) {
        return new Example(false, new Name(title, new SourceRange(BEFORE, 0, 3)), Optional.empty(), List.of(), Optional.empty(), Optional.empty(),
                new SourceRange(BEFORE, 0, 3));
    }
}

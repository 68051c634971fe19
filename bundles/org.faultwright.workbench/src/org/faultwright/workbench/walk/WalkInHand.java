/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.procedure.Note;

/**
 * The walk through one open text: what was answered, and what is half done at the step in hand. Answers that no longer fit a changed text are kept until the
 * writer goes another way, so that they come back when the text does. Only for the window's thread.
 */
final class WalkInHand {
    private List<WalkAnswer> answers = List.of();
    private List<WalkAnswer> earlier = List.of();
    private boolean begun;
    private Optional<WalkState> stand = Optional.empty();
    private String visit = "";
    private final Set<String> acknowledged = new HashSet<>();
    private final List<String> typed = new ArrayList<>();
    private Optional<String> told = Optional.empty();
    private Optional<String> kept = Optional.empty();

    boolean isBegun() {
        return begun;
    }

    List<WalkAnswer> answers() {
        return answers;
    }

    /** Where the walk stood when it was worked out last. */
    Optional<WalkState> stand() {
        return stand;
    }

    /** The number of answers of a walk that was given up and can be taken up again. */
    int earlier() {
        return earlier.size();
    }

    void begin() {
        begun = true;
        answers = List.of();
    }

    /** Gives the walk up; it can be taken up again until another one is begun and answered. */
    void beginAnew() {
        earlier = answers.isEmpty() ? earlier : answers;
        answers = List.of();
        begun = false;
        stand = Optional.empty();
        visit = "";
    }

    void goOn() {
        begun = true;
        answers = earlier;
        earlier = List.of();
    }

    /** In the place of whatever no longer fitted. */
    void answer(WalkAnswer answer) {
        List<WalkAnswer> more = new ArrayList<>(fitting());
        more.add(answer);
        answers = List.copyOf(more);
        earlier = List.of();
    }

    private List<WalkAnswer> fitting() {
        return stand.map(known -> known.passed().stream().map(WalkState.GivenAnswer::answer).toList()).orElse(answers);
    }

    /** Takes every answer behind these back. */
    void takeBack(int kept) {
        List<WalkAnswer> fitting = fitting();
        answers = List.copyOf(fitting.subList(0, Math.min(kept, fitting.size())));
    }

    /** One step back; before the first step the walk is not begun. */
    void back() {
        if (fitting().isEmpty()) {
            beginAnew();
        } else {
            takeBack(fitting().size() - 1);
        }
    }

    /** The walk as it stands in a text that may have changed. What is half done stays where the place is the same. */
    void show(Optional<WalkState> now) {
        stand = now;
        String at = now.map(one -> one.passed().size() + " " + one.walk().label()).orElse("");
        if (!at.equals(visit)) {
            visit = at;
            acknowledged.clear();
            typed.clear();
            told = Optional.empty();
            kept = Optional.empty();
        }
        now.flatMap(WalkState::unfit).filter(unfit -> typed.isEmpty())
                .ifPresent(unfit -> unfit.readings().forEach(reading -> typed.add(reading.typed())));
    }

    void acknowledge(Note note) {
        acknowledged.add(note.name().text());
    }

    /** The notes that must still be read before the step is shown. */
    List<Note> unread() {
        return stand.map(one -> one.walk().due().stream().filter(note -> !acknowledged.contains(note.name().text())).toList()).orElse(List.of());
    }

    /** What stands in the box for a reading. */
    String typed(int row) {
        return row < typed.size() ? typed.get(row) : "";
    }

    void type(int row, String text) {
        while (typed.size() <= row) {
            typed.add("");
        }
        typed.set(row, text);
    }

    /** The name of the example that it was kept as, while the text has one of that name. */
    Optional<String> kept() {
        return kept.filter(name -> stand.filter(one -> one.procedure().examples().stream().anyMatch(example -> example.title().text().equals(name))).isPresent());
    }

    void keptAs(String name) {
        kept = Optional.of(name);
        told = Optional.empty();
        typed.clear();
    }

    /** Why it was not kept as an example. */
    Optional<String> told() {
        return told;
    }

    void tell(String sentence) {
        told = Optional.of(sentence);
    }
}

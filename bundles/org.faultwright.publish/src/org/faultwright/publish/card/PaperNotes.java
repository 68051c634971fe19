/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Step;
import org.faultwright.publish.PlainText;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.plan.Used;

/**
 * Safety notes on paper: in full and numbered on the front, which is read before anything is touched, and at each step that warns
 * of them on one line, with the number under which the rest is found.
 */
final class PaperNotes {
    /** Of a line at a step the millimetres that a letter takes on average, and those that are no words. */
    private static final double LETTER = 1.6;
    private static final double AROUND = 7;

    private final Map<Note, List<Step>> notes;
    private final List<String> numbers;
    private final int line;

    /** @param width of a column, in millimetres */
    PaperNotes(Used used, double width) {
        this.notes = used.notes();
        this.numbers = notes.keySet().stream().map(note -> note.name().text()).toList();
        this.line = (int) ((width - AROUND) / LETTER);
    }

    Map<Note, List<Step>> all() {
        return notes;
    }

    /** Such as {@code note 2}. */
    String number(Note note) {
        return "note\u00A0" + (numbers.indexOf(note.name().text()) + 1);
    }

    /** The signal word, the hazard, what to do first and where the rest stands. */
    void atStep(Fo into, Note note) {
        Fo box = into.add("block", "role", "P", "border-left", "1.6pt solid #000000", "padding-left", "1mm", "margin-left", "1mm",
                "space-before", "0.4mm", "space-after", "0.4mm");
        Paint.signal(box, note.word());
        int room = line - note.word().name().length() - (note.word().isAboutPeople() ? 2 : 0) - number(note).length();
        List<String> sentences = sentences(note.avoid());
        String first = sentences.isEmpty() ? "" : sentences.get(0);
        String about = about(note, room - first.length());
        Paint.bold(box, about).verbatim(" ").text(told(sentences, room - about.length()));
        box.verbatim(" ").say("inline", number(note), "color", Paint.FAINT);
    }

    /** All its hazards where they leave room on the line, else the first. */
    private static String about(Note note, int room) {
        List<String> hazards = note.covers().stream().map(hazard -> Words.hazard(hazard.value())).toList();
        if (hazards.isEmpty()) {
            return note.hazard();
        }
        String all = hazards.stream().collect(Collectors.joining(", ")) + ":";
        return all.length() <= room ? all : hazards.get(0) + ":";
    }

    /** The first sentence, whole however long it is, and what of the next ones still goes on the line. */
    private static String told(List<String> sentences, int room) {
        StringBuilder told = new StringBuilder();
        for (String sentence : sentences) {
            if (told.length() > 0 && told.length() + 1 + sentence.length() > room) {
                break;
            }
            told.append(told.length() > 0 ? " " : "").append(sentence);
        }
        return told.toString();
    }

    private static List<String> sentences(String words) {
        List<String> sentences = new ArrayList<>();
        for (String sentence : PlainText.line(words).split("(?<=[.!?]) +(?=\\p{Lu})")) {
            sentences.add(sentence);
        }
        return sentences;
    }
}

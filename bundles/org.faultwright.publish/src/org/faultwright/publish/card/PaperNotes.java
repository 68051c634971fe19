/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.UsedDeclarations;

/**
 * Safety notes on paper: in full and numbered on the front, which is read before anything is touched, and at each step that
 * warns of them with all that is to be done and the number under which the rest is found.
 */
final class PaperNotes {
    private final Map<Note, List<Step>> notes;
    private final List<String> numbers;

    PaperNotes(UsedDeclarations used) {
        this.notes = used.notes();
        this.numbers = notes.keySet().stream().map(note -> note.name().text()).toList();
    }

    Map<Note, List<Step>> all() {
        return notes;
    }

    /** Such as {@code note 2}. */
    String number(Note note) {
        return "note\u00A0" + (numbers.indexOf(note.name().text()) + 1);
    }

    /** The signal word, the hazards and all that is to be done about them; what they do to whom stands on the front under the number. */
    void atStep(Fo into, Note note) {
        Fo box = into.add("block", "role", "P", "border-left", "1.6pt solid #000000", "padding-left", "1mm", "margin-left", "1mm",
                "space-before", "0.4mm", "space-after", "0.4mm");
        Paint.signal(box, note.word());
        Paint.bold(box, Wording.hazards(note)).verbatim(" ").text(PlainText.line(note.avoid()));
        box.verbatim(" ").add("inline", "color", Paint.FAINT).verbatim(number(note));
    }
}

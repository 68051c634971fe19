/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.UsedDeclarations;

/** Safety notes after ANSI Z535.6 and ISO 3864-2: gathered and numbered before anything is done, and again at the step that warns. */
final class NotesPart {
    private final CardPlan plan;
    private final Map<Note, List<Step>> notes;
    private final List<String> numbers;

    NotesPart(CardPlan plan, UsedDeclarations used) {
        this.plan = plan;
        this.notes = used.notes();
        this.numbers = notes.keySet().stream().map(note -> note.name().text()).toList();
    }

    void add(Tag body) {
        Tag section = body.add("section", "first");
        section.say("h2", "", "Dangers: read before anything else");
        section.add("p", "caution").say("b", "", Caution.FIRST).space().text(Caution.TRAINED);
        notes.forEach((note, steps) -> {
            Tag box = section.add("p", "note " + style(note)).id(anchor(note));
            box.say("span", "word", signal(note)).space().say("span", "faint", "note " + number(note)).space();
            box.say("b", "", note.hazard()).space().text(PlainText.line(note.consequence() + " " + note.avoid())).space();
            List<PlacedStep> at = plan.placed().filter(placed -> steps.contains(placed.step())).toList();
            box.text(at.size() == 1 ? "Step" : "Steps").space();
            links(box, at);
            box.text(".");
        });
    }

    private int number(Note note) {
        return numbers.indexOf(note.name().text()) + 1;
    }

    private String anchor(Note note) {
        return "note-" + number(note);
    }

    /** The signal word, the hazards and all that is to be done about them; what they do to whom stands in front under the number. */
    void atStep(Tag into, Note note) {
        Tag line = into.add("p", "note short " + style(note));
        line.say("span", "word", signal(note)).space();
        line.say("b", "", Wording.hazards(note)).space().text(PlainText.line(note.avoid())).space();
        line.link(anchor(note), "cited", "To note " + number(note)).text("note " + number(note));
    }

    private static String style(Note note) {
        return note.word().name().toLowerCase(Locale.ROOT);
    }

    /** A notice is not about injury and so has no alert symbol (ANSI Z535.6). */
    private static String signal(Note note) {
        return note.word() == SignalWord.NOTICE ? note.word().name() : Wording.ALERT + " " + note.word().name();
    }

    static void links(Tag into, List<PlacedStep> steps) {
        String between = "";
        for (PlacedStep step : steps) {
            into.text(between);
            if (!between.isEmpty()) {
                into.space();
            }
            into.link(step.anchor(), "", "To step " + step.label()).text(step.label());
            between = ",";
        }
    }
}

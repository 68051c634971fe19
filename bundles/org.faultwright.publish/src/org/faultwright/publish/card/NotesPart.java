/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Locale;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Placed;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Used;

/** Safety notes after ANSI Z535.6 and ISO 3864-2: gathered before anything is done, and again at the step that warns. */
final class NotesPart {
    private NotesPart() {
    }

    static void add(Tag body, Plan plan, Used used) {
        Tag section = body.add("section", "first");
        section.say("h2", "", "Read this before anything else");
        section.add("p", "caution").say("b", "", Caution.FIRST).space().text(Caution.TRAINED);
        used.notes().forEach((note, steps) -> {
            Tag box = note(section, note);
            Tag where = box.add("p", "where");
            where.text(steps.size() == 1 ? "At step" : "At steps").space();
            steps(where, plan, steps);
        });
    }

    /** One note in full. */
    private static Tag note(Tag into, Note note) {
        Tag box = into.add("div", "note " + style(note));
        box.say("p", "word", signal(note));
        Tag text = box.add("div", "text");
        text.add("p").say("b", "", note.hazard()).space().text(note.consequence());
        text.say("p", "avoid", note.avoid());
        return text;
    }

    /** The same at a step, where room is dear: all its sentences run on. */
    static void atStep(Tag into, Note note) {
        Tag line = into.add("p", "note short " + style(note));
        line.say("span", "word", signal(note)).space();
        line.say("b", "", note.hazard()).space().text(note.consequence()).space().text(note.avoid());
    }

    private static String style(Note note) {
        return note.word().name().toLowerCase(Locale.ROOT);
    }

    /** A notice is not about injury and so has no alert symbol (ANSI Z535.6). */
    private static String signal(Note note) {
        return note.word() == SignalWord.NOTICE ? note.word().name() : Wording.ALERT + " " + note.word().name();
    }

    /** Links to steps where they are printed first. */
    static void steps(Tag into, Plan plan, List<Step> steps) {
        links(into, plan.placed().filter(placed -> steps.contains(placed.step())
                && placed.label().equals(plan.label(placed.step()))).toList());
    }

    static void links(Tag into, List<Placed> steps) {
        String between = "";
        for (Placed step : steps) {
            into.text(between);
            if (!between.isEmpty()) {
                into.space();
            }
            into.link(step.anchor(), "", "To step " + step.label()).text(step.label());
            between = ",";
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import org.faultwright.procedure.SignalWord;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;
import org.faultwright.publish.page.PrintDocument;
import org.faultwright.publish.plan.PlacedStep;

/** The small things that the parts of a printed card share. Black and white keeps every meaning: no colour says anything alone. */
final class Paint {
    static final String INK = "#16242c";
    static final String FAINT = "#4a5860";
    static final String LINE = "#7a868d";
    /** Wide enough to keep two outcomes in a row apart; it stays at the end of a line, so that the next one begins at the left. */
    static final String WIDE_GAP = "\u00A0\u00A0\u00A0\u00A0 ";

    /** The typesetter reckons a page that it does not know yet a little too short. */
    static final String FOR_PAGE = "1.6mm";

    private Paint() {
    }

    static Fo heading(Fo into, String words) {
        return into.add("block", "role", "H2", "font-size", "11pt", "line-height", "13pt", "font-weight", "bold",
                "border-bottom", "1pt solid " + INK, "space-before", "3mm", "space-before.conditionality", "discard", "space-after", "1mm",
                "keep-with-next.within-column", "always").text(words);
    }

    static Fo line(Fo into) {
        return into.add("block", "role", "P");
    }

    /** What a line that ends with an arrow needs, so that the arrow stands at the right. */
    static Fo stretched(Fo line) {
        return line.set("text-align-last", "justify", "end-indent", FOR_PAGE);
    }

    /** A line that begins with what it is about. */
    static Fo line(Fo into, String key) {
        Fo line = line(into);
        line.say("inline", key, "color", FAINT, "font-size", "9pt").verbatim("\u2002");
        return line;
    }

    static Fo bold(Fo into, String words) {
        return into.say("inline", words, "font-weight", "bold");
    }

    static void boxes(Fo into, List<String> things) {
        things.forEach(thing -> into.add("block", "role", "P", "start-indent", "5mm", "text-indent", "-5mm")
                .verbatim(Wording.BOX + "\u00A0").text(thing));
    }

    /** One behind the other, each on one line unless it is too long for that. */
    static Fo boxesInRow(Fo into, List<String> things) {
        Fo line = line(into);
        for (int i = 0; i < things.size(); i++) {
            line.verbatim(i == 0 ? "" : " ").verbatim(Wording.BOX + "\u00A0").whole(things.get(i));
        }
        return line;
    }

    /** The same behind what they are, in a line that goes on; nothing where there is none. */
    static void boxesInRow(Fo line, String what, List<String> things) {
        for (int i = 0; i < things.size(); i++) {
            if (i == 0) {
                // no line ends between what they are and the first of them
                bold(line, what);
                line.verbatim("\u00A0\u00A0");
            }
            line.verbatim(Wording.BOX + "\u00A0").whole(things.get(i)).verbatim(" ");
        }
    }

    /** The number of a step in its black box. */
    static void number(Fo into, String label, String size) {
        into.add("inline", "background-color", INK, "color", "#ffffff", "font-weight", "bold", "font-size", size, "padding-top", "0.4mm")
                .verbatim("\u00A0" + label + "\u00A0");
    }

    /** An arrow to a step, with its page where that is another one. */
    static void arrow(Fo into, PlacedStep to) {
        Fo link = into.add("basic-link", "internal-destination", to.anchor(), "font-weight", "bold", "font-size", "11pt", "color", INK)
                .spoken("Go to step " + to.label());
        link.verbatim(Wording.ARROW + "\u00A0" + to.label());
        page(into, to.anchor());
    }

    /** The page of a place; it is left out where it is the page that says so. */
    static void page(Fo into, String anchor) {
        Fo page = into.add("inline", "color", PrintDocument.ELSEWHERE, "font-size", "9pt");
        page.verbatim("\u00A0p.\u00A0");
        page.add("page-number-citation", "ref-id", anchor);
    }

    /** A notice is not about injury and so has no alert symbol (ANSI Z535.6); it is light where the gravest word is dark, for a grey print. */
    static void signal(Fo into, SignalWord word) {
        String colour = switch (word) {
            case DANGER -> "#b3121d";
            case WARNING -> "#f28c00";
            case CAUTION -> "#ffd500";
            case NOTICE -> "#ffffff";
        };
        String letters = word == SignalWord.DANGER ? "#ffffff" : word == SignalWord.NOTICE ? "#0b4f9c" : "#000000";
        into.add("inline", "background-color", colour, "color", letters, "font-weight", "bold",
                "border", word == SignalWord.NOTICE ? "1.2pt solid #0b4f9c" : "0.5pt solid #000000", "padding-top", "0.3mm").verbatim("\u00A0" + (word == SignalWord.NOTICE ? "" : Wording.ALERT + "\u00A0")
                        + word.name() + "\u00A0");
        into.verbatim(" ");
    }
}

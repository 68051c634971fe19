/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Note;

/** A note that does not say what can happen, what comes of it and how to avoid it (ANSI Z535.6). */
public final class IncompleteNote implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("incomplete-note", Severity.WARNING, Group.SAFETY,
            "A safety note does not name the hazard, its consequence or how to avoid it.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (Note note : subject.document().own().notes()) {
            List<String> missing = missing(note);
            if (!missing.isEmpty()) {
                findings.report(note.name().at(), "The note " + note.name() + " does not say "
                        + String.join(" or ", missing) + ".",
                        "Write all three in short sentences: hazard, consequence and avoid.");
            }
        }
    }

    private static List<String> missing(Note note) {
        List<String> missing = new ArrayList<>();
        if (saysNothing(note.hazard())) {
            missing.add("what can happen");
        }
        if (saysNothing(note.consequence())) {
            missing.add("what comes of it");
        }
        if (saysNothing(note.avoid())) {
            missing.add("how to avoid it");
        }
        return missing;
    }

    /** Blanks, dots, a question mark: a note that was meant to be written later. */
    private static boolean saysNothing(String words) {
        return words.codePoints().noneMatch(Character::isLetter);
    }
}

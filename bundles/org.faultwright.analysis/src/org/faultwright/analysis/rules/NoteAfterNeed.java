/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;

/** A note that is read, but not on every path before a step that needs it. */
public final class NoteAfterNeed implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("note-after-need", Severity.ERROR, Group.SAFETY,
            "A note is not read on every path before a step that needs it.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        NoteReading.of(subject).ifPresent(reading -> reading.untold().forEach((hazard, untold) -> {
            if (reading.isReadAnywhere(hazard)) {
                untold.forEach(one -> findings.report(one.need().advised() ? Severity.ADVICE : Severity.ERROR,
                        PlaceText.at(one.place()),
                        "A path comes to " + PlaceText.subject(one.place()).replaceAll(",$", "")
                                + (one.need().atStep() ? ", which itself reads no note that covers " + hazard.word()
                                        : " without a note that covers " + hazard.word() + inForce(one)) + ": " + one.need().reason() + ".",
                        one.need().atStep() ? "Read the note at this step: what was read long before does not tell of this moment."
                                : "Read the note at this step, or at one that every path passes before.", one.path(), reading.fixes(one)));
            }
        }));
    }

    /** A note counts as long as its reason. */
    private static String inForce(NoteReading.Untold one) {
        return one.lapsed().map(place -> " in force (read at " + place.label() + ", before that began anew)").orElse("");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Hazard;

/** A hazard that steps have and no step reads a note about. */
public final class NoteNeverRead implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("note-never-read", Severity.ERROR, Group.SAFETY,
            "A step has a hazard that no step reads a note about.");

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
            if (!reading.isReadAnywhere(hazard)) {
                report(reading, hazard, untold, findings);
            }
        }));
    }

    private static void report(NoteReading reading, Hazard hazard, List<NoteReading.Untold> untold, Findings findings) {
        NoteReading.Untold first = untold.stream().min((a, b) -> a.need().advised() != b.need().advised()
                ? Boolean.compare(a.need().advised(), b.need().advised())
                : Integer.compare(a.path().size(), b.path().size())).orElseThrow();
        findings.report(first.need().advised() ? Severity.ADVICE : Severity.ERROR, PlaceText.at(first.place()),
                PlaceText.subject(first.place()) + " needs a note that covers " + hazard.word() + ": "
                        + first.need().reason() + others(untold.size() - 1) + ".",
                reading.notes(hazard).isEmpty()
                        ? "Declare a note that covers " + hazard.word() + " and read it " + (first.need().atStep() ? "at" : "before") + " this step, by \"notes\"."
                        : "Read it " + (first.need().atStep() ? "at" : "before") + " this step, by \"notes\".",
                first.path(), reading.fixes(first));
    }

    private static String others(int count) {
        return count == 0 ? "" : count == 1 ? "; another step needs one as well" : "; " + count + " more steps need one as well";
    }
}

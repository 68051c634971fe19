/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;

/** Lines to sign on paper. What is signed is named by its digest, so that a signature stays with one text. */
final class SignOff {
    static final String DRAFT = "draft: not to be released";
    private static final String CHOICE = Wording.BOX + " accepted " + Wording.BOX + " sent back";

    private SignOff() {
    }

    /** Of all procedures together: for those that are ticked above. */
    static void whole(Tag main, QualityReport report) {
        Tag section = main.add("section", "together");
        section.say("p", "small", "One signature here stands for each procedure ticked \u201Caccepted\u201D in its line, and for no other."
                + " It says that somebody has looked; it does not say that the work is free of danger. It belongs to the SHA-256 at the foot of this page, reckoned over the texts,"
                + " the libraries and what they were compared with.");
        boolean releasable = report.lines().stream().anyMatch(line -> isReleasable(line.publication()));
        Tag rows = ReportTables.table(section, "signoff", List.of("What", "Name", "Date", "Signature"));
        ReportTables.row(rows, "Completeness and units checked (QA)", "", "", "");
        ReportTables.row(rows, releasable ? "Released: those ticked above, never a draft" : "Released: none, all are drafts", "", "", "");
    }

    /** What is decided of one procedure in its line; a draft has no place to tick. */
    static String decision(Publication publication) {
        return publication.status() == Revision.Status.DRAFT ? DRAFT : publication.hasErrors() ? "has open errors: cannot be released" : CHOICE;
    }

    private static boolean isReleasable(Publication publication) {
        return publication.status() != Revision.Status.DRAFT && !publication.hasErrors();
    }

    /** Of one procedure. */
    static void one(Tag section, Publication publication) {
        Tag own = section.add("section", "together");
        own.say("h3", "", "Sign-off of this procedure");
        own.say("p", "small", "What is signed is the text with SHA-256 " + publication.digest() + " and its libraries.");
        List<List<String>> lines = new ArrayList<>(List.of(
                List.of("Completeness and units checked (QA)", CHOICE),
                List.of("Tried at the bench, on unit no.", CHOICE)));
        lines.add(isReleasable(publication) ? List.of("Released", CHOICE) : List.of("Not to be released", decision(publication)));
        Tag rows = ReportTables.table(own, "signoff one", List.of("What", "Decision", "Name", "Date", "Signature"));
        lines.forEach(line -> ReportTables.row(rows, line.get(0), line.get(1), "", "", ""));
        ReportTables.table(own, "remarks", List.of("Remarks, and what must be mended")).add("tr").add("td").text("");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import org.faultwright.publish.page.Tag;

/** Lines to sign on paper. What is signed is named by its digest, so that a signature stays with one text. */
final class SignOff {
    private SignOff() {
    }

    /** Of all procedures together. */
    static void whole(Tag main, String digest, long drafts) {
        Tag section = main.add("section", "together");
        section.say("h2", "", "Sign-off");
        section.say("p", "small", "For the texts whose digests stand in this report, together " + digest.substring(0, 12)
                + ". A signature says that somebody has looked; it does not say that the work is free of danger.");
        lines(section, List.of("Completeness and units checked (QA)", "Tried at the bench",
                drafts == 0 ? "Released" : "Released, but for " + Rows.count((int) drafts, "draft", "drafts")));
    }

    /** Of one procedure. */
    static void one(Tag section, String digest) {
        Tag own = section.add("section", "together");
        own.say("h3", "", "Sign-off of this procedure");
        lines(own, List.of("Accepted, or sent back with remarks (digest " + digest + ")"));
    }

    private static void lines(Tag section, List<String> what) {
        Tag rows = Rows.table(section, "signoff", List.of("What", "Name", "Date", "Signature"));
        what.forEach(line -> Rows.row(rows, line, "", "", ""));
    }
}

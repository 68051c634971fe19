/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.SourceRange;

/** A reviewed or released text that does not say who did it, when, and to which text. */
public final class ReleaseIncomplete implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("release-incomplete", Severity.WARNING, Group.RECORD,
            "A reviewed or released procedure does not say by whom, when, or which text it was.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().ifPresent(procedure -> procedure.revision()
                .filter(revision -> revision.status() != Revision.Status.DRAFT)
                .ifPresent(revision -> check(procedure, revision, findings)));
    }

    private static void check(Document document, Revision revision, Findings findings) {
        String status = revision.status() == Revision.Status.RELEASED ? "released" : "reviewed";
        List<String> missing = new ArrayList<>();
        if (revision.by().filter(by -> !by.isBlank()).isEmpty()) {
            missing.add("by whom");
        }
        if (revision.dated().isEmpty()) {
            missing.add("when");
        }
        if (!missing.isEmpty()) {
            findings.report(revision.at(), "Revision " + revision.number() + " is " + status + ", and does not say "
                    + String.join(" or ", missing) + ".",
                    "Add the name after \"by\" and the day after \"dated\", as in 2026-01-31.");
        }
        if (revision.status() == Revision.Status.RELEASED && revision.digest().isEmpty()) {
            SourceRange behind = new SourceRange(revision.at().source(), revision.at().end(), 0);
            findings.report(revision.at(), "Revision " + revision.number() + " is released without the digest of its text.",
                    "Add the digest, so that a later change shows.",
                    Fix.replacing("Add the digest of the text as it stands", behind,
                            " digest \"" + ContentDigest.of(document) + "\""));
        }
    }
}

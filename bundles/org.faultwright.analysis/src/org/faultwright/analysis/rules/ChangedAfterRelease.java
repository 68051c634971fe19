/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

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

/** The text, or that of a library, is no longer the one that was released. */
public final class ChangedAfterRelease implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("changed-after-release", Severity.ERROR, Group.RECORD,
            "The digest of a revision is not that of the text and its libraries.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().ifPresent(procedure -> procedure.revision().filter(revision -> changed(revision, procedure))
                .ifPresent(revision -> report(revision, findings)));
    }

    private static boolean changed(Revision revision, Document document) {
        return revision.digest().map(digest -> !digest.equalsIgnoreCase(ContentDigest.of(document))).orElse(false);
    }

    private static void report(Revision revision, Findings findings) {
        String next = "revision " + (revision.number() + 1) + " draft";
        findings.report(revision.at(), "The text or one of its libraries was changed after revision "
                + revision.number() + " got its digest.",
                "Go on as a draft of the next revision, or bring back the text that was released.",
                Fix.replacing("Make it " + next, revision.at(), next));
    }
}

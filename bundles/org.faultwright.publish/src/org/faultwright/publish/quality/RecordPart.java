/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Locale;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.Publication;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;

/** Who reviewed or released which text: a signature stays with one digest. */
final class RecordPart {
    private RecordPart() {
    }

    static void add(Tag main, QualityReport report) {
        main.say("h2", "", "Who stands for which text");
        Tag rows = Rows.table(main, "record", List.of("Procedure", "Revision", "By", "Dated", "Digest"));
        for (Line line : report.lines()) {
            Publication publication = line.publication();
            Revision revision = publication.procedure().revision().orElse(null);
            Rows.row(rows, publication.title(),
                    revision == null ? "none, draft" : revision.number() + ", " + revision.status().name().toLowerCase(Locale.ROOT),
                    revision == null ? "nobody" : revision.by().orElse("nobody"),
                    revision == null ? "" : revision.dated().map(Object::toString).orElse("no date"), publication.shortDigest());
        }
        main.say("p", "small", "Each digest covers the libraries of its procedure: their notes and routines are signed with it.");
    }
}

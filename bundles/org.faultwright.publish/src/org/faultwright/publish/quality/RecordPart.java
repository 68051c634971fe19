/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.analysis.Phrases;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.Publication;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;

/** Who reviewed or released which text, and what a signature stands for: it stays with one digest. */
final class RecordPart {
    private static final int SHORT_DIGEST = 12;

    private RecordPart() {
    }

    static void add(Tag main, QualityReport report) {
        main.say("h2", "", "What is signed");
        Tag rows = ReportTables.table(main, "record", List.of("What", "Revision, by, dated", "Digest", "Decision"));
        for (Line line : report.lines()) {
            Publication publication = line.publication();
            Revision revision = publication.procedure().revision().orElse(null);
            ReportTables.row(rows, publication.title(), revision == null ? "no revision, draft" : revision.number() + ", " + revision.status().name().toLowerCase(Locale.ROOT)
                    + ", " + revision.by().orElse("nobody") + ", " + revision.dated().map(Object::toString).orElse("no date"), publication.shortDigest(),
                    SignOff.decision(publication));
        }
        libraries(rows, report);
        main.say("p", "small", "The digest of a procedure is reckoned over its libraries too and changes with them; a library has no revision, author or date of its own, so whoever"
                + " signs a procedure signs its libraries with it (whole digests: appendix). Who wrote a text, beside who reviewed or released it, cannot be seen here.");
    }

    /** What procedures share, such as how a charge is proved gone: a digest stands for it. */
    private static void libraries(Tag rows, QualityReport report) {
        Map<String, Library> libraries = new LinkedHashMap<>();
        Map<String, Integer> users = new LinkedHashMap<>();
        report.lines().forEach(line -> line.publication().procedure().libraries().forEach(library -> {
            libraries.putIfAbsent(library.name().text(), library);
            users.merge(library.name().text(), 1, Integer::sum);
        }));
        libraries.forEach((name, library) -> ReportTables.row(rows, called(library), "no revision",
                ContentDigest.of(library).substring(0, SHORT_DIGEST), "with " + (users.get(name) == report.lines().size() && report.lines().size() > 1
                        ? "all procedures" : Phrases.counted(users.get(name), "procedure", "procedures"))));
    }

    private static String called(Library library) {
        return "Library: " + PlainText.line(library.title().isBlank() ? library.name().text() : library.title());
    }

    /** What the libraries are called in their lines, each once. */
    static Stream<String> libraries(QualityReport report) {
        Map<String, String> called = new LinkedHashMap<>();
        report.lines().forEach(line -> line.publication().procedure().libraries().forEach(library -> called.putIfAbsent(library.name().text(), called(library))));
        return called.values().stream();
    }

    /** Such as {@code by T. Aldous, 2026-02-09}, with what stands before it. */
    static String byAndDated(Publication publication) {
        return publication.procedure().revision().map(revision -> revision.by().map(by -> " by " + by).orElse("")
                + revision.dated().map(day -> ", " + day).orElse("")).orElse("");
    }
}

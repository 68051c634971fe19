/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Caution;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.page.ColumnLabels;
import org.faultwright.publish.page.HtmlText;
import org.faultwright.publish.page.Medium;
import org.faultwright.publish.page.Page;
import org.faultwright.publish.page.StyleSheet;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.since.ReleaseComparison;
import org.faultwright.publish.since.SinceRelease;

/** Two revisions side by side, for a browser. */
public final class ComparisonPage {
    public static final String FILE = "comparison.html";

    private ComparisonPage() {
    }

    /**
     * @param heading such as {@code release-4 and today}
     * @param made    by what and when
     */
    public static PublishedFiles of(ReleaseComparison comparison, String heading, String made) {
        Page page = new Page(Medium.SCREEN, "Comparison: " + heading, "What two revisions of procedures say differently");
        Tag main = page.body().add("main", "quality");
        main.say("p", "what", "Comparison");
        main.say("h1", "", heading);
        main.say("p", "small", made);
        names(main, "Gone", comparison.gone());
        names(main, "New, so not compared", comparison.fresh());
        comparison.told().forEach((of, told) -> {
            main.say("h2", "", of);
            ChangesPart.table(main, told);
        });
        main.say("h2", "", "What was compared");
        Tag rows = ReportTables.table(main, "record", List.of("What procedure", "Earlier", "Now", "Result"));
        comparison.compared().forEach(since -> ReportTables.row(rows, ReleaseComparison.title(since.now()) + since.renamedFrom().map(name -> " (renamed, was " + name + ")").orElse(""),
                SinceRelease.record(since.earlier()), SinceRelease.record(since.now()), since.inShort()));
        main.add("p", "caution small").text(Caution.SENTENCES);
        ColumnLabels.add(page);
        return new PublishedFiles(FILE, "text/html", HtmlText.of(page, StyleSheet.of("page", "screen", "list", "quality")));
    }

    /** What was published, held against the last release; empty where none is known. */
    public static Optional<PublishedFiles> since(ProcedureFolder folder) {
        return folder.since().map(release -> {
            List<Procedure> now = Stream.concat(folder.procedures().stream().map(Publication::procedure), folder.leftOut().stream().map(ProcedureFolder.LeftOut::procedure)).toList();
            String earlier = release.place().isEmpty() ? "the last release" : release.place();
            return of(ReleaseComparison.of(release.procedures(), now), folder.title() + ": what changed since the last release", "Earlier: " + earlier + "."
                    + folder.made().map(made -> " Compared by " + made.program() + " on " + made.on() + ".").orElse(""));
        });
    }

    /** The file of it among those of a folder. */
    public static Optional<String> in(ProcedureFolder folder) {
        return folder.files().stream().filter(file -> file.equals(FILE) || file.endsWith("." + FILE)).sorted().findFirst();
    }

    private static void names(Tag main, String title, List<String> names) {
        if (!names.isEmpty()) {
            main.say("h2", "", title);
            Tag list = main.add("ul");
            names.forEach(name -> list.say("li", "", name));
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.SinceRelease;

/** What changed since the last release: how many in front, was and is now behind. */
public final class ChangesPart {
    private ChangesPart() {
    }

    /** What came and went; what differs stands among the things to look at. */
    static void front(Tag main, QualityReport report) {
        List<String> fresh = report.lines().stream().filter(line -> line.since().isEmpty()).map(line -> line.publication().title()).toList();
        List<Line> known = report.lines().stream().filter(line -> line.since().isPresent()).toList();
        long same = known.stream().filter(line -> line.since().get().differences().isEmpty()).count();
        int differences = known.stream().mapToInt(line -> line.since().get().differences().size()).sum();
        Tag line = main.add("p", "").say("b", "", "Since the last release:").space().text(Rows.count(differences, "difference", "differences")
                + " in " + (known.size() - same) + " of " + Rows.count(known.size(), "procedure", "procedures") + ", each with its procedure.");
        item(line, "New", fresh);
        item(line, "Gone", report.gone());
    }

    private static void item(Tag line, String what, List<String> names) {
        if (!names.isEmpty()) {
            line.space().text(what + ": " + Rows.listed(names) + ".");
        }
    }

    private static String sentence(SinceRelease since) {
        return since.inShort() + (since.hidesAChange() ? " The revision still has the same number." : "");
    }

    static void detail(Tag section, Line line) {
        line.since().ifPresent(since -> {
            section.say("h3", "", "Since the last release");
            section.say("p", "", "Compared with " + SinceRelease.record(since.earlier()) + ". " + sentence(since));
            table(section, since);
        });
    }

    /** Was and is now, in whole: two that read the same are the same. */
    public static void table(Tag section, SinceRelease since) {
        if (since.differences().isEmpty()) {
            return;
        }
        Tag rows = Rows.table(section, "changes", List.of("What", "Was", "Is now"));
        Difference.Kind kind = null;
        for (Difference difference : since.differences()) {
            if (difference.kind() != kind) {
                rows.add("tr", "area").add("th").set("scope", "rowgroup").set("colspan", "3").text(difference.kind().title());
            }
            kind = difference.kind();
            Rows.row(rows, difference.what(), difference.was(),
                    difference.now() + (difference.meaning().isEmpty() ? "" : " (" + difference.meaning() + ")"));
        }
    }
}

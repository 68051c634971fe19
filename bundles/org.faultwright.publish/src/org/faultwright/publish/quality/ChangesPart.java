/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.since.ToldDifference;

/** What changed since the last release: how many in front, was and is now behind. */
final class ChangesPart {
    private ChangesPart() {
    }

    /** With what was compared, and which procedures differ; how, stands among the things to look at. */
    static void front(Tag main, QualityReport report) {
        List<Line> known = report.lines().stream().filter(line -> line.since().isPresent()).toList();
        List<String> changed = known.stream().filter(line -> !line.since().get().differences().isEmpty()).map(line -> line.publication().title() + " "
                + line.since().get().differences().size()).toList();
        String place = report.since().map(EarlierRelease::place).filter(name -> !name.isEmpty()).map(name -> " in " + name).orElse("");
        main.add("p", "small").say("b", "", "Compared with the release" + place + ":").space().text(known.isEmpty() ? "nothing, since none of the texts was in it."
                : known.size() + " of " + ReportTables.count(report.lines().size(), "procedure", "procedures") + " were in it; "
                        + (changed.isEmpty() ? "none differs." : "differences: " + String.join(", ", changed) + (changed.size() < known.size() ? "; the others do not differ." : ".")));
    }

    private static String sentence(SinceRelease since) {
        return since.inShort() + (since.hidesAChange() ? " The revision still has the same number." : "");
    }

    static void detail(Tag section, Line line) {
        line.since().ifPresent(since -> {
            section.say("h3", "", "Since the last release");
            section.say("p", "", "Compared with " + since.renamedFrom().map(name -> "\u201C" + name + "\u201D, as it was called, ").orElse("") + SinceRelease.record(since.earlier()) + ". " + sentence(since));
            table(section, line.told());
        });
    }

    /** Was and is now, in whole: two that read the same are the same. */
    static void table(Tag section, List<ToldDifference> told) {
        if (told.isEmpty()) {
            return;
        }
        Tag rows = ReportTables.table(section, "changes", List.of("What", "Was", "Is now"));
        Difference.Kind kind = null;
        for (ToldDifference one : told) {
            if (one.kind() != kind) {
                rows.add("tr", "area").add("th").set("scope", "rowgroup").set("colspan", "3").text(one.kind().title());
            }
            kind = one.kind();
            ReportTables.row(rows, (one.weight().isEmpty() ? "" : one.weight() + ": ") + one.what(), one.was().isEmpty() ? "nothing" : one.was(),
                    (one.now().isEmpty() ? "gone" : one.now()) + (one.meaning().isEmpty() ? "" : " (" + one.meaning() + ")"));
        }
    }
}

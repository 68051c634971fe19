/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.stream.Collectors;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.since.ToldDifference;

/** What changed since the last release: how many in front, was and is now behind. */
final class ChangesPart {
    private static final int MOST_NAMED = 3;

    private ChangesPart() {
    }

    /** With what was compared, and which procedures differ; how, stands among the things to look at. */
    static void front(Tag main, QualityReport report) {
        main.add("p", "small").say("b", "", "Compared with the release" + place(report) + ":").space().text(said(report));
    }

    private static String place(QualityReport report) {
        return report.since().map(EarlierRelease::place).filter(name -> !name.isEmpty()).map(name -> " in " + name).orElse("");
    }

    /** The procedures by their titles where those are the fewer, so that a line or two is enough. */
    static String said(QualityReport report) {
        List<Line> known = report.lines().stream().filter(line -> line.since().isPresent()).toList();
        if (known.isEmpty()) {
            return "nothing, since none of the texts was in it.";
        }
        List<Line> changed = known.stream().filter(line -> !line.since().get().differences().isEmpty()).toList();
        List<Line> same = known.stream().filter(line -> line.since().get().differences().isEmpty()).toList();
        int differences = changed.stream().mapToInt(line -> line.since().get().differences().size()).sum();
        return known.size() + " of " + Phrases.counted(report.lines().size(), "procedure", "procedures") + (known.size() == 1 ? " was in it; " : " were in it; ")
                + (changed.isEmpty() ? "none differs." : Phrases.counted(differences, "difference", "differences") + (same.isEmpty() && changed.size() > MOST_NAMED ? ", some in each."
                        : changed.size() <= Math.max(MOST_NAMED, same.size()) ? ", in " + titles(changed, changed.size() > 1) + (same.isEmpty() ? "." : "; the others do not differ.")
                        : ", some in each but " + titles(same, false) + "."));
    }

    private static String titles(List<Line> lines, boolean counted) {
        return lines.stream().map(line -> "\u201C" + line.publication().title() + "\u201D" + (counted ? " " + line.since().get().differences().size() : ""))
                .collect(Collectors.joining(", "));
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

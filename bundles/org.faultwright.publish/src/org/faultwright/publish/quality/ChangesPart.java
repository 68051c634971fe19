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

/** What changed since the last release: one line a procedure in front, was and is now behind. */
public final class ChangesPart {
    private ChangesPart() {
    }

    static void front(Tag main, QualityReport report) {
        main.say("h2", "", "Since the last release");
        if (report.since().isEmpty()) {
            main.say("p", "", "Not compared: no earlier release was named.");
            return;
        }
        List<String> fresh = report.lines().stream().filter(line -> line.since().isEmpty()).map(line -> line.publication().title()).toList();
        List<String> same = report.lines().stream().filter(line -> line.since().filter(since -> since.differences().isEmpty()).isPresent())
                .map(line -> line.publication().title()).toList();
        Tag list = main.add("ul", "attention");
        report.lines().stream().filter(line -> line.since().filter(since -> !since.differences().isEmpty()).isPresent()).forEach(line ->
                list.add("li").say("b", "", line.publication().title() + ":").space().text(sentence(line.since().get())));
        item(list, "New", fresh);
        item(list, "Gone", report.gone());
        item(list, "Says the same", same);
    }

    private static void item(Tag list, String what, List<String> names) {
        if (!names.isEmpty()) {
            list.add("li").say("b", "", what + ":").space().text(Rows.listed(names) + ".");
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

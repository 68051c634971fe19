/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.quality.QualityReport.Line;
import org.faultwright.publish.since.Change;
import org.faultwright.publish.since.SinceRelease;

/** What changed since the last release: one sentence a procedure in front, was and is now behind. */
final class ChangesPart {
    private static final int MOST = 200;
    private static final int MOST_IN_FRONT = 12;
    private static final int MOST_NAMED = 3;
    /** Was and is now together, in characters, to stand in one line in front. */
    private static final int LONGEST = 60;

    private ChangesPart() {
    }

    static void front(Tag main, QualityReport report) {
        main.say("h2", "", "Since the last release");
        if (report.since().isEmpty()) {
            main.say("p", "", "Not compared: no earlier trees were named.");
            return;
        }
        Map<String, List<String>> lines = lines(report);
        Tag list = main.add("ul", "attention");
        lines.entrySet().stream().limit(MOST_IN_FRONT).forEach(line -> list.add("li")
                .say("b", "", Rows.listed(line.getValue()) + ":").space().text(line.getKey()));
        long unchanged = report.lines().stream().filter(line -> line.since().filter(since -> since.changes().isEmpty())
                .isPresent()).count();
        String rest = lines.size() > MOST_IN_FRONT ? "Other changes stand with the procedures. " : "";
        main.say("p", "small", rest + (unchanged == 0 ? "No procedure is" : Rows.count((int) unchanged, "procedure is",
                "procedures are")) + " as in the earlier release.");
    }

    /** What is said, and of which procedures: a change of a library is the same for all that use it. */
    private static Map<String, List<String>> lines(QualityReport report) {
        Map<String, List<String>> lines = new LinkedHashMap<>();
        for (Line line : report.lines()) {
            String title = line.publication().title();
            if (line.since().isEmpty()) {
                add(lines, "New: the earlier release has no tree of it.", title);
            } else if (!line.since().get().changes().isEmpty()) {
                add(lines, sentence(line.since().get()) + " " + first(line.since().get()), title);
            }
        }
        report.gone().forEach(name -> add(lines, "In the earlier release, and not in this report.", name));
        return lines;
    }

    private static void add(Map<String, List<String>> lines, String words, String title) {
        lines.computeIfAbsent(words, key -> new ArrayList<>()).add(title);
    }

    private static String first(SinceRelease since) {
        List<Change> changes = since.changes();
        return changes.stream().limit(MOST_NAMED).map(change -> change.what() + " ("
                + (change.was().length() + change.now().length() > LONGEST ? "other words"
                        : change.was() + " \u2192 " + change.now()) + ")").collect(Collectors.joining(", "))
                + (changes.size() > MOST_NAMED ? " and " + (changes.size() - MOST_NAMED) + " more." : ".");
    }

    private static String sentence(SinceRelease since) {
        return since.inShort() + (since.hidesAChange() ? " The revision still has the same number." : "");
    }

    static void detail(Tag section, Line line) {
        line.since().ifPresent(since -> {
            section.say("h3", "", "Since the last release");
            section.say("p", "", "Held against " + since.earlier().words() + ". " + sentence(since));
            if (since.changes().isEmpty()) {
                return;
            }
            Tag rows = Rows.table(section, "changes", List.of("What", "Was", "Is now"));
            Change.Area area = null;
            for (Change change : since.changes().stream().limit(MOST).toList()) {
                if (change.area() != area) {
                    rows.add("tr", "area").add("th").set("scope", "rowgroup").set("colspan", "3").text(change.area().title());
                }
                area = change.area();
                Rows.row(rows, change.what(), change.was(), change.now());
            }
            if (since.changes().size() > MOST) {
                section.say("p", "small", (since.changes().size() - MOST) + " more changes stand in the JSON of this report.");
            }
        });
    }
}

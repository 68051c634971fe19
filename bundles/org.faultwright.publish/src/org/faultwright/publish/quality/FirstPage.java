/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** How much can be said in front so that the findings, what is signed and the signature stand on one side of A4. */
final class FirstPage {
    /** By printed pages: lines of small print and of the table of what is signed that fit beside title, figures and signature, and letters in one of them. */
    private static final int LINES = 34;
    private static final int LETTERS = 116;
    /** Letters in a line of what is signed: of its name, and of what is decided. */
    private static final int LETTERS_OF_A_NAME = 54;
    private static final int LETTERS_OF_A_DECISION = 26;
    private static final int MOST_POINTS = 4;
    /** What says before the signature how many dangers follow behind it. */
    private static final int FOLLOWING = 2;

    private FirstPage() {
    }

    /** How many points of each group are said in front; of dangers every one, unless they alone fill the side: then as many as there is room for, the worst first. */
    static List<Integer> said(QualityReport report, List<LookFirst.Group> groups) {
        int most = MOST_POINTS;
        while (most > 0 && lines(report, groups, all(groups, most)) > LINES) {
            most--;
        }
        List<Integer> said = all(groups, most);
        return lines(report, groups, said) > LINES ? cut(report, groups) : most == 0 ? withTheWorst(report, groups, said) : said;
    }

    /** One point of each group that would only be counted, from the gravest on, as far as there is room. */
    private static List<Integer> withTheWorst(QualityReport report, List<LookFirst.Group> groups, List<Integer> counted) {
        List<Integer> said = new ArrayList<>(counted);
        for (int i = 0; i < groups.size(); i++) {
            if (said.get(i) == 0 && !groups.get(i).points().isEmpty()) {
                said.set(i, 1);
                if (lines(report, groups, said) > LINES) {
                    said.set(i, 0);
                }
            }
        }
        return said;
    }

    private static List<Integer> all(List<LookFirst.Group> groups, int most) {
        return groups.stream().map(group -> group.said(most)).toList();
    }

    private static List<Integer> cut(QualityReport report, List<LookFirst.Group> groups) {
        List<Integer> said = new ArrayList<>(Collections.nCopies(groups.size(), 0));
        // of each group the worst, before one of them takes all the room
        for (int i = 0; i < groups.size(); i++) {
            said.set(i, groups.get(i).said(0) > 0 ? 1 : 0);
            if (lines(report, groups, said) > LINES) {
                said.set(i, 0);
            }
        }
        for (int i = 0; i < groups.size(); i++) {
            for (int wanted = groups.get(i).said(0); said.get(i) < wanted; ) {
                said.set(i, said.get(i) + 1);
                if (lines(report, groups, said) > LINES) {
                    said.set(i, said.get(i) - 1);
                    return said;
                }
            }
        }
        return said;
    }

    private static int lines(QualityReport report, List<LookFirst.Group> groups, List<Integer> all) {
        int lines = report.lines().stream().mapToInt(line -> Math.max(rows(line.publication().title(), LETTERS_OF_A_NAME),
                rows(SignOff.decision(line.publication()), LETTERS_OF_A_DECISION))).sum() + RecordPart.libraries(report).mapToInt(name -> rows(name, LETTERS_OF_A_NAME)).sum() + report.since().map(release -> 1 + ChangesPart.said(report).length() / LETTERS).orElse(0);
        boolean follow = false;
        for (int i = 0; i < groups.size(); i++) {
            List<String> points = groups.get(i).points();
            int said = all.get(i);
            follow |= groups.get(i).isGrave() && said < points.size();
            lines += (points.isEmpty() ? 0 : 1) + points.stream().limit(said).mapToInt(point -> 1 + point.length() / LETTERS).sum() + (said > 0 && said < points.size() ? 1 : 0);
        }
        return lines + (follow ? FOLLOWING : 0) + 1 + groups.stream().filter(group -> group.points().isEmpty()).mapToInt(group -> group.clean().length() + 2).sum() / LETTERS;
    }

    private static int rows(String words, int letters) {
        return 1 + words.length() / letters;
    }
}

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
    /** By printed pages: lines of small print that fit beside title, figures and signature, and letters in one of them. */
    private static final int LINES = 32;
    private static final int LETTERS = 122;
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
            if (lines(report, groups, said) > LINES - FOLLOWING) {
                said.set(i, 0);
            }
        }
        for (int i = 0; i < groups.size(); i++) {
            for (int wanted = groups.get(i).said(0); said.get(i) < wanted; ) {
                said.set(i, said.get(i) + 1);
                if (lines(report, groups, said) > LINES - FOLLOWING) {
                    said.set(i, said.get(i) - 1);
                    return said;
                }
            }
        }
        return said;
    }

    private static int lines(QualityReport report, List<LookFirst.Group> groups, List<Integer> all) {
        long libraries = report.lines().stream().flatMap(line -> line.publication().procedure().libraries().stream()).map(library -> library.name().text()).distinct().count();
        int lines = report.lines().size() + (int) libraries + report.since().map(release -> 1 + ChangesPart.said(report).length() / LETTERS).orElse(0);
        for (int i = 0; i < groups.size(); i++) {
            List<String> points = groups.get(i).points();
            int said = all.get(i);
            lines += (points.isEmpty() ? 0 : 1) + points.stream().limit(said).mapToInt(point -> 1 + point.length() / LETTERS).sum() + (said > 0 && said < points.size() ? 1 : 0);
        }
        return lines + 1 + groups.stream().filter(group -> group.points().isEmpty()).mapToInt(group -> group.clean().length() + 2).sum() / LETTERS;
    }
}

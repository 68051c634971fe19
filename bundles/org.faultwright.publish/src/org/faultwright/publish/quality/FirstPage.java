/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;

/** How much can be said in front so that the findings, what is signed and the signature stand on one side of A4. */
final class FirstPage {
    /** By printed pages: lines of small print that fit beside title, figures and signature, and letters in one of them. */
    private static final int LINES = 35;
    private static final int LETTERS = 122;
    private static final int MOST_POINTS = 4;

    private FirstPage() {
    }

    /** How many points of a group may be said; dangers are said whole, however many pages that takes. */
    static int most(QualityReport report, List<LookFirst.Group> groups) {
        int most = MOST_POINTS;
        while (most > 0 && lines(report, groups, most) > LINES) {
            most--;
        }
        // where dangers alone take more than a side, nothing is gained by saying less of the rest
        return lines(report, groups, most) > LINES ? MOST_POINTS : most;
    }

    private static int lines(QualityReport report, List<LookFirst.Group> groups, int most) {
        long libraries = report.lines().stream().flatMap(line -> line.publication().procedure().libraries().stream()).map(library -> library.name().text()).distinct().count();
        long changed = report.lines().stream().filter(line -> line.since().filter(since -> !since.differences().isEmpty()).isPresent()).count();
        int lines = report.lines().size() + (int) libraries + (report.since().isPresent() ? 1 + (int) changed / 2 : 0);
        for (LookFirst.Group group : groups) {
            List<String> points = group.points();
            int said = group.said(most);
            lines += (points.isEmpty() ? 0 : 1) + points.stream().limit(said).mapToInt(point -> 1 + point.length() / LETTERS).sum() + (said > 0 && said < points.size() ? 1 : 0);
        }
        return lines + 1 + groups.stream().filter(group -> group.points().isEmpty()).mapToInt(group -> group.clean().length() + 2).sum() / LETTERS;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.compare.rangedifferencer.IRangeComparator;
import org.eclipse.compare.rangedifferencer.RangeDifference;
import org.eclipse.compare.rangedifferencer.RangeDifferencer;

/** The lines that a change takes out and puts in, with a few around them. */
final class LinesOfChange {
    private static final int AROUND = 2;

    /** @param sign {@code -} goes, {@code +} comes, a blank stays, {@code …} stands for lines that stay and are not shown */
    record Line(char sign, String words) {
    }

    private LinesOfChange() {
    }

    static List<Line> between(String before, String after) {
        List<String> old = before.lines().toList();
        List<String> fresh = after.lines().toList();
        List<Line> lines = new ArrayList<>();
        int shown = 0;
        for (RangeDifference one : RangeDifferencer.findDifferences(new Lines(old), new Lines(fresh))) {
            int from = Math.max(shown, one.leftStart() - AROUND);
            if (from > shown || lines.isEmpty() && from > 0) {
                stay(lines, old, shown, lines.isEmpty() ? shown : Math.min(from, shown + AROUND));
                int gap = lines.isEmpty() ? shown : Math.min(from, shown + AROUND);
                if (gap < from) {
                    lines.add(new Line('\u2026', "line " + (from + 1)));
                }
            }
            stay(lines, old, from, one.leftStart());
            old.subList(one.leftStart(), one.leftEnd()).forEach(line -> lines.add(new Line('-', line)));
            fresh.subList(one.rightStart(), one.rightEnd()).forEach(line -> lines.add(new Line('+', line)));
            shown = one.leftEnd();
        }
        stay(lines, old, shown, Math.min(old.size(), lines.isEmpty() ? shown : shown + AROUND));
        return List.copyOf(lines);
    }

    private static void stay(List<Line> lines, List<String> old, int from, int to) {
        old.subList(from, Math.max(from, to)).forEach(line -> lines.add(new Line(' ', line)));
    }

    private record Lines(List<String> all) implements IRangeComparator {
        @Override
        public int getRangeCount() {
            return all.size();
        }

        @Override
        public boolean rangesEqual(int at, IRangeComparator other, int otherAt) {
            return all.get(at).equals(((Lines) other).all().get(otherAt));
        }

        @Override
        public boolean skipRangeComparison(int length, int most, IRangeComparator other) {
            return false;
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.eclipse.compare.rangedifferencer.IRangeComparator;
import org.eclipse.compare.rangedifferencer.RangeDifference;
import org.eclipse.compare.rangedifferencer.RangeDifferencer;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/**
 * A stretch of lines that becomes other lines; only it is touched, so that whatever points into the rest of the text stays.
 *
 * @param line the first of them, counted from 1 in the text before
 * @param was  the lines before, each with its end; empty where lines are added
 * @param now  the lines after; empty where lines are taken out
 * @param edit the change of the text
 */
public record ChangedLines(int line, List<String> was, List<String> now, Fix.Edit edit) {
    /** What turns a text into another, from its beginning to its end. */
    public static List<ChangedLines> between(SourceText before, String after) {
        Lines old = new Lines(lines(before.content()));
        Lines fresh = new Lines(lines(after));
        List<ChangedLines> changed = new ArrayList<>();
        for (RangeDifference difference : RangeDifferencer.findDifferences(old, fresh)) {
            List<String> was = old.all().subList(difference.leftStart(), difference.leftEnd());
            List<String> now = fresh.all().subList(difference.rightStart(), difference.rightEnd());
            int start = length(old.all().subList(0, difference.leftStart()));
            changed.add(new ChangedLines(difference.leftStart() + 1, was, now,
                    new Fix.Edit(new SourceRange(before, start, length(was)), String.join("", now))));
        }
        return changed;
    }

    private static List<String> lines(String text) {
        return text.isEmpty() ? List.of() : Arrays.asList(text.split("(?<=\n)"));
    }

    private static int length(List<String> lines) {
        return lines.stream().mapToInt(String::length).sum();
    }

    private record Lines(List<String> all) implements IRangeComparator {
        @Override
        public int getRangeCount() {
            return all.size();
        }

        @Override
        public boolean rangesEqual(int own, IRangeComparator other, int others) {
            return all.get(own).equals(((Lines) other).all.get(others));
        }

        @Override
        public boolean skipRangeComparison(int length, int most, IRangeComparator other) {
            return false;
        }
    }
}

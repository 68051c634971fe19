/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.editor.ChangedLines;

/** The lines that a change takes out and puts in, with a few around them. */
final class LinesOfChange {
    private static final int AROUND = 2;

    /** @param sign {@code -} goes, {@code +} comes, a blank stays, {@code …} stands for lines that stay and are not shown */
    record Line(char sign, String words) {
    }

    private LinesOfChange() {
    }

    static List<Line> between(SourceText before, String after) {
        List<String> old = before.content().lines().toList();
        List<Line> lines = new ArrayList<>();
        int shown = 0;
        for (ChangedLines one : ChangedLines.between(before, after)) {
            int start = one.line() - 1;
            int from = Math.max(shown, start - AROUND);
            if (from > shown || lines.isEmpty() && from > 0) {
                int gap = lines.isEmpty() ? shown : Math.min(from, shown + AROUND);
                stay(lines, old, shown, gap);
                if (gap < from) {
                    lines.add(new Line('\u2026', "line " + (from + 1)));
                }
            }
            stay(lines, old, from, start);
            one.was().forEach(line -> lines.add(new Line('-', line.replaceFirst("\\R$", ""))));
            one.now().forEach(line -> lines.add(new Line('+', line.replaceFirst("\\R$", ""))));
            shown = start + one.was().size();
        }
        stay(lines, old, shown, Math.min(old.size(), lines.isEmpty() ? shown : shown + AROUND));
        return List.copyOf(lines);
    }

    private static void stay(List<Line> lines, List<String> old, int from, int to) {
        old.subList(from, Math.max(from, to)).forEach(line -> lines.add(new Line(' ', line)));
    }
}

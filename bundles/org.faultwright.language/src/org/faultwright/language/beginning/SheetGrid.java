/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.List;

/**
 * The cells of a sheet as they stand in its file, before anybody has said which line holds the headings.
 *
 * @param name   of the sheet; empty for a file of separated values
 * @param lines  those with a word in them
 * @param unread what could not be read, each a sentence that says where
 */
public record SheetGrid(String name, List<Line> lines, List<String> unread) {
    /** @param number in the file, the first being 1 */
    public record Line(long number, List<String> cells) {
        public Line {
            cells = List.copyOf(cells);
        }
    }

    public SheetGrid {
        lines = List.copyOf(lines);
        unread = List.copyOf(unread);
    }
}

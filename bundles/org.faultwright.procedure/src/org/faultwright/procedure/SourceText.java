/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Arrays;

/** The text of one file, which every part of a procedure points back into. */
public final class SourceText {
    private final String name;
    private final String content;
    private int[] lineStarts;

    /**
     * @param name    what to call the file in a message: its path or address
     * @param content the whole text
     */
    public SourceText(String name, String content) {
        this.name = name;
        this.content = content;
    }

    public String name() {
        return name;
    }

    /** The last part of the name, behind every folder. */
    public String fileName() {
        return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    }

    public String content() {
        return content;
    }

    /** The line an offset lies in, counted from 1. */
    public int line(int offset) {
        int found = Arrays.binarySearch(starts(), offset);
        return found >= 0 ? found + 1 : -found - 1;
    }

    /** The place in its line, counted from 1 in UTF-16 units. */
    public int column(int offset) {
        return offset - starts()[line(offset) - 1] + 1;
    }

    /** The text of a line counted from 1, without its end. */
    public String lineText(int line) {
        int[] starts = starts();
        int from = starts[line - 1];
        int to = line < starts.length ? starts[line] : content.length();
        while (to > from && (content.charAt(to - 1) == '\n' || content.charAt(to - 1) == '\r')) {
            to--;
        }
        return content.substring(from, to);
    }

    private synchronized int[] starts() {
        if (lineStarts == null) {
            int[] found = new int[16];
            int count = 1;
            for (int i = 0; i < content.length(); i++) {
                if (content.charAt(i) == '\n') {
                    if (count == found.length) {
                        found = Arrays.copyOf(found, count * 2);
                    }
                    found[count++] = i + 1;
                }
            }
            lineStarts = Arrays.copyOf(found, count);
        }
        return lineStarts;
    }

    @Override
    public String toString() {
        return name;
    }
}

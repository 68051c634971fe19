/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/**
 * Where something stands in a text.
 *
 * @param source the text
 * @param offset of the first character, counted from 0 in UTF-16 units
 * @param length in UTF-16 units
 */
public record SourceRange(SourceText source, int offset, int length) {
    /** The line of the first character, counted from 1. */
    public int line() {
        return source.line(offset);
    }

    /** The column of the first character, counted from 1. */
    public int column() {
        return source.column(offset);
    }

    /** The offset behind the last character. */
    public int end() {
        return offset + length;
    }

    /** The words themselves. */
    public String text() {
        return source.content().substring(offset, end());
    }

    @Override
    public String toString() {
        return source.name() + ":" + line() + ":" + column();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

/**
 * Signs that a word processor or a keyboard puts in for plain ones, read as what they mean: typographic quotation marks
 * around a text, narrow, wide and zero-width spaces, the raised letter o for a degree, an arrow in one sign beside a space.
 * A comma between digits is read as a decimal point outside brackets; whoever reads the number reports it. Every sign keeps its place, so that
 * what is found points at the author's own words; inside a text in quotation marks nothing changes.
 */
public final class PlainSigns {
    private static final String OPENING = "\u201C\u201D\u201E\u201F\u00AB\u00BB\u301D";
    private static final String CLOSING = "\u201C\u201D\u201F\u00AB\u00BB\u301E";
    private static final String SPACES = "\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200A\u200B\u200C\u200D\u202F\u205F\u2060\u3000";
    /** Of the signs that are plain as they are. */
    private static final char LAST_PLAIN = 127;
    private static final char ARROW = '\u2192';
    private static final char RAISED_O = '\u00BA';

    private final String text;
    private final char[] plain;
    private int brackets;

    private PlainSigns(String text) {
        this.text = text;
        this.plain = text.toCharArray();
    }

    /** A text of the same length. */
    public static String of(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) > LAST_PLAIN || text.charAt(i) == ',') {
                return new PlainSigns(text).read();
            }
        }
        return text;
    }

    /** Whether a text in quotation marks can begin with it. */
    public static boolean opens(char c) {
        return c == '"' || OPENING.indexOf(c) >= 0;
    }

    static boolean closes(char c) {
        return c == '"' || CLOSING.indexOf(c) >= 0;
    }

    private String read() {
        int at = 0;
        while (at < plain.length) {
            char c = plain[at];
            if (c == '"') {
                at = behind(at, "\"");
            } else if (c <= LAST_PLAIN && c > ',' && c != '/') {
                at++;
            } else if (c == '/' && text.startsWith("//", at)) {
                at = lineEnd(at);
            } else if (c == '/' && text.startsWith("/*", at)) {
                int end = text.indexOf("*/", at + 2);
                at = end < 0 ? plain.length : end + 2;
            } else if (c > LAST_PLAIN && OPENING.indexOf(c) >= 0) {
                at = quoted(at);
            } else {
                at = sign(at);
            }
        }
        return new String(plain);
    }

    private int sign(int at) {
        char c = plain[at];
        brackets = c == '(' ? brackets + 1 : c == ')' ? Math.max(0, brackets - 1) : c == '\n' ? 0 : brackets;
        boolean decimal = c == ',' && brackets == 0 && isDigit(at - 1) && isDigit(at + 1);
        if (c == ARROW && at > 0 && plain[at - 1] == ' ') {
            plain[at - 1] = '-';
            plain[at] = '>';
        } else if (c == ARROW && at + 1 < plain.length && plain[at + 1] == ' ') {
            plain[at] = '-';
            plain[at + 1] = '>';
            return at + 2;
        } else {
            plain[at] = c > LAST_PLAIN && SPACES.indexOf(c) >= 0 ? ' ' : c == RAISED_O ? '\u00B0' : decimal ? '.' : c;
        }
        return at + 1;
    }

    private boolean isDigit(int at) {
        return at >= 0 && at < plain.length && plain[at] >= '0' && plain[at] <= '9';
    }

    /** A text between typographic marks, if it ends on its line and has no plain mark inside. */
    private int quoted(int open) {
        int behind = behind(open, CLOSING);
        boolean closed = behind - 1 > open && CLOSING.indexOf(text.charAt(behind - 1)) >= 0;
        if (!closed || text.substring(open, behind).indexOf('"') >= 0) {
            return open + 1;
        }
        plain[open] = '"';
        plain[behind - 1] = '"';
        return behind;
    }

    /** Behind the next of these marks, or at the end of the line. */
    private int behind(int open, String marks) {
        int end = lineEnd(open);
        for (int i = open + 1; i < end; i++) {
            if (text.charAt(i) == '\\') {
                i++;
            } else if (marks.indexOf(text.charAt(i)) >= 0) {
                return i + 1;
            }
        }
        return end;
    }

    private int lineEnd(int from) {
        int end = from;
        while (end < plain.length && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        return end;
    }
}

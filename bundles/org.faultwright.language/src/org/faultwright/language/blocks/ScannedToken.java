/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.ArrayList;
import java.util.List;

/**
 * A word, number, sign or quoted text of a procedure, told apart without the grammar. Comments are none.
 *
 * @param whole  the text that it stands in
 * @param column of its first character, counted from 0
 */
record ScannedToken(String whole, int start, int end, int column, boolean isFirstInLine) {
    static final ScannedToken NONE = new ScannedToken("", 0, 0, 0, false);

    /** Cut out when it is asked for: of most words nobody does. */
    String text() {
        return whole.substring(start, end);
    }

    boolean is(String sign) {
        return end - start == sign.length() && whole.startsWith(sign, start);
    }

    boolean isQuoted() {
        return end > start && whole.charAt(start) == '"';
    }

    boolean isWord() {
        return end > start && isLetter(whole.charAt(start));
    }

    /** All words of a text, in reading order. Quoted text ends with its line at the latest. */
    static List<ScannedToken> of(String text) {
        List<ScannedToken> words = new ArrayList<>();
        int lineStart = 0;
        boolean first = true;
        int at = 0;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (c == '\n') {
                at++;
                lineStart = at;
                first = true;
            } else if (Character.isWhitespace(c) || c == '\uFEFF' || c == '\u00A0') {
                at++;
            } else if (text.startsWith("//", at)) {
                at = lineEnd(text, at);
            } else if (text.startsWith("/*", at)) {
                int end = text.indexOf("*/", at + 2);
                int newLine = text.lastIndexOf('\n', end < 0 ? text.length() : end);
                if (newLine > at) {
                    lineStart = newLine + 1;
                    first = true;
                }
                if (end < 0) {
                    // not closed: no comment, but words that cannot be read
                    words.add(new ScannedToken(text, at, text.length(), at - lineStart, false));
                }
                at = end < 0 ? text.length() : end + 2;
            } else {
                int end = end(text, at);
                words.add(new ScannedToken(text, at, end, at - lineStart, first));
                first = false;
                at = end;
            }
        }
        return words;
    }

    private static int end(String text, int from) {
        char c = text.charAt(from);
        int at = from + 1;
        if (c == '"') {
            while (at < text.length() && text.charAt(at) != '"' && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
                at += text.charAt(at) == '\\' && at + 1 < text.length() && text.charAt(at + 1) != '\n' ? 2 : 1;
            }
            return at < text.length() && text.charAt(at) == '"' ? at + 1 : at;
        }
        if (isLetter(c)) {
            while (at < text.length() && (isLetter(text.charAt(at)) || isDigit(text.charAt(at)))) {
                at++;
            }
            return at;
        }
        if (isDigit(c)) {
            while (at < text.length() && isDigit(text.charAt(at))) {
                at++;
            }
            return at;
        }
        return text.startsWith("->", from) ? from + 2 : at;
    }

    private static int lineEnd(String text, int from) {
        int end = text.indexOf('\n', from);
        return end < 0 ? text.length() : end;
    }

    private static boolean isLetter(char c) {
        return c == '_' || c == '\u00B0' || c == '\u00B5' || Character.isLetter(c);
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9' || c == '\u00B2' || c == '\u00B3';
    }
}

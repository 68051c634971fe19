/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds arrows that lead nowhere because their author has not come to that yet: the line ends after the
 * arrow, and the next line begins with a result and an arrow of its own. Without help the parser would
 * take that result for the name of the next step, and stumble through the rest of the step.
 */
final class MissingTargets {
    private final String text;
    private final List<Integer> lineEnds = new ArrayList<>();

    MissingTargets(String text) {
        this.text = text;
        int arrow = text.indexOf("->");
        int at = 0;
        while (arrow >= 0 && at < text.length()) {
            at = next(at);
        }
    }

    /** The text with a one-letter name in place of each line end where a target is missing; as long as before. */
    String filled() {
        if (lineEnds.isEmpty()) {
            return text;
        }
        StringBuilder filled = new StringBuilder(text);
        lineEnds.forEach(at -> filled.setCharAt(at, '_'));
        return filled.toString();
    }

    /** Reads one token, comment or gap, and looks behind it if it is an arrow. @return where the next one begins */
    private int next(int at) {
        char c = text.charAt(at);
        if (c == '"') {
            return endOfText(at);
        }
        if (text.startsWith("//", at)) {
            return endOfLine(at);
        }
        if (text.startsWith("/*", at)) {
            int end = text.indexOf("*/", at + 2);
            return end < 0 ? text.length() : end + 2;
        }
        if (text.startsWith("->", at)) {
            look(at + 2);
            return at + 2;
        }
        return at + 1;
    }

    private int endOfText(int from) {
        int at = from + 1;
        while (at < text.length() && text.charAt(at) != '"' && text.charAt(at) != '\n') {
            at += text.charAt(at) == '\\' ? 2 : 1;
        }
        return at + 1;
    }

    private int endOfLine(int from) {
        int end = text.indexOf('\n', from);
        return end < 0 ? text.length() : end + 1;
    }

    private void look(int behindArrow) {
        int lineEnd = behindArrow;
        while (lineEnd < text.length() && (text.charAt(lineEnd) == ' ' || text.charAt(lineEnd) == '\t' || text.charAt(lineEnd) == '\r')) {
            lineEnd++;
        }
        if (lineEnd >= text.length() || text.charAt(lineEnd) != '\n') {
            return;
        }
        int word = gapEnd(lineEnd);
        int wordEnd = word;
        while (wordEnd < text.length() && Character.isUnicodeIdentifierPart(text.charAt(wordEnd))) {
            wordEnd++;
        }
        // the name put in must not grow together with the word
        if (wordEnd > word && word > lineEnd + 1 && text.startsWith("->", gapEnd(wordEnd))) {
            lineEnds.add(lineEnd);
        }
    }

    private int gapEnd(int from) {
        int at = from;
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
        return at;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What each stretch of a text is, for colouring; works on any text, whole or broken. */
public final class Colouring {
    /** What a stretch is. */
    public enum Kind { BEGINNING, KEYWORD, NAME, QUANTITY, TEXT, COMMENT, ARROW }

    /** A stretch of text, in UTF-16 units. */
    public record Stretch(Kind kind, int offset, int length) {
    }

    private static final Pattern TOKEN = Pattern.compile("(?<comment>//[^\\n\\r]*|/\\*(?s:.*?)(?:\\*/|\\z))"
            + "|(?<text>\"[^\"\\\\\\n\\r]*+(?:\\\\.[^\"\\\\\\n\\r]*+){0,200}+\"?)"
            + "|(?<arrow>->)"
            + "|(?<quantity>\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?(?:[A-Za-z\u00b5\u03bc]\\d+)?"
            + "(?:[ \\t]*(?:%|[\\p{L}\u00b0\u2126][\\p{L}\u00b0\u2126\u00b5\u03bc0-9]*(?:[./\u00b7][\\p{L}][\\p{L}0-9]*)*))?)"
            + "|(?<word>[\\p{L}_\u00b0][\\p{L}\\p{M}0-9_\u00b0]*(?:-rms)?)");

    private static final Pattern FROM_THE_FIRST_LETTER = Pattern.compile("[\\p{L}].*$");

    private Colouring() {
    }

    /** The stretches that are coloured, in order; spaces and signs are left out. */
    public static List<Stretch> of(CharSequence text) {
        List<Stretch> stretches = new ArrayList<>();
        Matcher token = TOKEN.matcher(text);
        while (token.find()) {
            kind(token).forEachStretch(token, stretches);
        }
        return List.copyOf(stretches);
    }

    private interface StretchRule {
        void forEachStretch(Matcher token, List<Stretch> into);
    }

    private static StretchRule kind(Matcher token) {
        if (token.group("comment") != null) {
            return whole(Kind.COMMENT);
        }
        if (token.group("text") != null) {
            return whole(Kind.TEXT);
        }
        if (token.group("arrow") != null) {
            return whole(Kind.ARROW);
        }
        if (token.group("quantity") != null) {
            return Colouring::quantity;
        }
        return whole(word(token.group("word")));
    }

    private static StretchRule whole(Kind kind) {
        return (token, into) -> into.add(new Stretch(kind, token.start(), token.end() - token.start()));
    }

    /** A number takes its unit along, but not a word of the language that happens to follow it. */
    private static void quantity(Matcher token, List<Stretch> into) {
        String text = token.group();
        Matcher unit = FROM_THE_FIRST_LETTER.matcher(text);
        int end = token.end();
        if ((text.indexOf(' ') >= 0 || text.indexOf('\t') >= 0) && unit.find() && Keywords.ALL.contains(unit.group())) {
            into.add(new Stretch(Kind.QUANTITY, token.start(), unit.start()));
            into.add(new Stretch(word(unit.group()), token.start() + unit.start(), end - token.start() - unit.start()));
            return;
        }
        into.add(new Stretch(Kind.QUANTITY, token.start(), end - token.start()));
    }

    private static Kind word(String word) {
        if (Keywords.BEGINNINGS.contains(word)) {
            return Kind.BEGINNING;
        }
        return Keywords.ALL.contains(word) || Keywords.SIGNAL_WORDS.contains(word) ? Kind.KEYWORD : Kind.NAME;
    }
}

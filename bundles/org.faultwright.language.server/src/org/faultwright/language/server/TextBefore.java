/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;

/**
 * What stands before the cursor, told from the words alone so that it works in the middle of writing:
 * the part the cursor is in, and the words since that part or its last item began.
 */
final class TextBefore {
    private static final Pattern TOKEN = Pattern.compile(
            "(//[^\\n\\r]*|/\\*(?s:.*?)(?:\\*/|\\z))|(\"[^\"\\\\\\n\\r]*+(?:\\\\.[^\"\\\\\\n\\r]*+){0,200}+\"?)|(->|\\.\\.|\\+/-|[{}(),±+*/%-])"
            + "|(\\d[\\p{L}\\d.]*)|([\\p{L}_°Ω][\\p{L}\\d_°]*(?:-rms)?)");
    private static final Set<String> WITH_BRACES = Stream.concat(Step.KEYWORDS.stream(), Stream.of("condition", "setup", "instrument", "indicator", "note",
            "routine", "fault", "example")).collect(Collectors.toUnmodifiableSet());

    /** A word, number, sign or quoted text. */
    record Token(String text, int start, int end, boolean quoted, boolean number) {
        boolean isWord() {
            return !quoted && Character.isLetter(text.codePointAt(0)) || text.startsWith("_");
        }
    }

    private final List<Token> tokens = new ArrayList<>();
    private final Deque<String> parts = new ArrayDeque<>();
    private final boolean inText;
    private final String typed;
    private final int from;

    TextBefore(String content, int offset) {
        boolean textOpen = false;
        Matcher matcher = TOKEN.matcher(content.substring(0, offset));
        String beginning = "";
        while (matcher.find()) {
            if (matcher.group(1) != null) {
                textOpen |= matcher.end() == offset && !matcher.group(1).endsWith("*/");
                continue;
            }
            boolean quoted = matcher.group(2) != null;
            Token token = new Token(matcher.group(), matcher.start(), matcher.end(), quoted, matcher.group(4) != null);
            textOpen = quoted && token.end() == offset && (token.text().length() == 1 || !token.text().endsWith("\""));
            if (token.text().equals("{")) {
                parts.push(beginning);
            } else if (token.text().equals("}") && !parts.isEmpty()) {
                parts.pop();
            } else if (!quoted && WITH_BRACES.contains(token.text())) {
                beginning = token.text();
            }
            tokens.add(token);
        }
        inText = textOpen;
        Token last = tokens.isEmpty() ? null : tokens.get(tokens.size() - 1);
        boolean unfinished = last != null && last.end() == offset && last.isWord() && !textOpen;
        typed = unfinished ? last.text() : "";
        from = unfinished ? last.start() : offset;
        if (unfinished) {
            tokens.remove(tokens.size() - 1);
        }
    }

    /** Whether the cursor is in quoted text or a comment, where nothing is proposed. */
    boolean isInText() {
        return inText;
    }

    /** The letters already typed of the word at the cursor. */
    String typed() {
        return typed;
    }

    int from() {
        return from;
    }

    /** The keyword of the part whose braces the cursor is in; empty outside all. */
    String part() {
        return parts.isEmpty() ? "" : parts.peek();
    }

    /** Whether the cursor is in the braces of a routine. */
    boolean inRoutine() {
        return parts.contains("routine");
    }

    /** The n-th token before the cursor, 1 being the last; an empty one where there is none. */
    Token back(int n) {
        return n <= tokens.size() ? tokens.get(tokens.size() - n) : new Token(" ", 0, 0, false, false);
    }

    /** The nearest of these words before the cursor inside the part, or an empty text. */
    String lastOf(Set<String> words) {
        for (int i = tokens.size() - 1; i >= 0; i--) {
            Token token = tokens.get(i);
            if (!token.quoted() && (token.text().equals("{") || token.text().equals("}"))) {
                return "";
            }
            if (!token.quoted() && words.contains(token.text())) {
                return token.text();
            }
        }
        return "";
    }
}

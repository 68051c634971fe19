/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
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
    /** A number, and letters in the same line that are or become its unit, such as those of 24 V, 24V, 1.2 N.m and 5 °C. */
    private static final Pattern HALF_A_UNIT = Pattern.compile("(?<![\\p{L}\\d_.])(\\d+(?:\\.\\d+)?)[ \\t]*([\\p{L}°%][\\p{L}\\d°²³]*(?:[.·/*(][\\p{L}\\d°²³]*)*)\\z");
    private static final Set<String> WITH_BRACES = Stream.concat(Step.KEYWORDS.stream(), Stream.of("condition", "setup", "instrument", "indicator", "note",
            "routine", "fault", "example")).collect(Collectors.toUnmodifiableSet());

    /** A word, number, sign or quoted text. */
    record Token(String text, int start, int end, boolean quoted, boolean number) {
        boolean isWord() {
            return !quoted && Character.isLetter(text.codePointAt(0)) || text.startsWith("_") || text.startsWith("\u00b0");
        }
    }

    private final String content;
    private final List<Token> tokens = new ArrayList<>();
    private final Deque<String> parts = new ArrayDeque<>();
    private final boolean inText;
    private final String typed;
    private final int from;

    TextBefore(String content, int offset) {
        this.content = content;
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
        Matcher unit = HALF_A_UNIT.matcher(content.substring(content.lastIndexOf('\n', offset - 1) + 1, offset));
        if (!textOpen && unit.find()) {
            typed = unit.group(2);
            from = offset - typed.length();
            int number = from - (unit.start(2) - unit.start(1));
            tokens.removeIf(token -> token.end() > number);
            tokens.add(new Token(unit.group(1), number, number + unit.group(1).length(), false, true));
            return;
        }
        Token last = tokens.isEmpty() ? null : tokens.get(tokens.size() - 1);
        boolean unfinished = last != null && last.end() == offset && last.isWord() && !textOpen;
        typed = unfinished ? last.text() : "";
        from = unfinished ? last.start() : offset;
        if (unfinished) {
            tokens.remove(tokens.size() - 1);
        }
    }

    private TextBefore(TextBefore shorter, Token word) {
        content = shorter.content;
        tokens.addAll(shorter.tokens.subList(0, shorter.tokens.size() - 1));
        parts.addAll(shorter.parts);
        inText = shorter.inText;
        typed = word.text() + " " + shorter.typed;
        from = word.start();
    }

    /** The same where the word before is part of what is being typed, as in "dc volt"; absent where no word stands before in the line. */
    Optional<TextBefore> withTheWordBefore() {
        Token word = back(1);
        boolean beside = word.end() < from && isInOneLine(word.end(), from);
        return (word.isWord() || word.number()) && beside ? Optional.of(new TextBefore(this, word)) : Optional.empty();
    }

    /** Whether nothing but remarks stands before. */
    boolean isAtTheBeginning() {
        return tokens.isEmpty();
    }

    private boolean isInOneLine(int start, int end) {
        return content.substring(start, end).indexOf('\n') < 0;
    }

    /** Whether a number stands before in the line, so that a unit may follow. */
    boolean isBehindANumber() {
        return back(1).number() && isInOneLine(back(1).end(), from);
    }

    /** The word that begins what the cursor is in: that of the part, or outside of its braces that of the declaration, step or line; empty where there is none. */
    String block() {
        Set<String> beginnings = parts.isEmpty() ? Keywords.BEGINNINGS : part().equals("routine") ? Set.copyOf(Step.KEYWORDS) : Set.of();
        int depth = 0;
        for (int i = tokens.size() - 1; i >= 0 && depth >= 0 && !beginnings.isEmpty(); i--) {
            Token token = tokens.get(i);
            depth += token.quoted() ? 0 : token.text().equals("}") ? 1 : token.text().equals("{") ? -1 : 0;
            if (depth == 0 && !token.quoted() && beginnings.contains(token.text())) {
                return token.text();
            }
        }
        return part();
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

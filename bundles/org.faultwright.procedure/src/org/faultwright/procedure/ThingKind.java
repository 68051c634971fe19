/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Arrays;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What a thing in a text is. Pictures, symbols, sentences and search ask here, so that one thing has one word everywhere. Of what kind a step is, a check
 * or a measurement, its own word tells ({@link Step#keyword()}).
 */
public enum ThingKind {
    PROCEDURE("procedure", "procedure"), LIBRARY("library", "library"), LIBRARY_USED("library used", "uses"),
    EQUIPMENT("equipment", "equipment"), REVISION("revision", "revision"), COMPLAINT("complaint", "complaints"), TOOL("tool", "tools"),
    DECISION("decision", "decision"), AMBIENT("ambient", "ambient"), CLOSES("closes", "closes"), OTHERWISE("otherwise", "otherwise"), BEGINNING("beginning", "begin"),
    CONDITION("condition", "condition"), SET_UP("setup", "setup"), INSTRUMENT("instrument", "instrument"), POINT("point", "point"), PART("part", "part"),
    INDICATOR("indicator", "indicator"), NOTE("note", "note"), ROUTINE("routine", "routine"), FAULT("fault", "fault"), EXAMPLE("example", "example"),
    STEP("step"), VALUE("value"), EXIT("exit"), FUNCTION("function"), CODE("code"), PART_NUMBER("part number"), UNIT("unit"), COMMENT("comment"),
    /** The head of a text whose first word cannot be read. */
    TEXT("text"),
    /** Any others, and what begins with no word of the language. */
    WORDS("words");

    private static final Map<String, ThingKind> BY_KEYWORD = Arrays.stream(values()).filter(kind -> !kind.keyword.isEmpty())
            .collect(Collectors.toUnmodifiableMap(kind -> kind.keyword, Function.identity()));

    private final String word;
    private final String keyword;

    ThingKind(String word) {
        this(word, "");
    }

    ThingKind(String word, String keyword) {
        this.word = word;
        this.keyword = keyword;
    }

    /** What a block that begins with this word of the language is; {@link #WORDS} where none begins with it. */
    public static ThingKind begunBy(String keyword) {
        return Step.KEYWORDS.contains(keyword) ? STEP : BY_KEYWORD.getOrDefault(keyword, WORDS);
    }

    /** In the middle of a sentence. */
    public String word() {
        return word;
    }

    /** The word of the language that such a thing begins with; empty for a step, which has one of several, and for what is only a part of something. */
    public String keyword() {
        return keyword;
    }
}

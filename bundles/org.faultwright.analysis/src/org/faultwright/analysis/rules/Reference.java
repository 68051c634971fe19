/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;

/**
 * A name that refers to something declared elsewhere.
 *
 * @param known    whether there is such a thing
 * @param declared where it is declared; absent for functions and for what is unknown
 * @param among the names that would do
 */
public record Reference(Name name, Kind kind, boolean known, Optional<Name> declared, Supplier<List<String>> among) {
    private static final String USES = "uses";

    /** What kinds of things are referred to. */
    public enum Kind {
        STEP("step"), TARGET("step or exit"), READING("step with a reading"), CONDITION("condition"), SETUP("setup"), VALUE("value"),
        NOTE("note"), POINT("point"), PART("part"), INDICATOR("indicator"), INSTRUMENT("instrument"),
        ROUTINE("routine"), FAULT("fault"), LIBRARY("library"), FUNCTION("function");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** What a declaration that begins with this word declares. */
        static Kind declaredBy(String keyword) {
            return Arrays.stream(values()).filter(kind -> kind.word.equals(keyword)).findFirst().orElseThrow();
        }

        public String word() {
            return word;
        }

        /** Whether a block that begins with this word may declare such a thing; any may where its first word cannot be read. */
        public boolean isDeclaredBy(String keyword) {
            if (keyword.isEmpty()) {
                return this != LIBRARY && this != FUNCTION;
            }
            return switch (this) {
                case STEP, READING -> Step.KEYWORDS.contains(keyword);
                case TARGET -> Step.KEYWORDS.contains(keyword) || keyword.equals(FAULT.word);
                case VALUE -> keyword.equals(CONDITION.word) || keyword.equals(USES);
                case FAULT -> keyword.equals(FAULT.word);
                case LIBRARY, FUNCTION -> false;
                default -> keyword.equals(word) || keyword.equals(USES);
            };
        }
    }
}

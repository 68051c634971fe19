/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.steps;

import java.util.List;

/** A step to be written. @param title the question, instruction or conclusion in the author's words */
public record NewStep(Kind kind, String name, String title) {
    /** The kinds that need nothing beside their words; what a measurement needs is asked for in the text. */
    public enum Kind {
        CHECK("A question with yes and no"), DO("Something done"), CONCLUDE("A conclusion that hands the unit on");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Where its results lead, as {@link Arrows} has it. */
    List<String> leads(String target) {
        return switch (kind) {
            case CHECK -> List.of(target, "", target, "");
            case DO -> List.of(target, "");
            case CONCLUDE -> List.of();
        };
    }

    /** Its text, without what every line is indented by. */
    List<String> lines(String target) {
        String head = switch (kind) {
            case CHECK -> "check ";
            case DO -> "do ";
            case CONCLUDE -> "conclude ";
        } + name + " " + quoted(title) + " {";
        return switch (kind) {
            case CHECK -> List.of(head, "    yes -> " + target, "    no  -> " + target, "}");
            case DO -> List.of(head, "    then -> " + target, "}");
            case CONCLUDE -> List.of(head, "    refers to " + quoted(title), "}");
        };
    }

    private static String quoted(String words) {
        return '"' + words.strip().replace("\\", "\\\\").replace("\"", "\\\"").replaceAll("[\\r\\n]+", " ") + '"';
    }
}

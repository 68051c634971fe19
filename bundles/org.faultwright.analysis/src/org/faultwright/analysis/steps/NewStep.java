/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.steps;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Quotation;

/**
 * A step to be written.
 *
 * @param title   the question, instruction or conclusion in the author's words
 * @param reading what is read; there for a reading, and for nothing else
 */
public record NewStep(Kind kind, String name, String title, Optional<Reading> reading) {
    public NewStep {
        if (reading.isPresent() != (kind == Kind.MEASURE)) {
            throw new IllegalArgumentException("A reading says what is read, and no other step does.");
        }
    }

    /** A step that needs nothing beside its words. */
    public NewStep(Kind kind, String name, String title) {
        this(kind, name, title, Optional.empty());
    }

    /** What a step can be. */
    public enum Kind {
        CHECK("A question with yes and no"), MEASURE("A reading"), DO("Something done"), CONCLUDE("A conclusion that hands the unit on");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * What is read, each as the language writes it.
     *
     * @param point      the name of a point
     * @param against    the name of the point that it is read against; empty where there is none
     * @param instrument the name of an instrument
     * @param limit      what a sound unit has: {@code 24 V +/- 5 %}
     */
    public record Reading(String quantity, String point, String against, String instrument, String limit) {
        /** Whether the limit has a lower or an upper end. */
        private List<String> results() {
            boolean toBelow = limit.startsWith("at most") || limit.startsWith("under");
            boolean toAbove = limit.startsWith("at least") || limit.startsWith("over") && !limit.contains("..");
            return toBelow ? List.of("within", "above") : toAbove ? List.of("below", "within") : List.of("below", "within", "above");
        }

        private List<String> lines(String target) {
            List<String> lines = new ArrayList<>(List.of("    " + quantity + " at " + point + (against.isEmpty() ? "" : " against " + against) + " using "
                    + instrument, "    expects " + limit));
            results().forEach(result -> lines.add(String.format("    %-6s -> %s", result, target)));
            return lines;
        }
    }

    /** Where its results lead, as {@link ArrowTargets} has it. */
    List<String> leads(String target) {
        return switch (kind) {
            case CHECK -> List.of(target, "", target, "");
            case MEASURE -> reading.orElseThrow().results().stream().flatMap(result -> Stream.of(target, "")).toList();
            case DO -> List.of(target, "");
            case CONCLUDE -> List.of();
        };
    }

    /** Its text, without what every line is indented by. */
    List<String> lines(String target) {
        String head = switch (kind) {
            case CHECK -> "check ";
            case MEASURE -> "measure ";
            case DO -> "do ";
            case CONCLUDE -> "conclude ";
        } + name + " " + Quotation.onOneLine(title) + " {";
        return switch (kind) {
            case MEASURE -> Stream.of(List.of(head), reading.orElseThrow().lines(target), List.of("}")).flatMap(List::stream).toList();
            case CHECK -> List.of(head, "    yes -> " + target, "    no  -> " + target, "}");
            case DO -> List.of(head, "    then -> " + target, "}");
            case CONCLUDE -> List.of(head, "    refers to " + Quotation.onOneLine(title), "}");
        };
    }
}

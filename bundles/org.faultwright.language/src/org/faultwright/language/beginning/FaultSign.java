/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** One way of telling what it is: something to look at, codes to read, a value to measure. */
public sealed interface FaultSign {
    /** In a few words, for a heading. */
    String words();

    /** Whether the unit is switched on for it. */
    boolean isOn();

    /** Whether the cover is off for it. */
    boolean isOpen();

    /** A number above 0; empty counts as one. */
    String minutes();

    /** What can be seen there, the first of them what a sound unit shows, where one can say. */
    List<String> results();

    /** Whether a fault that says nothing shows what a sound unit does. */
    boolean isNormalUnlessSaid();

    /** The words of an answer as the text has them: {@code very dark} becomes {@code veryDark}. */
    static String result(String answer) {
        return NamesFromWords.outcome(answer);
    }

    /** What may be seen as the text has it, where there are several with {@code or} between them. */
    static String possible(String words, FaultSign sign) {
        return words.isBlank() ? "" : sign instanceof Look ? FaultTableText.possible(words) : words;
    }

    /** A question that is answered by looking or listening. @param answers the first is what a sound unit shows */
    record Look(String words, List<String> answers, boolean isOn, boolean isOpen, String minutes) implements FaultSign {
        public Look {
            answers = List.copyOf(answers);
        }

        @Override
        public List<String> results() {
            return answers.stream().map(NamesFromWords::outcome).distinct().toList();
        }

        @Override
        public boolean isNormalUnlessSaid() {
            return true;
        }
    }

    /** Codes of a lamp or a read-out. @param words which one, and where it is @param source the document that has the table */
    record Codes(String words, List<ImportedLines.Code> codes, String source, boolean isOn, String minutes) implements FaultSign {
        public Codes {
            codes = List.copyOf(codes);
        }

        @Override
        public boolean isOpen() {
            return false;
        }

        @Override
        public List<String> results() {
            return Stream.concat(codes.stream().map(ImportedLines.Code::shown), Stream.of("none")).distinct().toList();
        }

        @Override
        public boolean isNormalUnlessSaid() {
            return false;
        }
    }

    /**
     * A value that is measured.
     *
     * @param words    where it is read
     * @param quantity as the language writes it: {@code dc voltage}
     * @param expects  a limit: {@code 24 V +/- 5 %}
     * @param most     the highest voltage that is met there; empty where nobody said
     * @param source   the document that has the limit
     */
    record Reading(String words, String quantity, String expects, String most, String source, boolean isOn, boolean isOpen, String minutes)
            implements FaultSign {
        @Override
        public List<String> results() {
            List<String> sides = new ArrayList<>(List.of("within"));
            if (!expects.matches("(at most|under)\\b.*")) {
                sides.add("below");
            }
            if (!expects.matches("(at least|over)\\b.*")) {
                sides.add("above");
            }
            return sides;
        }

        @Override
        public boolean isNormalUnlessSaid() {
            return true;
        }
    }
}

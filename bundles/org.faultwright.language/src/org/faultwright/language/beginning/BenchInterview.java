/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.faultwright.language.TextFormatter;

/**
 * What somebody answers when asked for a library.
 *
 * @param name       of the library: letters and digits, the first a letter
 * @param bench      which bench it is for
 * @param coldest    the lowest temperature there, in degrees Celsius; empty counts as 18
 * @param warmest    the highest; empty counts as 28
 * @param instrument what is read with
 * @param dangers    what can hurt, each with what is dangerous and what to do
 */
public record BenchInterview(String name, String bench, String coldest, String warmest, Interview.Meter instrument,
        Map<Danger, Interview.Caution> dangers) {
    public BenchInterview {
        dangers = java.util.Collections.unmodifiableMap(new TreeMap<>(dangers));
    }

    /** Whether it is a number of degrees, or nothing. */
    public static boolean isTemperature(String words) {
        return words.strip().matches("(-?\\d{1,3}(\\.\\d{1,2})?)?");
    }

    String text() {
        String notes = dangers.entrySet().stream().map(one -> one.getKey().note(one.getValue().what(), one.getValue().avoid()) + "\n").collect(Collectors.joining());
        String text = Beginning.library(name, or(instrument.title(), "Make and kind"), instrument.ranges()).text();
        text = text.replaceFirst("\"What bench this is\"", java.util.regex.Matcher.quoteReplacement(NamesFromWords.quoted(or(bench, "What bench this is"))))
                .replaceFirst("ambient 18 degC \\.\\. 28 degC", "ambient " + or(coldest, "18") + " degC .. " + or(warmest, "28") + " degC");
        if (!notes.isEmpty()) {
            String first = dangers.keySet().iterator().next().noteName();
            text = text.replaceFirst("(?s)note MovingParts .*?\\n}\\n", java.util.regex.Matcher.quoteReplacement(notes.strip() + "\n"))
                    .replace("notes MovingParts", "notes " + (dangers.containsKey(Danger.MOTION) ? "MovingParts" : first));
        }
        return TextFormatter.format(text);
    }

    private static String or(String words, String otherwise) {
        return words.isBlank() ? otherwise : words.strip();
    }
}

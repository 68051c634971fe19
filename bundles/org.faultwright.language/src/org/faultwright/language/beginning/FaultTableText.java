/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The faults of a procedure from a table with a row for each; the steps are drafted afterwards. */
final class FaultTableText {
    private final Map<Integer, String> headings;
    private final NamesFromWords names = new NamesFromWords();
    private final Map<String, String> remedies = new LinkedHashMap<>();

    private FaultTableText(Map<Integer, String> headings) {
        this.headings = headings;
    }

    /** @param headings of the columns that are steps */
    static String text(String name, Map<Integer, String> headings, List<ImportedLines.FaultLine> lines) throws UnusableTable {
        return new FaultTableText(headings).text(name, lines);
    }

    private String text(String name, List<ImportedLines.FaultLine> lines) throws UnusableTable {
        names.name(name, "X");
        Map<String, String> steps = new LinkedHashMap<>();
        headings.values().forEach(heading -> steps.put(heading, names.name(heading, "Step")));
        if (steps.isEmpty()) {
            throw new UnusableTable("The table has no column for a step; add one for each look or measurement, with what "
                    + "each fault shows there.");
        }
        StringBuilder faults = new StringBuilder();
        lines.forEach(line -> faults.append(fault(line, steps)));
        return CodeTable.head(name) + """
                // What could it be? "cases" is how often you have met it, "shows" what each step would show.
                %s
                // The steps. Say of each what to do or to ask in its title, how long it takes, what it needs.
                %s""".formatted(faults, Stream.concat(steps.entrySet().stream().map(step -> asked(step.getKey(), step.getValue())),
                        remedies.entrySet().stream().map(remedy -> "do " + remedy.getValue() + " " + NamesFromWords.quoted(remedy.getKey())
                                + " {\n    takes 5 min\n}\n")).collect(Collectors.joining()));
    }

    private static String asked(String heading, String step) {
        return "check " + step + " " + NamesFromWords.quoted(heading) + " {\n    takes 1 min\n}\n";
    }

    private String fault(ImportedLines.FaultLine line, Map<String, String> steps) {
        String shown = line.shows().entrySet().stream().map(one -> steps.get(one.getKey()) + " " + possible(one.getValue()))
                .collect(Collectors.joining(", "));
        String remedy = line.remedy().isEmpty() ? "" : remedies.computeIfAbsent(line.remedy(), words -> names.name(words, "Do"));
        return "fault " + names.name(line.fault(), "Fault") + " " + NamesFromWords.quoted(line.fault()) + " {\n    cases " + line.cases() + "\n    shows "
                + shown + "\n" + (remedy.isEmpty() ? "" : "    remedy " + remedy + "\n") + "}\n";
    }

    /** {@code dark or dim} stays two possible answers. */
    static String possible(String cell) {
        return Stream.of(cell.split("(?i)\\s+or\\s+")).map(NamesFromWords::outcome).distinct().collect(Collectors.joining(" or "));
    }
}

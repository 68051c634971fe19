/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** A list of steps as a procedure that goes through them in their order; whatever is not as it should be ends it. */
final class StepListText {
    private StepListText() {
    }

    static String text(String name, List<ImportedLines.StepLine> lines) throws UnusableTable {
        if (lines.isEmpty()) {
            throw new UnusableTable("The table has no step in it.");
        }
        NamesFromWords names = new NamesFromWords();
        for (String own : new String[] {name, "SeeIt", "Proof", "FirstCause", "Found", "NotSeen", "NotSolved", "Meter"}) {
            names.name(own, "X");
        }
        List<String> steps = lines.stream().map(line -> names.name(line.step(), "Step")).toList();
        Set<String> quantities = new LinkedHashSet<>();
        StringBuilder places = new StringBuilder();
        StringBuilder text = new StringBuilder();
        List<String> repairs = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            ImportedLines.StepLine line = lines.get(i);
            String next = i + 1 < steps.size() ? steps.get(i + 1) : repairs.isEmpty() && line.kind() != ImportedLines.StepKind.DO ? "Found" : "Proof";
            String takes = "    takes " + (line.minutes().isEmpty() ? "1" : line.minutes()) + " min\n";
            String head = line.kind().keyword() + " " + steps.get(i) + " " + NamesFromWords.quoted(line.step()) + " {\n";
            switch (line.kind()) {
                case DO -> {
                    repairs.add(steps.get(i));
                    text.append(head).append(takes).append("    then -> ").append(next).append("\n}\n");
                }
                case MEASURE -> {
                    String quantity = line.quantity();
                    String place = names.name(line.at().isEmpty() ? line.step() : line.at(), "Place");
                    quantities.add(quantity);
                    places.append("point ").append(place).append(' ').append(NamesFromWords.quoted(line.at().isEmpty() ? line.step() : line.at())).append('\n');
                    text.append(head).append("    ").append(quantity).append(" at ").append(place).append(" using Meter\n    expects ")
                            .append(Interview.limit(line.expects())).append('\n').append(takes).append("    source \"Document and page\"\n    within -> ")
                            .append(next).append("\n    outside -> NotSolved\n}\n");
                }
                case CHECK -> text.append(head).append(takes).append("    yes -> ").append(next).append("\n    no -> NotSolved\n}\n");
            }
        }
        String meter = quantities.isEmpty() ? "" : "// Put in what the data sheet of your own meter says.\ninstrument Meter " + NamesFromWords.quoted(Interview.Meter.USUAL.title())
                + " {\n" + Interview.Meter.USUAL.ranges().stream().filter(range -> quantities.stream().anyMatch(range::startsWith))
                .map(range -> "    " + range + "\n").collect(Collectors.joining()) + "}\n" + places + "\n";
        return CodeTable.head(name) + meter + begin(repairs, steps.get(0)) + text + ends(!repairs.isEmpty());
    }

    private static String begin(List<String> repairs, String first) {
        boolean repaired = !repairs.isEmpty();
        return """
                // What could it be? One fault for each cause; "cases" is how often you have met it.
                fault FirstCause "What may be broken" {
                    cases 1
                    shows SeeIt asReported%s
                %s}

                begin at SeeIt

                check SeeIt "Try it. Does it do what was reported?" {
                    confirms complaint
                    takes 2 min
                    asReported -> %s
                    worksWell  -> NotSeen
                }
                // The steps of the list, in its order. Let each answer lead on to where it belongs.
                """.formatted(repaired ? ", Proof yes" : "", repaired ? "    remedy " + String.join(", ", repairs) + "\n    report \"What was wrong and what was done.\"\n" : "", first);
    }

    private static String ends(boolean repaired) {
        return (repaired ? """
                check Proof "Try it three times. Does it work every time?" {
                    verifies repair
                    takes 3 min
                    yes -> FirstCause
                    no  -> NotSolved
                }
                """ : """
                conclude Found "Found" {
                    finds FirstCause
                    refers to "Senior technician"
                    report "What was wrong and what was done."
                }
                """) + """
                conclude NotSeen "Complaint not seen" {
                    finds nothing
                    report "Tried as described; the fault did not show."
                }
                conclude NotSolved "Not solved here" {
                    refers to "Senior technician, with what was tried"
                    report "What was tried, with the readings."
                }
                """;
    }
}

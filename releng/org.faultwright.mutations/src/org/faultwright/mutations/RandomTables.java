/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;

/**
 * Fault tables at random, the same for the same seed: a bench with a supply, a charge, a cover and a lid, tests and remedies that need some of it,
 * and faults that show some of what the tests ask. Some steps stand in the text, some are only named.
 */
final class RandomTables {
    private static final String BENCH = """
            procedure Table "Table"
            equipment "Bench toy"
            revision 1 draft
            complaints "does not run"
            // the bench of every table
            condition Supply { off, on } live when on starts off ends off
            condition Charge { present, absent } charged when present becomes present when Supply on proved at Bulk at most 60 V starts present
            condition Cover { fitted, removed } starts fitted ends fitted
            condition Lid { shut, open } starts shut ends shut
            instrument Meter "Meter" {
                dc voltage up to 600 V resolution 0.1 V accuracy 0.5 % of reading + 2 digits input 10 Mohm
                resistance up to 60 kohm resolution 1 ohm accuracy 0.5 % of reading + 2 digits
                rated 600 V category 3
            }
            point Bulk "C1" carries up to 325 V dc hazards charge
            point Rail "Rail" carries up to 24 V dc
            part Board "Board"
            note Shock danger { covers shock hazard "The board is at mains." consequence "It can kill." avoid "Keep off it." }
            note Stored danger { covers charge, shock hazard "C1 stays charged." consequence "It can kill." avoid "Prove it dead." }
            routine MakeDead "Prove it dead" {
                exits dead normal, stillThere
                do PullPlug "Pull the plug" { sets Supply off takes 1 min then -> Try }
                check Try "Try the meter on a cell. Does it read?" { tries Meter takes 30 s yes -> Read no -> stillThere }
                measure Read "Read C1" {
                    dc voltage at Bulk using Meter range 600 V
                    needs Supply off
                    notes Stored
                    takes 1 min
                    source "House rule" dated 2026-01-05
                    gone at most 60 V -> dead proves Charge absent
                    left over 60 V -> stillThere
                }
            }
            do PlugIn "Plug in" { sets Supply on takes 30 s }
            do TakeOff "Take the cover off" { needs Supply off sets Cover removed takes 3 min }
            do PutOn "Fit the cover" { needs Supply off sets Cover fitted takes 2 min }
            do OpenLid "Open the lid" { sets Lid open takes 10 s }
            do ShutLid "Shut the lid" { sets Lid shut takes 10 s }
            """;
    private static final List<String> NEEDS = List.of("", "", "needs Supply on", "needs Supply off", "needs Supply off, Cover removed",
            "needs Lid open", "needs Supply off, Cover removed, Charge absent", "needs Supply on, Lid open");
    private final Random random;

    RandomTables(long seed) {
        this.random = new Random(seed);
    }

    private record Test(String name, String text, List<String> outcomes) {
    }

    String next() {
        List<Test> tests = new ArrayList<>();
        int count = 2 + random.nextInt(5);
        for (int i = 0; i < count; i++) {
            tests.add(test("T" + (i + 1)));
        }
        List<String> faults = new ArrayList<>();
        List<String> steps = new ArrayList<>();
        int many = 2 + random.nextInt(6);
        for (int i = 0; i < many; i++) {
            faults.add(fault("F" + (i + 1), tests, steps));
        }
        String written = tests.stream().map(Test::text).filter(text -> !text.isEmpty()).collect(Collectors.joining("\n"));
        return BENCH + String.join("\n", faults) + "\n" + (written.isEmpty() ? "" : written + "\n") + String.join("\n", steps) + "\n";
    }

    private static String line(String words) {
        return words.isEmpty() ? "" : words + "\n    ";
    }

    private Test test(String name) {
        String needs = NEEDS.get(random.nextInt(NEEDS.size()));
        String times = "takes " + (1 + random.nextInt(12)) + " min";
        boolean live = needs.contains("Supply on");
        return switch (random.nextInt(5)) {
            case 0 -> new Test(name, "", List.of("yes", "no"));
            case 1 -> new Test(name, "", List.of("red", "green", "dark"));
            case 2 -> new Test(name, "measure " + name + " \"Rail\" {\n    dc voltage at Rail using Meter range 600 V\n    expects 24 V +/- 10 %\n    "
                    + line(needs) + times + "\n    // as the sheet says\n    source \"Sheet 2\" dated 2026-01-05\n}", List.of("below", "within", "above"));
            case 3 -> new Test(name, "measure " + name + " \"Rail to ground\" {\n    resistance at Rail using Meter\n    expects 5 kohm +/- 10 %\n    "
                    + line(live ? "needs Supply off" : needs) + times + "\n    source \"Sheet 2\" dated 2026-01-05\n}", List.of("below", "within", "above"));
            default -> new Test(name, "check " + name + " \"Does it run?\" {\n    " + line(needs) + times + "\n    " + (random.nextBoolean()
                    ? "runs normal -> " + name + "\n    still -> " + name + "\n" : "") + "}", List.of("runs", "still"));
        };
    }

    private String fault(String name, List<Test> tests, List<String> steps) {
        List<String> shows = new ArrayList<>();
        for (Test test : tests) {
            if (random.nextInt(3) > 0) {
                String one = test.outcomes().get(random.nextInt(test.outcomes().size()));
                String other = test.outcomes().get(random.nextInt(test.outcomes().size()));
                shows.add(test.name() + " " + one + (random.nextInt(8) == 0 && !one.equals(other) ? " or " + other : ""));
            }
        }
        if (shows.isEmpty()) {
            shows.add(tests.get(0).name() + " " + tests.get(0).outcomes().get(0));
        }
        String remedy = "Mend" + (random.nextInt(6) == 0 ? "F1" : name);
        boolean has = random.nextInt(5) > 0;
        if (has && random.nextBoolean() && steps.stream().noneMatch(step -> step.contains(" " + remedy + " "))) {
            String needs = NEEDS.get(random.nextInt(NEEDS.size()));
            steps.add("do " + remedy + " \"Mend it\" {\n    " + line(needs) + (random.nextBoolean() ? "handles Board\n    " : "") + "takes "
                    + (2 + random.nextInt(20)) + " min\n}");
        }
        return "fault " + name + " \"Fault " + name.substring(1) + "\" {\n    cases " + (1 + random.nextInt(40)) + "\n    shows " + String.join(", ", shows)
                + (has ? "\n    remedy " + remedy : "") + "\n}";
    }

    /** The text with each of its times replaced by another: what was the best order is so no longer. */
    String otherTimes(String text) {
        StringBuilder changed = new StringBuilder();
        for (String line : text.split("\n", -1)) {
            changed.append(line.matches("    takes \\d+ min") ? "    takes " + (1 + random.nextInt(30)) + " min" : line).append('\n');
        }
        return changed.substring(0, changed.length() - 1);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.util.Random;

/** Procedures made from a seed: long enough to measure, shaped like those that people write. */
final class MadeProcedures {
    private static final String LIBRARY = """
            library MadeBench "A bench made for measuring"
            condition Supply { off, on } live when on starts off ends off
            condition Cover { fitted, removed } starts fitted ends fitted
            instrument HandMeter "Hand-held multimeter" {
                dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
                dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
                resistance up to 600 ohm resolution 0.1 ohm accuracy 0.9 % of reading + 3 digits
            }
            point Ground "Chassis"
            """;

    private MadeProcedures() {
    }

    /** The library that the procedures use, named MadeBench. */
    static String library() {
        return LIBRARY;
    }

    /** @param steps about so many, at least 10 */
    static String procedure(String name, int steps, long seed) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder();
        text.append("// made from seed ").append(seed).append("\nprocedure ").append(name).append(" \"Made for measuring\"\n\n")
                .append("uses MadeBench\nequipment \"Maker and model\" boards \"A\", \"B\"\nrevision 1 draft\n")
                .append("complaints \"does not start\", \"goes off by itself\"\n\n");
        int rails = Math.max(2, (steps - 6) / 4);
        for (int i = 0; i < rails; i++) {
            text.append("point Rail").append(i).append(" \"TP").append(i).append("\" carries up to 28 V dc source resistance ")
                    .append(1 + random.nextInt(40)).append(" ohm\n");
        }
        for (int i = 0; i < rails; i++) {
            text.append("fault Fault").append(i).append(" \"Converter ").append(i).append(" not running\" {\n    cases ")
                    .append(1 + random.nextInt(30)).append("\n    shows Volts").append(i).append(" below\n    remedy Replace").append(i)
                    .append("\n}\n");
        }
        text.append("\nbegin at SwitchOn\n\ndo SwitchOn \"Switch the supply on\" {\n    sets Supply on\n    takes 1 min\n    then -> SeeIt\n}\n")
                .append("check SeeIt \"Does it do what was reported?\" {\n    confirms complaint\n    needs Supply on\n    takes 2 min\n")
                .append("    yes -> Volts0\n    no  -> OffNotSeen\n}\n");
        for (int i = 0; i < rails; i++) {
            rail(i, rails, random, text);
        }
        return text.append("""
                do OffNotSeen "Switch off" {
                    sets Supply off
                    takes 1 min
                    then -> NotSeen
                }
                conclude NotSeen "Not seen" {
                    finds nothing
                    report "Tried as described."
                }
                do OffHandOn "Switch off" {
                    sets Supply off
                    takes 1 min
                    then -> HandOn
                }
                conclude HandOn "Not solved here" {
                    refers to "the senior technician"
                    report "All rails read, none low."
                }

                example "First rail" of Fault0 {
                    SeeIt yes, Volts0 below, Good0 yes
                    ends at Found0 within 60 min
                }
                """).toString();
    }

    private static void rail(int i, int rails, Random random, StringBuilder text) {
        String next = i + 1 < rails ? "Volts" + (i + 1) : "OffHandOn";
        int volts = 3 + random.nextInt(22);
        text.append("measure Volts").append(i).append(" \"Rail ").append(i).append(" under load\" {\n    dc voltage at Rail").append(i)
                .append(" against Ground using HandMeter\n    needs Supply on\n    takes ").append(1 + random.nextInt(5)).append(" min\n    expects ")
                .append(volts).append(" V +/- 5 %\n    source \"Circuit, sheet ").append(1 + i % 9).append("\"\n    below  -> Replace").append(i)
                .append("\n    within -> ").append(next).append("\n    above  -> ").append(next).append("\n}\n");
        text.append("do Replace").append(i).append(" \"Replace converter ").append(i)
                .append("\" {\n    sets Supply off\n    takes 12 min\n    then -> Good").append(i).append("\n}\n");
        text.append("check Good").append(i).append(" \"Does it start three times running?\" {\n    verifies repair\n    takes 3 min\n    yes -> Found")
                .append(i).append("\n    no  -> OffHandOn\n}\n");
        text.append("conclude Found").append(i).append(" \"Converter ").append(i).append(" replaced\" {\n    finds Fault").append(i)
                .append("\n    report \"Converter ").append(i).append(" was dead.\"\n}\n");
    }
}

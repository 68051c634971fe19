/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

/** A procedure of any length to measure by: one rail after the other is read, and the converter behind it replaced. */
final class MadeProcedure {
    /** To be named MadeBench. */
    static final String LIBRARY = """
            library MadeBench "A bench made for measuring"
            condition Supply { off, on } live when on starts off ends off
            instrument HandMeter "Hand-held multimeter" {
                dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
            }
            point Ground "Chassis"
            """;
    private static final int STEPS_OF_A_RAIL = 4;
    private static final int OTHER_STEPS = 6;

    private MadeProcedure() {
    }

    /** How many rails so many steps have. */
    static int rails(int steps) {
        return (steps - OTHER_STEPS) / STEPS_OF_A_RAIL;
    }

    static String of(String name, int steps) {
        int rails = rails(steps);
        StringBuilder text = new StringBuilder("procedure " + name + " \"Made for measuring\"\n\nuses MadeBench\n"
                + "equipment \"Maker and model\" boards \"A\"\nrevision 1 draft\ncomplaints \"does not start\"\n\n");
        for (int i = 0; i < rails; i++) {
            text.append("point Rail%d \"TP%d\" carries up to 28 V dc source resistance 20 ohm\n".formatted(i, i));
            text.append("fault Fault%d \"Converter %d not running\" {\n    cases 3\n    shows Volts%d below\n    remedy Replace%d\n}\n".formatted(i, i, i, i));
        }
        text.append("""

                begin at SwitchOn

                do SwitchOn "Switch the supply on" {
                    sets Supply on
                    takes 1 min
                    then -> SeeIt
                }
                check SeeIt "Does it do what was reported?" {
                    confirms complaint
                    needs Supply on
                    takes 2 min
                    yes -> Volts0
                    no  -> OffNotSeen
                }
                """);
        for (int i = 0; i < rails; i++) {
            text.append(rail(i, i + 1 < rails ? "Volts" + (i + 1) : "OffHandOn"));
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
                """).toString();
    }

    private static String rail(int number, String next) {
        return """
                measure Volts%1$d "Rail %1$d under load" {
                    dc voltage at Rail%1$d against Ground using HandMeter
                    needs Supply on
                    takes 3 min
                    expects 12 V +/- 5 %%
                    source "Circuit, sheet 1"
                    below  -> Replace%1$d
                    within -> %2$s
                    above  -> %2$s
                }
                do Replace%1$d "Replace converter %1$d" {
                    sets Supply off
                    takes 12 min
                    then -> Good%1$d
                }
                check Good%1$d "Does it start three times running?" {
                    verifies repair
                    takes 3 min
                    yes -> Found%1$d
                    no  -> OffHandOn
                }
                conclude Found%1$d "Converter %1$d replaced" {
                    finds Fault%1$d
                    report "Converter %1$d was dead."
                }
                """.formatted(number, next);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import org.junit.jupiter.api.Assertions;

/** A text with the cursor at a bar, as a person would point at it. */
record Cursor(OpenText text, int offset) {
    static final String LAMP = """
            procedure LampDead "Lamp stays dark"

            condition Supply "Supply" { off, on } live when on starts off ends off

            instrument HandMeter "Hand meter" {
                dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
            }

            point Rail "C1, plus side" carries up to 28 V

            fault Blown "Lamp blown" {
                cases 3
                shows  SeeIt dark, RailVoltage within
                remedy Replace
            }

            begin at SeeIt

            check SeeIt "Does it light?" {
                confirms complaint
                takes 1 min
                dark  -> RailVoltage
                light -> NotSeen
            }

            measure RailVoltage "Rail while on" {
                dc voltage at Rail using HandMeter
                takes 2 min
                expects 24 V +/- 5 %
                source "sheet 1"
                within  -> Replace
                outside -> HandOn
            }

            do Replace "Put a new lamp in" {
                takes 3 min
                then -> Proof
            }

            check Proof "Does it light three times?" {
                verifies repair
                yes -> Found
                no  -> HandOn
            }

            conclude Found "Lamp blown" { finds Blown report "New lamp." }
            conclude NotSeen "Not seen" { finds nothing report "It lit." }
            conclude HandOn "Not solved" { refers to "the senior technician" report "Readings." }

            example "Blown" {
                SeeIt dark, RailVoltage 24 V, Replace done, Proof yes
                ends at Found within 10 min
            }
            """;

    static Cursor in(String marked) {
        int bar = marked.indexOf('|');
        Assertions.assertTrue(bar >= 0, "no bar in the text");
        return new Cursor(open(marked.substring(0, bar) + marked.substring(bar + 1)), bar);
    }

    /** In the lamp procedure, right after the first place where these words stand, which others replace. */
    static Cursor after(String words, String instead) {
        int at = LAMP.indexOf(words);
        Assertions.assertTrue(at >= 0, words);
        String text = LAMP.substring(0, at) + instead + LAMP.substring(at + words.length());
        return new Cursor(open(text), at + instead.length());
    }

    /** In the middle of the first place where these words stand. */
    static Cursor at(String words) {
        int at = LAMP.indexOf(words);
        Assertions.assertTrue(at >= 0, words);
        return new Cursor(open(LAMP), at + words.length() / 2);
    }

    static OpenText open(String text) {
        return new EditingServices().update("Lamp.procedure", text);
    }
}

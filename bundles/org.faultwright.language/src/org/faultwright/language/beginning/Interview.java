/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What somebody at the bench answers when asked for a procedure; each answer may still be missing.
 *
 * @param name       of the procedure: letters and digits, the first a letter
 * @param unit       maker and model
 * @param boards     the revisions of its boards
 * @param seen       what is seen, in a few words
 * @param complaints in the customer's words
 * @param supply     where its power comes from
 * @param hasCover   whether a cover comes off for repairs
 * @param causes     what it can be
 * @param signs      how one would tell
 * @param dangers    what can hurt, each with what is dangerous and what to do
 * @param store      where charge stays, if anywhere
 * @param meter      what is read with
 */
public record Interview(String name, String unit, String boards, String seen, List<String> complaints, Supply supply, boolean hasCover,
        List<Cause> causes, List<FaultSign> signs, Map<Danger, Caution> dangers, Optional<Store> store, Meter meter) {
    /** Where the power comes from, with what is done to switch it on and off. */
    public enum Supply {
        MAINS("the mains", "Plug in and switch on", "Switch off and pull the plug"),
        ADAPTER("an adapter or a low voltage", "Connect the supply and switch on", "Switch off and disconnect the supply"),
        BATTERY("a battery", "Fit the battery and switch on", "Switch off and take the battery out");

        private final String title;
        private final String on;
        private final String off;

        Supply(String title, String on, String off) {
            this.title = title;
            this.on = on;
            this.off = off;
        }

        public String title() {
            return title;
        }

        String on() {
            return on;
        }

        String off() {
            return off;
        }
    }

    /**
     * Something that may be broken.
     *
     * @param cases   how often it was met; empty counts as once
     * @param repair  what puts it right; empty where somebody else must
     * @param minutes that the repair takes; empty counts as five
     * @param shows   for each sign what is seen there with this fault; empty where nobody said
     */
    public record Cause(String words, String cases, String repair, String minutes, List<String> shows) {
        public Cause {
            shows = List.copyOf(shows);
        }

        String shown(int sign) {
            return sign < shows.size() ? shows.get(sign).strip() : "";
        }
    }

    /** @param what is dangerous @param avoid what to do so that nothing happens */
    public record Caution(String what, String avoid) {
    }

    /** @param where charge stays: across what @param most the highest voltage there, such as {@code 400 V} */
    public record Store(String where, String most) {
    }

    /** @param title make and kind @param ranges as the language writes them */
    public record Meter(String title, List<String> ranges) {
        /** An ordinary hand-held meter, to be put right from the data sheet of the own one. */
        public static final Meter USUAL = new Meter("Hand-held multimeter, 6000 counts", List.of(
                "dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm",
                "dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm",
                "dc voltage up to 600 V resolution 100 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm",
                "ac voltage up to 60 V resolution 10 mV accuracy 1.0 % of reading + 3 digits input 10 Mohm, 100 pF bandwidth 45 Hz .. 500 Hz true-rms",
                "ac voltage up to 600 V resolution 100 mV accuracy 1.0 % of reading + 3 digits input 10 Mohm, 100 pF bandwidth 45 Hz .. 500 Hz true-rms",
                "dc current up to 600 mA resolution 100 uA accuracy 1.0 % of reading + 3 digits burden 0.5 ohm",
                "dc current up to 10 A resolution 10 mA accuracy 1.5 % of reading + 3 digits burden 30 mohm",
                "resistance up to 600 ohm resolution 0.1 ohm accuracy 0.9 % of reading + 3 digits",
                "resistance up to 6 kohm resolution 1 ohm accuracy 0.9 % of reading + 2 digits",
                "resistance up to 60 kohm resolution 10 ohm accuracy 0.9 % of reading + 2 digits",
                "resistance up to 600 kohm resolution 100 ohm accuracy 0.9 % of reading + 2 digits",
                "resistance up to 6 Mohm resolution 1 kohm accuracy 1.5 % of reading + 3 digits",
                "capacitance up to 600 uF resolution 0.1 uF accuracy 3.0 % of reading + 5 digits",
                "frequency up to 60 kHz resolution 10 Hz accuracy 0.1 % of reading + 2 digits"));

        public Meter {
            ranges = List.copyOf(ranges);
        }
    }

    public Interview {
        complaints = List.copyOf(complaints);
        causes = List.copyOf(causes);
        signs = List.copyOf(signs);
        dangers = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(dangers));
    }

    /** The quantities that can be asked for, as the language writes them. */
    public static List<String> quantities() {
        return List.of("dc voltage", "ac voltage", "resistance", "dc current", "ac current", "capacitance", "frequency");
    }

    /** A name for the procedure from the unit and what is seen: {@code OllenbyFaintLabels}. */
    public static String suggestedName(String unit, String seen) {
        String first = unit.strip().split("\\s+")[0];
        String joined = new NamesFromWords().name(first + " " + seen, "My");
        return Beginning.isName(joined) ? joined : "MyProcedure";
    }

    /** A limit as the language writes it: {@code 24V ±5%} becomes {@code 24 V +/- 5 %}. */
    public static String limit(String words) {
        return Tables.value(words.replace("\u00b1", " +/- ").replaceAll("(?<![.])\\.\\.(?![.])", " .. ")
                .replaceAll("(?<=\\d)\\s*\u2013\\s*(?=\\d)", " .. ").replace("%", " %")).replaceAll("\\s+", " ").strip();
    }
}

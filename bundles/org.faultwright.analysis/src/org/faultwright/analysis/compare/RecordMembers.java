/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.faultwright.analysis.compare.Difference.Kind;

/** The parts of a procedure's records by their names: what they are about, and what a reader calls them. */
final class RecordMembers {
    /** What follows from the rest, or is only where something stands in its file. */
    private static final Set<String> IGNORED = Set.of("at", "problems", "revision", "uses", "libraries", "own", "name", "spelling", "variation", "elsewhere", "usualTime", "setUps");
    private static final Map<String, Kind> KINDS = Map.ofEntries(entry("expects", Kind.LIMITS), entry("range", Kind.LIMITS),
            entry("kind", Kind.LIMITS), entry("point", Kind.LIMITS), entry("against", Kind.LIMITS), entry("instrument", Kind.LIMITS),
            entry("sensor", Kind.LIMITS), entry("uncertainties", Kind.LIMITS), entry("unitDeviation", Kind.LIMITS),
            entry("formula", Kind.LIMITS), entry("limit", Kind.LIMITS), entry("adjusts", Kind.LIMITS), entry("readings", Kind.LIMITS), entry("rows", Kind.LIMITS),
            entry("statedRule", Kind.LIMITS), entry("ambient", Kind.LIMITS), entry("source", Kind.LIMITS), entry("needs", Kind.SAFETY),
            entry("sets", Kind.SAFETY), entry("hazards", Kind.SAFETY), entry("handles", Kind.SAFETY), entry("erases", Kind.SAFETY),
            entry("notes", Kind.SAFETY), entry("proves", Kind.SAFETY), entry("settings", Kind.SAFETY), entry("closesBy", Kind.SAFETY),
            entry("tests", Kind.SAFETY), entry("tries", Kind.SAFETY), entry("rated", Kind.SAFETY), entry("liveBecause", Kind.SAFETY), entry("repairs", Kind.SAFETY),
            entry("outcomes", Kind.OUTCOMES), entry("begin", Kind.OUTCOMES), entry("exits", Kind.OUTCOMES), entry("steps", Kind.STEPS),
            entry("faults", Kind.FAULTS), entry("examples", Kind.EXAMPLES));
    private static final Map<String, String> WORDS = Map.ofEntries(Map.entry("expects", "limit"), Map.entry("title", "words"),
            Map.entry("notes", "notes read"), Map.entry("takes", "time"), Map.entry("target", "leads to"), Map.entry("repeat", "bound"),
            Map.entry("kind", "quantity"), Map.entry("against", "against point"), Map.entry("confirms", "confirms the complaint"),
            Map.entry("verifies", "verifies the repair"), Map.entry("endsAt", "ends at"), Map.entry("possible", "shows"),
            Map.entry("word", "signal word"), Map.entry("begin", "begins at"), Map.entry("statedRule", "decision rule"),
            Map.entry("carries", "voltage carried"), Map.entry("drainedBy", "drained by"), Map.entry("waits", "wait"), Map.entry("adjusts", "settings"), Map.entry("number", "part number"),
            Map.entry("stock", "how many at hand"), Map.entry("uncertainties", "uncertainty"), Map.entry("unitDeviation", "how much good units vary"),
            Map.entry("calibrationDue", "calibrated until"), Map.entry("calibrationEvery", "calibrated every"),
            Map.entry("validAt", "valid at"), Map.entry("ambient", "temperature of the bench"), Map.entry("document", "source"),
            Map.entry("refersTo", "refers to"), Map.entry("findsNothing", "finds nothing"), Map.entry("tests", "protective tests"),
            Map.entry("tries", "tried first"), Map.entry("protection", "protection class"), Map.entry("liveBecause", "live because"),
            Map.entry("proved", "proved at"), Map.entry("points", "proved at"), Map.entry("upTo", "up to"), Map.entry("drains", "drains by"), Map.entry("of", "fault"));
    private RecordMembers() {
    }

    private static Map.Entry<String, Kind> entry(String name, Kind kind) {
        return Map.entry(name, kind);
    }

    static boolean isIgnored(String member) {
        return IGNORED.contains(member);
    }

    static Kind kind(String member, Kind surrounding) {
        return KINDS.getOrDefault(member, surrounding);
    }

    /** Of {@code sourceResistance}: {@code source resistance}. */
    static String words(String member) {
        return WORDS.getOrDefault(member, member.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT));
    }
}

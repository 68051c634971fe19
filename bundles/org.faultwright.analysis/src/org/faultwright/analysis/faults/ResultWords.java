/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.faultwright.procedure.Outcome;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/** How a result is written in an example or in what a fault shows. */
public final class ResultWords {
    private static final Pattern PLAIN = Pattern.compile("([0-9]+ )?[\\p{L}_][\\p{L}\\p{N}_]*");
    /** Words of the language that no result can be written as, unless in quotation marks. */
    private static final Set<String> TAKEN = Set.of("ac", "accuracy", "act", "against", "allowing", "ambient", "anything", "at", "avoid",
            "bandwidth", "becomes", "begin", "boards", "burden", "by", "calibrated", "carries", "category", "charged", "check",
            "complaint", "complaints", "compute", "conclude", "condition", "confirms", "consequence", "covers", "dated",
            "decide", "decides", "digest", "else", "ends", "equipment", "every", "example", "exits", "expects", "fault",
            "finds", "for", "from", "handles", "hazard", "hazards", "hint", "indicator", "input", "instrument", "least",
            "leaves", "library", "live", "means", "measure", "most", "note", "nothing", "observe", "of", "or", "over", "part",
            "perform", "point", "procedure", "proving", "rated", "refers", "remedy", "repair", "repairs", "report",
            "resolution", "revision", "routine", "shows", "source", "spread", "starts", "takes", "times", "to", "tools",
            "type", "under", "until", "up", "uses", "using", "valid", "verifies", "warns", "waveform", "weight", "when", "wipes", "with");
    private static final Exact TWO = Exact.of(2);
    private static final Exact TEN = Exact.of(10);

    private ResultWords() {
    }

    /** A word or code, in quotation marks where it needs them. */
    public static String written(String key) {
        return PLAIN.matcher(key).matches() && !TAKEN.contains(key) ? key : quoted(key);
    }

    static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    /** Words that lead to this outcome: its key, or for a range of readings without a label one of them. */
    static String leadingTo(Outcome outcome) {
        if (outcome.head() instanceof Outcome.Band band && band.label().isEmpty()) {
            return reading(band.limit().value());
        }
        return outcome.head() instanceof Outcome.AnythingElse ? quoted("something else") : written(outcome.key());
    }

    /** A reading within a limit: its nominal, an end that belongs to it, the middle, or a tenth beyond its only end. */
    private static String reading(Limit limit) {
        Interval interval = limit.interval();
        Optional<Quantity> end = limit.nominal().or(() -> limit.quantities().stream()
                .filter(quantity -> interval.contains(quantity.base())).findFirst());
        if (end.isPresent() || limit.quantities().isEmpty()) {
            return end.map(Quantity::spelling).orElse("");
        }
        Unit unit = limit.quantities().get(0).unit();
        if (interval.lower().isPresent() && interval.upper().isPresent()) {
            return ValueText.of(interval.lower().get().value().plus(interval.upper().get().value()).dividedBy(TWO), unit);
        }
        Exact only = interval.lower().or(interval::upper).orElseThrow().value();
        Exact beyond = unit.fromBase(only).absolute().dividedBy(TEN).max(Exact.ONE.dividedBy(TEN)).times(unit.factor());
        return ValueText.of(interval.lower().isPresent() ? only.plus(beyond) : only.minus(beyond), unit);
    }
}

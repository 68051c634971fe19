/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.order.OrderStudy;
import org.faultwright.quantity.Exact;

/** The order of the steps compared with the best one, in words, with the change of the text that brings it. */
public final class OrderReport {
    private static final int MOST_REASONS = 12;
    private static final Exact SECONDS_IN_A_MINUTE = Exact.of(60);

    private OrderReport() {
    }

    /** @param subject a procedure */
    public static ProposedChange of(Subject subject) {
        OrderStudy study = OrderStudy.in(subject).orElseThrow();
        if (study.best().isEmpty()) {
            return new ProposedChange("not studied, because " + String.join("; ", study.notStudied()) + ".", List.of(), Optional.empty());
        }
        OrderStudy.Comparison best = study.best().get();
        Optional<OrderStudy.Verified> verified = BetterOrder.verified(subject);
        return verified.map(OrderReport::better).orElseGet(() -> new ProposedChange(minutes(best.before()) + " on average; " + noneWritten(best),
                study.inTheWay().stream().limit(MOST_REASONS).toList(), Optional.empty()));
    }

    private static ProposedChange better(OrderStudy.Verified verified) {
        OrderStudy.Comparison found = verified.comparison();
        List<String> lines = new ArrayList<>(List.of("Why:"));
        found.reasons().forEach(reason -> lines.add("  " + reason));
        if (!verified.dropped().isEmpty()) {
            lines.add("No longer needed, and taken out: " + String.join(", ", verified.dropped()) + ".");
        }
        found.presumed().forEach(presumed -> lines.add("It takes it that \"" + presumed + "\" shows for the faults of which the table does not say it."));
        if (!verified.otherEnds().isEmpty()) {
            lines.add("Where a unit has several faults at once, another of them is found first:");
            verified.otherEnds().stream().limit(MOST_REASONS).forEach(other -> lines.add("  " + other));
            if (verified.otherEnds().size() > MOST_REASONS) {
                lines.add("  and " + (verified.otherEnds().size() - MOST_REASONS) + " more");
            }
        }
        lines.add("The order, with the outcomes that lead on:");
        found.better().lines().forEach(line -> lines.add("  " + line));
        return new ProposedChange(minutes(found.before()) + " on average, " + minutes(found.after()) + " in the better order, "
                + minutes(found.saving()) + " saved.", lines, Optional.of(verified.fix()));
    }

    private static String noneWritten(OrderStudy.Comparison best) {
        if (best.saving().signum() > 0) {
            return "an order with " + minutes(best.after()) + " is known, and is not proposed, because of:";
        }
        return best.isBest() ? "no better order." : "no better order was found; none has less than " + minutes(best.bound()) + ".";
    }

    private static String minutes(Exact seconds) {
        return seconds.dividedBy(SECONDS_IN_A_MINUTE).toDecimal(2).setScale(1, RoundingMode.HALF_UP).toPlainString() + " min";
    }
}

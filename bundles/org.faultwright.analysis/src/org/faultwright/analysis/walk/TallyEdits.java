/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;

/** What a tally would change in the text: the cases of the faults, and the times of steps that take otherwise than they say. */
public final class TallyEdits {
    /** Fewer visits than this say nothing of how long a step takes. */
    public static final int FEWEST_VISITS = 5;
    /** A time within a quarter of what is stated, or ten seconds, is left as it is. */
    private static final int QUARTER = 4;
    private static final int TEN_SECONDS = 10;

    private TallyEdits() {
    }

    /** One for each fault whose cases the records change; each says what it rests on. */
    public static List<Fix> cases(Tally tally) {
        List<Fix> edits = new ArrayList<>();
        for (Tally.FaultCases one : tally.cases()) {
            if (one.met().signum() > 0) {
                String number = Exact.of(one.together().toDecimal(1)).toString();
                String title = one.fault().name() + ": cases " + number + ", " + one.prior() + " of the text and "
                        + Exact.of(one.met().toDecimal(1)) + " of the records";
                one.fault().cases().map(Written::at).map(at -> Fix.replacing(title, at, number))
                        .or(() -> brace(one.fault().at(), one.fault().name().at().end())
                                .map(at -> Fix.replacing(title, at, "{\n    cases " + number))).ifPresent(edits::add);
            }
        }
        return List.copyOf(edits);
    }

    private static Optional<SourceRange> brace(SourceRange block, int from) {
        int at = Remarks.blanked(block.source().content()).indexOf('{', from);
        return at < 0 || at >= block.end() ? Optional.empty() : Optional.of(new SourceRange(block.source(), at, 1));
    }

    /** One for each step of the text that states its time and took otherwise. */
    public static List<Fix> takes(Tally tally) {
        List<Fix> edits = new ArrayList<>();
        for (Tally.Spent one : tally.spent()) {
            Optional<Written<Quantity>> stated = one.step().frame().takes();
            if (stated.isEmpty() || ClosingStep.is(one.step()) || one.visits() < FEWEST_VISITS || !stated.get().value().unit().isKnown()) {
                continue;
            }
            Exact wait = one.step().frame().waits().map(waits -> waits.value().base()).orElse(Exact.ZERO);
            Exact took = Exact.of(one.median()).max(wait);
            Exact says = stated.get().value().base();
            Exact apart = took.minus(says).absolute();
            if (apart.times(QUARTER).compareTo(says) > 0 && apart.compareTo(Exact.of(TEN_SECONDS)) > 0) {
                String words = words(took, wait);
                boolean ofRoutine = stated.get().at().length() == 0;
                edits.add(Fix.replacing(one.step().name() + ": takes " + words + ", the median of " + one.visits() + " visits, where the text says "
                        + stated.get().value().spelling(), stated.get().at(), ofRoutine ? "    takes " + words + "\n" : words));
            }
        }
        return List.copyOf(edits);
    }

    /** Whether the records would make a step shorter than its author thought right. */
    public static boolean shortens(Tally tally) {
        return tally.spent().stream().filter(one -> one.visits() >= FEWEST_VISITS).anyMatch(one -> one.step().frame().takes()
                .filter(says -> says.value().unit().isKnown() && says.value().base().compareTo(Exact.of(one.median())) > 0).isPresent());
    }

    /** To ten seconds up to three minutes, then to whole minutes; never nothing, and never less than the step waits. */
    private static String words(Exact seconds, Exact wait) {
        long whole = Math.max(1, Math.round(seconds.doubleValue()));
        long tens = Math.round(whole / 10.0) * 10;
        int unit = whole < TEN_SECONDS ? 1 : tens < 180 && tens % 60 != 0 ? 10 : 60;
        long units = Math.max(Math.round((double) whole / unit), (long) Math.ceil(wait.doubleValue() / unit));
        return unit == 60 ? units + " min" : units * unit + " s";
    }
}

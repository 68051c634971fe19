/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.SourceRange;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/** A unit that is spelt like none; the near one is proposed. */
public final class UnknownUnit implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unknown-unit", Severity.ERROR, Group.QUANTITIES,
            "A unit is spelt like none that is known.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.READINGS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        StatedQuantities.of(subject).stream()
                .filter(stated -> stated.quantity().unit().status() == Unit.Status.UNKNOWN)
                .forEach(stated -> report(stated, findings));
    }

    private static void report(StatedQuantity stated, Findings findings) {
        String written = stated.quantity().unit().symbol();
        Optional<String> near = stated.wanted().behindPrefix(written).or(() -> stated.wanted().kind()
                .map(kind -> Units.nearest(written, kind)).orElseGet(() -> Units.nearest(written)));
        Optional<SourceRange> unit = stated.place().get().flatMap(place -> tail(place, written));
        Fix[] fixes = near.isPresent() && unit.isPresent()
                ? new Fix[] {Fix.replacing("Write " + near.get(), unit.get(), near.get())} : new Fix[0];
        String usual = stated.wanted().usualUnit();
        findings.report(unit.orElse(stated.at()), "There is no unit \"" + written + "\" for " + stated.wanted().what() + ".",
                near.map(one -> "Write \"" + one + "\" if that is meant.")
                        .orElse(usual.isEmpty() ? "Write a unit such as \"V\", \"kohm\" or \"min\"."
                                : "Write one such as \"" + usual + "\"."), fixes);
    }

    private static Optional<SourceRange> tail(SourceRange place, String unit) {
        boolean ends = place.text().endsWith(unit) && !unit.isEmpty();
        return ends ? Optional.of(new SourceRange(place.source(), place.end() - unit.length(), unit.length()))
                : Optional.empty();
    }
}

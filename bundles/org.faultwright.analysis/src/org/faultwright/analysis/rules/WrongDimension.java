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

/** A resistance where a voltage is meant, or the like. */
public final class WrongDimension implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("wrong-dimension", Severity.ERROR, Group.QUANTITIES,
            "A quantity of another kind than the one that is meant.");

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
        StatedQuantities.of(subject).stream().filter(stated -> stated.wanted().refuses(stated.quantity()))
                .forEach(stated -> report(stated, findings));
    }

    private static void report(StatedQuantity stated, Findings findings) {
        WantedQuantity wanted = stated.wanted();
        String meant = wanted.level() ? "a level" : DimensionWords.of(wanted.dimensions().get(0));
        Optional<SourceRange> place = stated.place().get();
        String unit = wanted.behindPrefix(stated.quantity().unit().symbol()).orElse(wanted.usualUnit());
        String number = stated.quantity().value().toString();
        Fix[] fixes = place.isPresent() && !unit.isEmpty() && stated.quantity().value().isDecimal()
                ? new Fix[] {Fix.replacing("Write " + number + " " + unit, place.get(), number + " " + unit)} : new Fix[0];
        findings.report(stated.at(), stated.quantity().spelling() + " is " + DimensionWords.of(stated.quantity()) + ", and "
                + wanted.what() + " is " + meant + ".", "Write " + meant
                + (unit.isEmpty() ? "." : ", as in " + number + " " + unit + "."),
                fixes);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;

/** A dc reading where ac is carried, an ac reading of the size of the dc carried, or a formula that mixes them. */
public final class AcDcMixed implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("ac-dc-mixed", Severity.WARNING, Group.QUANTITIES,
            "Values of dc, ac rms and ac peak are taken for one another.");
    /** An ac reading on a dc rail is its ripple; one of a tenth of the rail or more is no ripple. */
    private static final Exact RIPPLE = Exact.ratio(1, 10);

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
        for (StepGraph graph : subject.graphs()) {
            FormulaTypes types = new FormulaTypes(graph);
            for (Step step : graph.steps()) {
                if (step instanceof Step.Measure measure) {
                    measure(measure, subject, findings);
                    proof(measure, subject, findings);
                } else if (step instanceof Step.Calculate calculate && calculate.formula().isPresent()) {
                    types.mixtures(calculate).forEach(mixture -> findings.report(calculate.formula().get().at(), mixture,
                            "Measure both in one way: a sine of 1 V rms has a peak of 1.414 V and a mean of 0 V."));
                }
            }
        }
    }

    private static void measure(Step.Measure step, Subject subject, Findings findings) {
        Optional<Point.Carried> carried = step.point().flatMap(subject.scope()::point).flatMap(Point::carries);
        if (step.kind().isEmpty() || carried.isEmpty() || !step.kind().get().value().isVoltage()) {
            return;
        }
        QuantityKind measured = step.kind().get().value();
        QuantityKind there = carried.get().kind();
        boolean ripple = there == QuantityKind.DC_VOLTAGE && !expectsMoreThanRipple(step, measured, carried.get());
        if (measured != there && !ripple) {
            findings.report(isHazardous(carried.get()) ? Severity.ERROR : Severity.WARNING, step.kind().get().at(),
                    step.name() + " measures " + measured.words() + " at "
                    + step.point().get()
                    + ", which carries " + carried.get().upTo().value() + " of " + there.words() + ".",
                    "Measure " + there.words() + " there, or correct what the point carries.");
        }
    }

    /** Stored charge is direct voltage: an ac range shows next to nothing of it, however much there is. */
    private static void proof(Step.Measure step, Subject subject, Findings findings) {
        if (step.kind().map(kind -> kind.value().isAlternating()).orElse(false)) {
            step.outcomes().stream().flatMap(outcome -> outcome.proves().stream())
                    .filter(setting -> subject.scope().condition(setting.condition()).map(condition -> !condition.charged().isEmpty()
                            && condition.charged().stream().noneMatch(value -> value.text().equals(setting.value().text()))).orElse(false))
                    .findFirst().ifPresent(setting -> findings.report(step.kind().get().at(), step.name() + " measures "
                            + step.kind().get().value().words() + " to prove " + setting.condition() + " " + setting.value()
                            + ", and stored charge is dc voltage.", "Measure dc voltage there."));
        }
    }

    /** A dc range on mains shows next to nothing of it, and an ac range on a charged bank as well: beyond IEC 61140's 50 V ac and 120 V dc. */
    private static boolean isHazardous(Point.Carried carried) {
        Exact limit = Exact.of(carried.kind() == QuantityKind.DC_VOLTAGE ? 120 : carried.kind() == QuantityKind.AC_VOLTAGE_PEAK ? 70 : 50);
        return carried.upTo().value().fits(carried.kind()) && carried.upTo().value().base().absolute().compareTo(limit) > 0;
    }

    private static boolean expectsMoreThanRipple(Step.Measure step, QuantityKind measured, Point.Carried carried) {
        if (step.expects().isEmpty() || !step.expects().get().limit().value().fits(measured)
                || !carried.upTo().value().fits(carried.kind())) {
            return false;
        }
        Optional<Exact> lowest = step.expects().get().limit().value().interval(measured).lower().map(Bound::value);
        Exact most = carried.upTo().value().base().absolute().times(RIPPLE);
        return lowest.map(low -> low.compareTo(most) > 0).orElse(false);
    }
}

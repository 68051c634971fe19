/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.QuantityKind;

/** Work on a dangerous live circuit with no tool that is made for it. */
public final class LiveToolUnfit implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("live-tool-unfit", Severity.ERROR, Group.STATE,
            "A step works live on a dangerous voltage and names no tool rated for it.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).ifPresent(paths -> UnitVoltage.of(paths).dangerous().ifPresent(point ->
                places(paths).filter(place -> mayBeLive(paths, place.step()))
                        // a reading is taken with an instrument, which rules of its own hold against the point
                        .filter(place -> !(place.step() instanceof Step.Measure)).filter(place -> !hasFitting(place.step(), point))
                        .forEach(place -> report(place, point, findings))));
    }

    /** One place of each step that says why it is done live, those of routines too. */
    static Stream<InlinedStep> places(ProcedurePaths paths) {
        Set<Step> seen = new HashSet<>();
        return paths.map().places().stream().filter(paths::reaches).filter(place -> LiveWork.saysWhy(place.step()) && seen.add(place.step()));
    }

    /** Whether something may be live when the step begins, though the step switch it off at its end. */
    static boolean mayBeLive(ProcedurePaths paths, Step step) {
        return paths.map().places().stream().filter(place -> place.step() == step)
                .flatMap(place -> paths.bench().at(place).stream()).anyMatch(state -> paths.bench().live().stream().anyMatch(state::isLive));
    }

    private static boolean hasFitting(Step step, Point point) {
        return step.frame().precautions().rated().stream().map(tool -> tool.upTo().value())
                .anyMatch(upTo -> upTo.fits(QuantityKind.DC_VOLTAGE) && upTo.base().compareTo(UnitVoltage.volts(point)) >= 0);
    }

    private static void report(InlinedStep place, Point point, Findings findings) {
        findings.report(PlaceText.at(place, place.step().frame().precautions().liveBecause().orElseThrow().at()), PlaceText.subject(place)
                + " is done live, and none of its tools is rated for the " + point.carries().orElseThrow().upTo().value()
                + " at " + point.name() + ".",
                "Name the tool that goes in after \"tools\", with its rating after \"rated\", such as 1000 V (IEC 60900).");
    }
}

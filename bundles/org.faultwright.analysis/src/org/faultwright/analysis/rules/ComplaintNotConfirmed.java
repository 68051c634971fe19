/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Predicate;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Routes;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** A unit is changed, or a fault found, before anyone has seen what was complained of. */
public final class ComplaintNotConfirmed implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("complaint-not-confirmed", Severity.WARNING, Group.PATHS,
            "A unit is changed or a fault found on a path on which nobody has confirmed the complaint.");

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
        ProcedurePaths.of(subject).ifPresent(paths -> {
            Procedure procedure = paths.map().procedure();
            if (procedure.complaints().isEmpty() && procedure.faults().isEmpty()) {
                return;
            }
            Repairs repairs = new Repairs(procedure);
            Predicate<InlinedStep> tooEarly = place -> repairs.isChange(place) || Repairs.findsFault(place);
            Routes.Reach unconfirmed = paths.routes().upTo(tooEarly,
                    place -> place.confirmsComplaint() && !tooEarly.test(place));
            Set<String> reported = new HashSet<>();
            paths.map().places().stream().filter(tooEarly).filter(unconfirmed::has)
                    .filter(place -> reported.add(place.outermost().label()))
                    .forEach(place -> report(paths, place, unconfirmed, findings));
        });
    }

    private static void report(ProcedurePaths paths, InlinedStep place, Routes.Reach unconfirmed, Findings findings) {
        findings.report(PlaceText.at(place), "A path comes to " + place.label() + " without a step that confirms the complaint.",
                "See the fault with your own eyes first: say \"confirms complaint\" at the step that shows it.",
                unconfirmed.path(place).orElseThrow(), fixes(paths));
    }

    private static Fix[] fixes(ProcedurePaths paths) {
        return paths.map().begin().map(InlinedStep::step)
                .filter(step -> step.answer().isFromTheUnit())
                .map(step -> new Fix[] {FrameLine.added("Let " + step.name() + " confirm the complaint", step,
                        "confirms complaint")}).orElseGet(() -> new Fix[0]);
    }
}

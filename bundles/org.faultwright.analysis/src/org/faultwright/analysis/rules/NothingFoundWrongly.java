/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Routes;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;

/** A conclusion that finds nothing, where a reading was out of its limit or something was repaired: a unit that is not sound goes back as one that is. */
public final class NothingFoundWrongly implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("nothing-found-wrongly", Severity.WARNING, Group.FAULTS,
            "A reading out of its limit, or a repair, leads to a conclusion that finds nothing.");

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
            List<InlinedStep> ends = paths.map().places().stream().filter(NothingFoundWrongly::findsNothing).filter(paths::reaches).toList();
            if (ends.isEmpty()) {
                return;
            }
            Repairs repairs = new Repairs(paths.map().procedure());
            Set<String> reported = new HashSet<>();
            // what is asked or done on the way may explain the reading, or mend it
            Predicate<InlinedStep> decides = place -> place.isStep() && (place.step().outcomes().size() > 1 && !(place.step() instanceof Step.Perform)
                    || repairs.isChange(place));
            Set<InlinedStep> before = paths.routes().before(ends::contains, decides);
            paths.map().places().stream().filter(before::contains).filter(paths::reaches).filter(InlinedStep::isStep)
                    .filter(place -> place.step() instanceof Step.Measure || place.step() instanceof Step.Calculate).forEach(place ->
                            Results.normal(place.step(), paths.map().scope()).ifPresent(normal -> place.step().outcomes().stream()
                                    .filter(outcome -> !outcome.key().equals(normal.key()) && !outcome.normal() && isOut(place.step(), outcome)).forEach(outcome ->
                                            read(paths, place, outcome, ends, decides, findings, reported))));
            repaired(paths, repairs, ends, findings, reported);
        });
    }

    private static boolean findsNothing(InlinedStep place) {
        return place.step() instanceof Step.Conclude end && end.findsNothing().isPresent() && end.finds().isEmpty() && end.refersTo().isEmpty();
    }

    /** Of several bands another than the usual one may be as good; of two it is not. */
    private static boolean isOut(Step step, Outcome outcome) {
        return !(outcome.head() instanceof Outcome.Band) || step.outcomes().size() == 2;
    }

    private static void read(ProcedurePaths paths, InlinedStep place, Outcome outcome, List<InlinedStep> ends, Predicate<InlinedStep> decides,
            Findings findings, Set<String> reported) {
        Predicate<Transition> taken = way -> way.from() == place && way.outcome().filter(one -> one == outcome).isPresent();
        Set<InlinedStep> after = paths.routes().placesAfter(place, taken, decides);
        ends.stream().filter(after::contains).findFirst().filter(end -> reported.add(place.outermost().label() + " " + place.step().name() + " " + outcome.key()))
                .ifPresent(end -> findings.report(PlaceText.at(place, outcome.head().at()), PlaceText.subject(place) + " shows \"" + outcome.key()
                        + "\", which no sound unit does, and " + end.label() + " finds nothing.",
                        "Let it lead to a fault, to a question that explains it, or to a conclusion that refers the unit to someone.",
                        paths.routes().afterTaking(taken, decides).path(end).orElse(List.of())));
    }

    /** What is asked of the unit after a trial that failed may show that it was sound all along; the questions of a routine are part of the trial. */
    private static void repaired(ProcedurePaths paths, Repairs repairs, List<InlinedStep> ends, Findings findings, Set<String> reported) {
        Predicate<InlinedStep> asksOn = place -> place.isStep() && place.caller().isEmpty() && place.step().outcomes().size() > 1
                && !(place.step() instanceof Step.Perform) && !place.verifiesRepair() && place.step().frame().precautions().tests().isEmpty();
        Set<InlinedStep> before = paths.routes().before(ends::contains, asksOn);
        paths.map().places().stream().filter(before::contains).filter(paths::reaches).filter(repairs::isRepair)
                .filter(place -> reported.add(place.outermost().label())).forEach(place -> {
                    Routes.Reach after = paths.routes().after(one -> one == place, asksOn);
                    ends.stream().filter(after::has).findFirst().ifPresent(end -> findings.report(PlaceText.at(place), "After " + place.label()
                            + ", which repairs, a path comes to " + end.label() + ", which finds nothing.",
                            "Say there what was done: let it find the fault, or refer the unit to someone.", after.path(end).orElseThrow()));
                });
    }
}

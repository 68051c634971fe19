/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
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
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;

/** A charge proved absent with a meter that nobody tried before: a dead meter proves everything dead. */
public final class ProofMeterUntried implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("proof-meter-untried", Severity.ADVICE, Group.STATE,
            "A charge is proved absent with an instrument that was not tried on a known source before.");

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
            Set<String> reported = new HashSet<>();
            paths.map().places().stream().filter(place -> proves(place, subject)).flatMap(place -> meter(place).stream())
                    .map(Name::text).distinct().forEach(meter -> check(paths, meter, subject, findings, reported));
        });
    }

    private static Optional<Name> meter(InlinedStep place) {
        return place.step() instanceof Step.Measure measure ? measure.instrument() : Optional.empty();
    }

    private static boolean proves(InlinedStep place, Subject subject) {
        return place.isStep() && place.step() instanceof Step.Measure && place.step().outcomes().stream().flatMap(one -> one.proves().stream())
                .anyMatch(setting -> ChargeProofs.claimed(setting, subject).isPresent());
    }

    /** A proof behind one that is reported already is not reported again. */
    private static void check(ProcedurePaths paths, String meter, Subject subject, Findings findings, Set<String> reported) {
        Predicate<InlinedStep> proving = place -> proves(place, subject)
                && meter(place).filter(used -> used.text().equals(meter)).isPresent();
        Predicate<InlinedStep> trying = before -> before.isStep() && tries(before.step(), meter);
        Set<InlinedStep> idle = paths.map().places().stream().filter(trying).filter(place -> goesOnAnyway(paths, place, proving, trying)).collect(Collectors.toSet());
        Routes.Reach untried = paths.routes().upTo(proving, before -> trying.test(before) && !idle.contains(before));
        paths.map().places().stream().filter(proving).filter(untried::has)
                .filter(place -> reported.add(place.step().name().text() + " " + place.outermost().label()))
                .forEach(place -> findings.report(PlaceText.at(place, meter(place).orElseThrow().at()),
                        PlaceText.subject(place) + " proves a charge absent with " + meter + ", which no step before tries.",
                        "Try it on a known source, read, try it again; say at the step that does \"tries " + meter + "\".",
                        untried.path(place).orElseThrow()));
    }

    /** Whether every result comes to the proof by the same meter, and to no further trial of it. */
    private static boolean goesOnAnyway(ProcedurePaths paths, InlinedStep place, Predicate<InlinedStep> proving, Predicate<InlinedStep> trying) {
        return place.step().outcomes().size() > 1 && place.step().outcomes().stream().allMatch(outcome -> paths.routes().placesAfter(place,
                way -> way.outcome().filter(one -> one == outcome).isPresent(), trying).stream().anyMatch(proving));
    }

    private static boolean tries(Step step, String meter) {
        return !OutcomeEffects.areInVain(step) && step.frame().precautions().tries().stream().anyMatch(tried -> tried.text().equals(meter));
    }
}

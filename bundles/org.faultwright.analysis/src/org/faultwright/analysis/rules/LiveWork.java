/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.Closures;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.PartContact;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Hands or tools put into a circuit, or something opened, closed, connected or disconnected, while it may be live. */
public final class LiveWork implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("live-work", Severity.ERROR, Group.STATE,
            "A step handles a part, works inside, opens, closes, connects or disconnects while the circuit may be live.");

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
        ProcedurePaths.of(subject).filter(paths -> !paths.bench().live().isEmpty()).ifPresent(paths -> {
            Repairs repairs = new Repairs(paths.map().procedure());
            Set<String> reported = new HashSet<>();
            paths.map().places().stream().filter(place -> !saysWhy(place.step())).forEach(place ->
                    paths.bench().at(place).stream().filter(state -> touch(paths, repairs, state).isPresent()).findFirst()
                            .filter(state -> reported.add(place.outermost().label() + " " + place.step().name()))
                            .ifPresent(state -> report(paths, touch(paths, repairs, state).get(), state, findings)));
        });
    }

    /** Whether a step is done live on purpose. */
    static boolean saysWhy(Step step) {
        return step.frame().precautions().liveBecause().filter(reason -> !reason.value().isBlank()).isPresent();
    }

    /** What is done, what may be live, and the words that say so. */
    record Touch(String what, Condition live, SourceRange at) {
    }

    static Optional<Touch> touch(ProcedurePaths paths, Repairs repairs, BenchStates.State state) {
        return state.staysLive().flatMap(live -> handled(paths, state, live).or(() -> changed(paths, state, live))
                .or(() -> worked(paths, repairs, state, live)));
    }

    private static Optional<Touch> handled(ProcedurePaths paths, BenchStates.State state, Condition live) {
        return PartContact.inside(state, paths.map().scope()).stream()
                .filter(name -> !state.keepsAway(paths.map().scope().part(name).flatMap(part -> part.isolated())) || turns(paths, name))
                .findFirst().map(part -> new Touch("handles " + part, live, part.at()));
    }

    /** What is always isolated gives no shock and still turns while the unit runs. */
    private static boolean turns(ProcedurePaths paths, Name name) {
        return paths.map().scope().part(name).filter(part -> part.isolated().filter(isolated -> isolated.when().isEmpty()).isPresent()).stream()
                .flatMap(part -> part.hazards().stream()).anyMatch(hazard -> hazard.value() == Hazard.MOTION);
    }

    private static Optional<Touch> changed(ProcedurePaths paths, BenchStates.State state, Condition live) {
        return state.place().sets().stream().filter(setting -> changes(paths, state, setting)).findFirst()
                .map(setting -> new Touch("sets " + Contradictions.spoken(setting), live, setting.at()));
    }

    private static boolean changes(ProcedurePaths paths, BenchStates.State state, Setting setting) {
        return paths.map().scope().condition(setting.condition()).filter(Closures::isClosure)
                .filter(closure -> closure.has(setting.value()))
                .filter(closure -> !state.value(closure).text().equals(setting.value().text())).isPresent();
    }

    /** A repair, or tools in use, while the unit is open. Looking at an indicator takes no tool into it. */
    private static Optional<Touch> worked(ProcedurePaths paths, Repairs repairs, BenchStates.State state, Condition live) {
        InlinedStep place = state.place();
        return isWork(place, repairs) && state.isOpen() ? Optional.of(new Touch("works in the open unit", live, place.step().name().at()))
                : Optional.empty();
    }

    static boolean isWork(InlinedStep place, Repairs repairs) {
        return place.step() instanceof Step.Do && (repairs.isRepair(place) || !place.step().frame().tools().isEmpty())
                || place.step() instanceof Step.Check && !place.step().frame().tools().isEmpty();
    }

    private static void report(ProcedurePaths paths, Touch touch, BenchStates.State state, Findings findings) {
        InlinedStep place = state.place();
        findings.report(PlaceText.at(place, touch.at()),
                PlaceText.subject(place) + " " + touch.what() + " while " + touch.live().name() + " may be "
                        + state.value(touch.live()) + ", which is live.",
                "Make the circuit dead first. Where the trade works live on purpose, the step says why, after \"live because\".",
                state.path(), paths.states(touch.live()).map(states -> LiveMeasurement.fixes(paths, place, states))
                        .orElseGet(() -> new Fix[0]));
    }
}

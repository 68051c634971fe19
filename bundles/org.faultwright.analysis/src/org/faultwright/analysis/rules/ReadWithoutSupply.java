/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;

/** A voltage or a current that a sound unit is to show while nothing is live: it is missing in every unit, and what follows is a fault that none has. */
public final class ReadWithoutSupply implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("read-without-supply", Severity.WARNING, Group.STATE,
            "A voltage, a current or a code is to be seen, or a repair tried, at a step to which every path comes with nothing live.");

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
            boolean other = hasSourceOfItsOwn(paths);
            // nothing is ever switched on: one cause, one finding
            boolean never = paths.bench().all().noneMatch(state -> mayBeFed(paths, state));
            Set<String> reported = new HashSet<>();
            paths.map().places().stream().filter(place -> paths.reaches(place) && place.step() instanceof Step.Measure).forEach(place -> {
                List<BenchStates.State> states = paths.bench().at(place);
                if (!states.isEmpty() && states.stream().noneMatch(state -> mayBeFed(paths, state))) {
                    wanted(place, states.stream().anyMatch(state -> paths.bench().charged().stream().anyMatch(state::isCharged)), other, paths)
                            .filter(limit -> reported.add(never ? "" : place.step().name() + " " + place.outermost().label()))
                            .ifPresent(limit -> findings.report(isHigh((Step.Measure) place.step()) ? Severity.WARNING : Severity.ADVICE, PlaceText.at(place, limit.at()), PlaceText.subject(place) + " expects "
                                    + limit.value().spelling() + ", and nothing is live there on any path: no unit shows it.",
                                    "Switch on before, and say so at the step that does, or need it. Where something else feeds the point, say which condition is live.",
                                    states.get(0).path()));
                }
            });
            if (!other && !never) {
                shown(paths, findings, reported);
                tried(paths, findings, reported);
            }
        });
    }

    /** A lamp or a display with nothing to feed it shows nothing, whatever the unit has. */
    private static void shown(ProcedurePaths paths, Findings findings, Set<String> reported) {
        paths.map().places().stream().filter(place -> paths.reaches(place) && place.isStep() && place.step() instanceof Step.Observe look && look.indicator().isPresent())
                .filter(place -> isUnfed(paths, place)).forEach(place -> place.step().outcomes().stream()
                        .filter(outcome -> outcome.head() instanceof Outcome.Code && !outcome.key().equals(CodeUnknown.NONE)).max(Comparator.comparing(Outcome::normal))
                        .filter(outcome -> reported.add(place.step().name() + " " + place.outermost().label())).ifPresent(outcome -> findings.report(
                                outcome.normal() ? Severity.WARNING : Severity.ADVICE, PlaceText.at(place, outcome.head().at()), PlaceText.subject(place)
                                        + " looks for \"" + outcome.key() + "\", and nothing is live there on any path: no lamp lights and no display shows a code.",
                                "Look before switching off, or switch on before. Where a cell feeds it, say so: hazards battery.",
                                paths.bench().at(place).get(0).path())));
    }

    /** A repair inside that is tried with nothing live, where the complaint was seen with the supply on. What is mended outside may show by hand that it works. */
    private static void tried(ProcedurePaths paths, Findings findings, Set<String> reported) {
        List<InlinedStep> seen = paths.map().places().stream().filter(paths::reaches).filter(InlinedStep::confirmsComplaint).toList();
        if (seen.isEmpty() || !seen.stream().allMatch(place -> paths.bench().at(place).stream().allMatch(state -> mayBeFed(paths, state)))) {
            return;
        }
        Repairs repairs = new Repairs(paths.map().procedure());
        List<InlinedStep> inside = paths.map().places().stream().filter(paths::reaches).filter(repairs::isRepair)
                .filter(place -> paths.bench().at(place).stream().anyMatch(BenchStates.State::isOpen)).toList();
        paths.map().places().stream().filter(place -> paths.reaches(place) && place.verifiesRepair() && place.step() instanceof Step.Check)
                .filter(place -> paths.bench().at(place).stream().noneMatch(state -> mayBeFed(paths, state)))
                .filter(place -> inside.stream().anyMatch(repair -> paths.routes().placesAfter(repair, way -> true, one -> false).contains(place)))
                .filter(place -> reported.add(place.step().name() + " " + place.outermost().label()))
                .forEach(place -> paths.bench().at(place).stream().findFirst().ifPresent(state -> findings.report(Severity.ADVICE, PlaceText.at(place),
                        PlaceText.subject(place) + " verifies the repair with nothing live on any path; the complaint was seen with the supply on.",
                        "Switch on before, and let the step need it, unless the unit shows by hand that it works.", state.path())));
    }

    private static boolean isUnfed(ProcedurePaths paths, InlinedStep place) {
        List<BenchStates.State> states = paths.bench().at(place);
        return !states.isEmpty() && states.stream().noneMatch(state -> mayBeFed(paths, state) || paths.bench().charged().stream().anyMatch(state::isCharged));
    }

    /** Whether something is live here, or is made so by the step itself. */
    private static boolean mayBeFed(ProcedurePaths paths, BenchStates.State state) {
        return paths.bench().live().stream().anyMatch(condition -> state.isLive(condition) || state.place().sets().stream()
                .anyMatch(setting -> setting.condition().text().equals(condition.name().text()) && LiveMeasurement.isAmong(condition.live(), setting.value())));
    }

    private static boolean isHigh(Step.Measure step) {
        return ExpectedVoltages.dangerous(step).findAny().isPresent();
    }

    /**
     * A limit that zero does not keep. Direct voltage and current may come from a charge, from a cell or from a bench supply, and a small alternating
     * voltage from a generator or a hand that turns.
     */
    private static Optional<Written<Limit>> wanted(InlinedStep place, boolean charged, boolean other, ProcedurePaths paths) {
        return ((Step.Measure) place.step()).readings().stream().filter(reading -> !isCutOff(reading, paths))
                .flatMap(reading -> reading.kind().map(Written::value).filter(kind -> kind.isVoltage() || kind == QuantityKind.DC_CURRENT)
                        .filter(kind -> kind.isAlternating() ? isHigh(reading) : !charged && !other).stream().flatMap(kind -> ExpectedVoltages.sound(reading)
                                .filter(limit -> limit.value().fits(kind) && isAboveZero(limit.value(), kind)))).findFirst();
    }

    private static boolean isAboveZero(Limit limit, QuantityKind kind) {
        return ExpectedVoltages.nearest(limit.interval(kind)).compareTo(Exact.ZERO) > 0;
    }

    /** What lies drawn on the bench is fed by whoever reads it. */
    private static boolean isCutOff(Step.Measure reading, ProcedurePaths paths) {
        return reading.point().flatMap(paths.map().scope()::point).flatMap(Point::isolated).isPresent();
    }

    /** A cell, or a setting of voltage or current, which a bench supply has. */
    private static boolean hasSourceOfItsOwn(ProcedurePaths paths) {
        Stream<Hazard> declared = Stream.concat(paths.map().procedure().own().points().stream().flatMap(point -> point.hazards().stream()),
                paths.map().procedure().own().parts().stream().flatMap(part -> part.hazards().stream())).map(Written::value);
        Stream<Hazard> met = paths.map().places().stream().filter(paths::reaches).flatMap(place -> Stream.concat(
                place.hazards().stream().map(Written::value), place.notes().stream().flatMap(name -> covered(paths, name))));
        return Stream.concat(declared, met).anyMatch(hazard -> hazard == Hazard.BATTERY) || paths.map().places().stream()
                .filter(place -> paths.reaches(place) && place.step() instanceof Step.Do).flatMap(place -> ((Step.Do) place.step()).adjusts().stream())
                .flatMap(setting -> setting.kind().stream())
                .anyMatch(kind -> kind.value().isVoltage() || kind.value().isCurrent());
    }

    private static Stream<Hazard> covered(ProcedurePaths paths, Name note) {
        return paths.map().scope().note(note).stream().flatMap(one -> one.covers().stream()).map(Written::value);
    }
}

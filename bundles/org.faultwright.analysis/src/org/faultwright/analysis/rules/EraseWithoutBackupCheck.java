/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
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
import org.faultwright.analysis.paths.StepMap;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** An act that wipes data, come to without anyone having asked whether they are kept elsewhere. */
public final class EraseWithoutBackupCheck implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("erase-without-backup-check", Severity.ERROR, Group.SAFETY,
            "A step erases data on a path on which nobody has asked whether they are kept elsewhere.");

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
            Repairs repairs = new Repairs(paths.map().procedure());
            Predicate<InlinedStep> loses = place -> place.step() instanceof Step.Do task && (task.erases().isPresent()
                    || repairs.isRepair(place) && carrier(paths.map(), place).isPresent());
            Predicate<InlinedStep> wipes = place -> loses.test(place) && place.needs().stream().noneMatch(need -> isProvedOfData(paths.map(), need));
            Predicate<InlinedStep> asks = place -> asksAboutData(paths.map(), place);
            Set<InlinedStep> idle = idle(paths, asks, loses);
            Routes.Reach unasked = paths.routes().upTo(wipes, place -> asks.test(place) && !idle.contains(place));
            Set<String> reported = new HashSet<>();
            paths.map().places().stream().filter(wipes).filter(unasked::has)
                    .filter(place -> reported.add(place.outermost().label() + " " + place.step().name()))
                    .forEach(place -> report(paths, place, unasked, findings));
        });
    }

    /** The part with the customer's data that a step takes in hand. */
    private static Optional<Name> carrier(StepMap map, InlinedStep place) {
        return place.handles().stream().filter(name -> map.scope().part(name).stream().flatMap(part -> part.hazards().stream())
                .anyMatch(hazard -> hazard.value() == Hazard.DATA_LOSS)).findFirst();
    }

    /** The questions that decide nothing; one of them makes another idle that leads to it. */
    private static Set<InlinedStep> idle(ProcedurePaths paths, Predicate<InlinedStep> asks, Predicate<InlinedStep> loses) {
        Set<InlinedStep> idle = new HashSet<>();
        List<InlinedStep> questions = paths.map().places().stream().filter(asks).toList();
        boolean more = true;
        while (more) {
            more = idle.addAll(questions.stream().filter(place -> !idle.contains(place)).filter(place -> goesOnAnyway(paths, place, loses,
                    other -> other != place && asks.test(other) && !idle.contains(other))).toList());
        }
        return idle;
    }

    private static boolean goesOnAnyway(ProcedurePaths paths, InlinedStep place, Predicate<InlinedStep> loses, Predicate<InlinedStep> asksAgain) {
        return place.step().outcomes().stream().allMatch(outcome -> {
            Predicate<Transition> taken = way -> way.outcome().filter(one -> one == outcome).isPresent();
            return !paths.routes().placesAfter(place, taken, loses.negate()).isEmpty()
                    || isInevitable(paths, place, taken, loses, asksAgain) && isUnsaved(paths, place, taken, loses, asksAgain);
        });
    }

    /** Whether no path from the answer ends, or asks about data again, before something is lost. */
    private static boolean isInevitable(ProcedurePaths paths, InlinedStep place, Predicate<Transition> taken, Predicate<InlinedStep> loses,
            Predicate<InlinedStep> asksAgain) {
        return paths.routes().placesAfter(place, taken, other -> other == place || loses.test(other)).stream()
                .noneMatch(other -> other.step() instanceof Step.Conclude || asksAgain.test(other));
    }

    /** Whether some path from the answer comes to the loss past questions and readings alone; whatever is done on the way may save the data. */
    private static boolean isUnsaved(ProcedurePaths paths, InlinedStep place, Predicate<Transition> taken, Predicate<InlinedStep> loses,
            Predicate<InlinedStep> asksAgain) {
        return paths.routes().placesAfter(place, taken, other -> asksAgain.test(other) || other.step() instanceof Step.Do && !loses.test(other)).stream()
                .anyMatch(loses);
    }

    /** A question put in view of a note about data. */
    static boolean asksAboutData(StepMap map, InlinedStep place) {
        return place.step() instanceof Step.Check && place.step().outcomes().size() > 1 && !OutcomeEffects.areInVain(place.step())
                && readsAboutData(map, place);
    }

    private static boolean readsAboutData(StepMap map, InlinedStep place) {
        return place.notes().stream().flatMap(name -> map.scope().note(name).stream())
                .anyMatch(EraseWithoutBackupCheck::isAboutData);
    }

    private static boolean isAboutData(Note note) {
        return note.covers().stream().anyMatch(covered -> covered.value() == Hazard.DATA_LOSS);
    }

    /** A condition that does not hold from the start, and only a question or a step read about data brings about. */
    private static boolean isProvedOfData(StepMap map, Setting need) {
        Optional<Condition> condition = map.scope().condition(need.condition()).filter(one -> one.has(need.value()));
        List<Transition> setting = map.ways().stream().filter(way -> sets(way, need)).toList();
        boolean atStart = condition.map(one -> isSame(one.starts().orElse(one.values().get(0)), need.value())
                || one.becomes().stream().anyMatch(becomes -> isSame(becomes.value(), need.value()))).orElse(true);
        return !atStart && !setting.isEmpty() && setting.stream().allMatch(way -> readsAboutData(map, way.from())
                || way.from().step() instanceof Step.Check && way.from().sets().isEmpty());
    }

    private static boolean sets(Transition way, Setting need) {
        Predicate<Setting> same = one -> isSame(one.condition(), need.condition()) && isSame(one.value(), need.value());
        return way.from().sets().stream().anyMatch(same)
                || way.outcome().map(Outcome::proves).orElse(List.of()).stream().anyMatch(same);
    }

    private static boolean isSame(Name one, Name other) {
        return one.text().equals(other.text());
    }

    private static void report(ProcedurePaths paths, InlinedStep place, Routes.Reach unasked, Findings findings) {
        Step.Do task = (Step.Do) place.step();
        Optional<Name> carrier = carrier(paths.map(), place);
        String what = task.erases().map(Written::value).orElseGet(() -> "what is stored on " + carrier.orElseThrow());
        findings.report(task.erases().isPresent() ? Severity.ERROR : Severity.WARNING,
                PlaceText.at(place, task.erases().map(Written::at).orElseGet(() -> carrier.orElseThrow().at())),
                "A path comes to " + place.label() + ", which " + (task.erases().isPresent() ? "erases " : "takes away ") + what
                        + ", and no check asks before whether that is kept elsewhere.",
                "Ask before, by a check that \"notes\" a note about data, or need a condition that such a check proves.",
                unasked.path(place).orElseThrow(), fixes(paths, place, what));
    }

    private static Fix[] fixes(ProcedurePaths paths, InlinedStep place, String what) {
        Optional<Note> note = paths.map().scope().notes().stream().filter(EraseWithoutBackupCheck::isAboutData).findFirst();
        if (note.isEmpty() || place.caller().isPresent()) {
            return new Fix[0];
        }
        StepInsertion insertion = new StepInsertion(paths.map().procedure(), place.step());
        insertion.turnAll(paths.map().ways(), place);
        String name = insertion.freeName("DataKept");
        HandingOn handingOn = new HandingOn(paths.map().procedure(), insertion);
        List<String> lines = new ArrayList<>(List.of(
                "check " + name + " " + Quotation.onOneLine("Is this kept elsewhere, or does the customer agree to lose it: "
                        + what + "?") + " {",
                "    notes " + note.get().name(),
                "    takes 1 min",
                "    yes -> " + place.label(),
                "    no -> " + handingOn.target(),
                "}"));
        lines.addAll(handingOn.lines());
        return new Fix[] {insertion.fix("Ask before " + place.label() + " erases anything", name, lines)};
    }
}

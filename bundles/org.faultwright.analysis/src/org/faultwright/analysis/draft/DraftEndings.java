/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.faultwright.analysis.faults.DraftSteps;
import org.faultwright.analysis.faults.RepairSteps;
import org.faultwright.analysis.paths.Understood;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;

/** The steps at both ends of a draft: what confirms the complaint and verifies a repair, the conclusions; those declared first. */
final class DraftEndings {
    private static final int MOST_BETWEEN = 8;
    private final Procedure procedure;
    private final DraftSteps steps;
    private final SourceRange here;

    DraftEndings(Procedure procedure, DraftSteps steps) {
        this.procedure = procedure;
        this.steps = steps;
        this.here = procedure.name().at();
    }

    Optional<Step> declaredConfirmation() {
        return steps.all().stream().filter(step -> step.frame().confirms().isPresent()
                && procedure.step(step.name()).isPresent()).findFirst();
    }

    Step confirmation() {
        return declaredConfirmation().orElseGet(() -> steps.made("confirm", () -> new Step.Check(
                new Name(steps.free("SeeIt"), here),
                "Do you see the complaint yourself?", confirmingFrame(), DraftSteps.outcomes(List.of("yes", "no"), here), here)));
    }

    private StepFrame confirmingFrame() {
        StepFrame plain = StepFrame.PLAIN;
        return new StepFrame(plain.needs(), plain.setUps(), plain.sets(), plain.notes(), plain.handles(), plain.takes(), plain.tools(),
                plain.hazards(), Optional.of(here), plain.verifies(), plain.source(), plain.hint(), plain.waits(), plain.pictures(), plain.precautions());
    }

    /**
     * The step that the author lets follow the act and that verifies the repair; else one declared for it, or a routine that does; else the
     * one that confirmed the complaint, asked again.
     */
    Step verification(Step act) {
        return following(act).or(this::declaredVerification).or(() -> byRoutine(act)).orElseGet(() -> steps.made("try " + act.name(), () -> {
            StepFrame plain = StepFrame.PLAIN;
            StepFrame seen = declaredConfirmation().map(Step::frame).orElse(plain);
            StepFrame frame = new StepFrame(seen.needs(), seen.setUps(), plain.sets(), seen.notes(), plain.handles(), seen.takes(),
                    plain.tools(),
                    plain.hazards(), plain.confirms(), Optional.of(here), plain.source(), plain.hint(), plain.waits(), plain.pictures(), plain.precautions());
            return new Step.Check(new Name(steps.free("Try" + act.name()), here), "Is the complaint gone?", frame,
                    DraftSteps.outcomes(List.of("yes", "no"), here), here);
        }));
    }

    /** What stands behind an act in the text as it is, past steps that ask nothing. */
    private Optional<Step> following(Step act) {
        Optional<Step> at = procedure.step(act.name());
        for (int i = 0; i < MOST_BETWEEN && at.isPresent(); i++) {
            at = at.get().outcomes().size() == 1 ? at.get().outcomes().get(0).target().map(Name::text).map(ClosingStep::written)
                    .flatMap(steps::step) : Optional.empty();
            if (at.filter(this::verifies).isPresent()) {
                return at;
            }
        }
        return Optional.empty();
    }

    private boolean verifies(Step step) {
        return step.outcomes().size() > 1 && RepairSteps.verifies(step, procedure.scope());
    }

    private Optional<Step> declaredVerification() {
        return steps.all().stream().filter(step -> procedure.step(step.name()).isPresent() && verifies(step)
                && !(step instanceof Step.Do)).findFirst();
    }

    /** A routine that verifies and says which of its exits is the good one. */
    private Optional<Step> byRoutine(Step act) {
        return procedure.scope().routines().stream().filter(routine -> routine.exits().size() > 1 && routine.normalExit().isPresent()
                && routine.steps().stream().anyMatch(step -> RepairSteps.verifies(step, procedure.scope()))).findFirst()
                .map(routine -> steps.made("try " + act.name() + " by " + routine.name(), () -> new Step.Perform(
                        new Name(steps.free("Try" + act.name()), here), routine.title(), Optional.of(routine.name()), StepFrame.PLAIN,
                        DraftSteps.outcomes(routine.exits().stream().map(Name::text).toList(), here), here)));
    }

    /** The outcome, by its place, that says that the repair has held. */
    int passing(Step verification) {
        List<String> keys = verification.outcomes().stream().map(Outcome::key).toList();
        Optional<String> normal = Results.normal(verification, procedure.scope()).map(Outcome::key).or(() -> verification.outcomes().stream()
                .filter(outcome -> outcome.target().map(Name::text).map(ClosingStep::written).flatMap(steps::step)
                        .filter(step -> step instanceof Step.Conclude conclude && !conclude.finds().isEmpty()).isPresent())
                .map(Outcome::key).findFirst());
        return normal.map(keys::indexOf).orElseGet(() -> keys.contains(Step.WITHIN) ? keys.indexOf(Step.WITHIN) : Math.max(0, keys.indexOf("yes")));
    }

    Step notSeen() {
        return ending("NotSeen", conclude -> conclude.findsNothing().isPresent(), () -> new Step.Conclude(
                new Name(steps.free("NotSeen"), here), "Complaint not seen", List.of(), Optional.of(here), Optional.empty(),
                written("The complaint was not seen on our bench. No fault found."), StepFrame.PLAIN, here));
    }

    Step handOn() {
        return ending("NotSolved", conclude -> conclude.refersTo().isPresent() && conclude.finds().isEmpty(), () ->
                new Step.Conclude(new Name(steps.free("NotSolved"), here), "Fault outside this procedure", List.of(),
                        Optional.empty(), written("Senior technician"),
                        written("The cause was not found here. Referred."), StepFrame.PLAIN, here));
    }

    Step conclusion(List<Fault> found, boolean repaired) {
        Set<String> names = found.stream().map(fault -> fault.name().text()).collect(Collectors.toCollection(LinkedHashSet::new));
        String title = String.join(" or ", found.stream().map(DraftEndings::title).toList());
        return ending("found " + names, conclude -> conclude.finds().stream().map(Name::text).collect(Collectors.toSet())
                .equals(names), () -> found.size() == 1 && repaired && steps.step(found.get(0).name().text()).isEmpty() ? Understood.conclusion(found.get(0))
                        : new Step.Conclude(new Name(steps.free("Found" + found.get(0).name()), here), title,
                        found.stream().map(Fault::name).toList(), Optional.empty(),
                        repaired ? Optional.empty() : written("Senior technician"),
                        written(title + (repaired ? ". Repaired and tried." : ". Referred.")), StepFrame.PLAIN, here));
    }

    private static String title(Fault fault) {
        return fault.title().isBlank() ? DraftSteps.title(fault.name().text()) : fault.title();
    }

    private Step ending(String key, Predicate<Step.Conclude> fits, Supplier<Step> maker) {
        Optional<Step> declared = procedure.steps().stream().filter(step -> step instanceof Step.Conclude conclude
                && fits.test(conclude)).findFirst().flatMap(step -> steps.step(step.name().text()));
        return declared.orElseGet(() -> steps.made(key, maker));
    }

    private Optional<Written<String>> written(String text) {
        return Optional.of(new Written<>(text, here));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;

/** The steps at both ends of a draft: what confirms the complaint and verifies a repair, the conclusions; those declared first. */
final class DraftEndings {
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
        return new StepFrame(plain.needs(), plain.sets(), plain.notes(), plain.handles(), plain.takes(), plain.tools(),
                plain.hazards(), Optional.of(here), plain.verifies(), plain.source(), plain.hint(), plain.waits(), plain.precautions());
    }

    /** The step declared for it, else the one that confirmed the complaint, asked again. */
    Step verification(Step act) {
        Optional<Step> declared = steps.all().stream().filter(step -> step.frame().verifies().isPresent()
                && step.outcomes().size() > 1 && procedure.step(step.name()).isPresent()).findFirst();
        return declared.orElseGet(() -> steps.made("try " + act.name(), () -> {
            StepFrame plain = StepFrame.PLAIN;
            StepFrame seen = declaredConfirmation().map(Step::frame).orElse(plain);
            StepFrame frame = new StepFrame(seen.needs(), plain.sets(), seen.notes(), plain.handles(), seen.takes(),
                    plain.tools(),
                    plain.hazards(), plain.confirms(), Optional.of(here), plain.source(), plain.hint(), plain.waits(), plain.precautions());
            return new Step.Check(new Name(steps.free("Try" + act.name()), here), "Is the complaint gone?", frame,
                    DraftSteps.outcomes(List.of("yes", "no"), here), here);
        }));
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
                        written("The usual causes are ruled out. Referred."), StepFrame.PLAIN, here));
    }

    Step conclusion(List<Fault> found, boolean repaired) {
        Set<String> names = found.stream().map(fault -> fault.name().text()).collect(Collectors.toCollection(LinkedHashSet::new));
        String title = String.join(" or ", found.stream().map(DraftEndings::title).toList());
        return ending("found " + names, conclude -> conclude.finds().stream().map(Name::text).collect(Collectors.toSet())
                .equals(names), () -> new Step.Conclude(new Name(steps.free("Found" + found.get(0).name()), here), title,
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

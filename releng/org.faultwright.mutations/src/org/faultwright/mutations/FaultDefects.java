/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.faultwright.mutations.Consequences.OF_NAMES;
import static org.faultwright.mutations.Consequences.OF_WALKS;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** The fault table, gone wrong. */
final class FaultDefects {
    private FaultDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                Kind.of("a fault that shows what another step result is", Set.of("fault-misses-conclusion", "remedy-not-done", "ambiguity-group",
                        "unreachable-outcome", "outcome-no-fault-explains", "outcome-already-known", "step-tells-nothing"), specimen -> shown(specimen).flatMap(shown -> otherResult(shown, specimen).stream()
                                .map(seed -> seed.equalFor(neverAsked(shown, specimen))))).besides(more()),
                Kind.of("a fault that shows a result the step does not have", Set.of("fault-signature-outcome-unknown", "fault-misses-conclusion"), specimen -> shown(specimen)
                        .map(shown -> Seed.in(shown.fault(), SpecimenEdits.replace(shown.showing().possible().get(0).words().at(), "purple")))).besides(more())
                        .besides(Set.of("signature-shares-not-100")),
                Kind.of("a fault that says nothing of what it shows", Set.of("fault-without-signature"), specimen -> faults(specimen)
                        .filter(fault -> !fault.shows().isEmpty()).map(fault -> Seed.in(fault, SpecimenEdits.delete(SpecimenEdits.between(fault.at().source(),
                                SpecimenEdits.withKeywords(fault.shows().get(0).at(), "shows").offset(), fault.shows().get(fault.shows().size() - 1).at().end())))))
                        .besides(more()),
                Kind.of("a fault without cases", Set.of("cases-missing"), specimen -> faults(specimen).flatMap(fault -> fault.cases().stream()
                        .map(weight -> Seed.in(fault, SpecimenEdits.delete(SpecimenEdits.withKeywords(weight.at(), "cases")))))).besides(more()),
                Kind.of("a fault without a remedy", Set.of("remedy-missing"), specimen -> faults(specimen).filter(fault -> !fault.remedies().isEmpty())
                        .map(fault -> Seed.in(fault, SpecimenEdits.delete(SpecimenEdits.between(fault.at().source(), SpecimenEdits.withKeywords(fault.remedies().get(0).at(), "remedy").offset(),
                                fault.remedies().get(fault.remedies().size() - 1).at().end()))))).besides(more()),
                Kind.of("a remedy that is a question", Set.of("remedy-repairs-nothing"), specimen -> remedies(specimen, step -> step instanceof Step.Check)).besides(more()),
                Kind.of("the remedy of another fault", Set.of("remedy-not-done", "remedy-repairs-nothing"), specimen -> faults(specimen)
                        .filter(fault -> fault.remedies().size() == 1).flatMap(fault -> faults(specimen).flatMap(other -> other.remedies().stream())
                                .filter(remedy -> !remedy.text().equals(fault.remedies().get(0).text()) && !isConcludedWith(fault, remedy.text(), specimen)).limit(1)
                                .map(remedy -> Seed.in(fault, SpecimenEdits.replace(fault.remedies().get(0).at(), remedy.text()))))).besides(more()),
                Kind.of("two faults that show the same", Set.of("ambiguity-group", "fault-misses-conclusion"), specimen -> faults(specimen)
                        .filter(fault -> !fault.shows().isEmpty()).flatMap(fault -> faults(specimen).filter(other -> other != fault && !other.shows().isEmpty()
                                && !together(fault, other, specimen)).limit(1).map(other -> Seed.in(fault, SpecimenEdits.replace(shows(fault), shows(other).text()))))).besides(more()),
                Kind.of("a fault that no conclusion finds", Set.of("fault-never-concluded"), specimen -> concludes(specimen).flatMap(conclude -> conclude.finds().stream()
                        .map(found -> Seed.in(conclude, SpecimenEdits.delete(SpecimenEdits.fromList(found.at())))))).besides(more()).besides(Set.of("conclusion-without-finding")),
                Kind.of("an arrow to the wrong fault", Set.of("fault-misses-conclusion", "fault-never-concluded", "remedy-not-done"), specimen ->
                        arrowsToFaults(specimen).flatMap(arrow -> faults(specimen).filter(fault -> !fault.name().text().equals(arrow.fault().text())).limit(1)
                                .map(fault -> Seed.in(arrow.step(), SpecimenEdits.replace(arrow.fault().at(), fault.name().text()))))).besides(more()),
                Kind.of("a conclusion that finds and says nothing", Set.of("conclusion-without-finding"), specimen -> concludes(specimen)
                        .flatMap(conclude -> conclude.findsNothing().map(at -> Seed.in(conclude, SpecimenEdits.delete(SpecimenEdits.withKeywords(at, "finds")))).stream())).besides(more()),
                Kind.of("shares that do not come to a hundred", Set.of("signature-shares-not-100"), specimen -> faults(specimen)
                        .flatMap(fault -> SpecimenEdits.first(fault.at(), "(\\d+) % or").stream().map(share -> Seed.in(fault, SpecimenEdits.replace(share, "55"))))
                        .filter(seed -> !seed.edits().get(0).at().text().equals("55"))).besides(more()),
                Kind.of("a fault that a step of another name shows", Set.of("unknown-name"), specimen -> shown(specimen)
                        .map(shown -> Seed.in(shown.fault(), SpecimenEdits.insertAfter(shown.showing().step().at(), "Z")))).besides(more()));
    }

    private record Arrow(Step step, Name fault) {
    }

    private record Shown(Fault fault, Showing showing) {
    }

    private static Set<String> more() {
        return Consequences.all(OF_WALKS, OF_NAMES, Set.of("unreachable-outcome", "repair-not-verified", "complaint-not-confirmed", "remedy-missing"));
    }

    private static Stream<Fault> faults(Specimen specimen) {
        return specimen.procedure().faults().stream();
    }

    private static Stream<Shown> shown(Specimen specimen) {
        return faults(specimen).flatMap(fault -> fault.shows().stream().map(showing -> new Shown(fault, showing)));
    }

    private static SourceRange shows(Fault fault) {
        return SpecimenEdits.between(fault.at().source(), fault.shows().get(0).at().offset(), fault.shows().get(fault.shows().size() - 1).at().end());
    }

    private static Stream<Step.Conclude> concludes(Specimen specimen) {
        return specimen.procedure().writtenSteps().stream().filter(Step.Conclude.class::isInstance).map(Step.Conclude.class::cast);
    }

    private static Stream<Arrow> arrowsToFaults(Specimen specimen) {
        return specimen.procedure().writtenSteps().stream().flatMap(step -> step.outcomes().stream().filter(outcome -> !outcome.isUnderstood())
                .flatMap(outcome -> outcome.target().stream()).filter(target -> target.at().length() > 0 && specimen.procedure().fault(target).isPresent())
                .map(target -> new Arrow(step, target)));
    }

    /** Another result of the same step, where the fault says one result and the other leads elsewhere. */
    private static Optional<Seed> otherResult(Shown shown, Specimen specimen) {
        if (shown.showing().possible().size() != 1) {
            return Optional.empty();
        }
        String said = shown.showing().possible().get(0).words().text();
        Optional<Step> step = specimen.procedure().step(shown.showing().step());
        Optional<String> target = step.stream().flatMap(one -> one.outcomes().stream()).filter(outcome -> outcome.key().equals(said))
                .flatMap(outcome -> outcome.target().stream()).map(Object::toString).findFirst();
        return target.flatMap(right -> step.get().outcomes().stream().filter(outcome -> !(outcome.head() instanceof Outcome.AnythingElse)
                && !(outcome.head() instanceof Outcome.Band band && band.label().isEmpty())
                && !outcome.key().equals(said) && !outcome.target().map(Object::toString).orElse(right).equals(right)).findFirst())
                .map(outcome -> Seed.in(shown.fault(), SpecimenEdits.replace(shown.showing().possible().get(0).words().at(), RecordDefects.words(outcome))));
    }

    /** What is said of a step that the tree does not come to with this fault is held against nothing. */
    private static Optional<String> neverAsked(Shown shown, Specimen specimen) {
        FaultWalk walk = specimen.walks().of(shown.fault());
        return specimen.procedure().step(shown.showing().step()).filter(step -> walk.isComplete() && walk.shownAt(step).isEmpty())
                .map(step -> "the tree never asks " + step.name() + " of that fault");
    }

    private static Stream<Seed> remedies(Specimen specimen, Predicate<Step> other) {
        return faults(specimen).filter(fault -> !fault.remedies().isEmpty()).flatMap(fault -> specimen.procedure().writtenSteps().stream().filter(other).limit(1)
                .map(step -> Seed.in(fault, SpecimenEdits.replace(fault.remedies().get(0).at(), step.name().text()))));
    }

    private static boolean together(Fault one, Fault other, Specimen specimen) {
        return concludes(specimen).anyMatch(conclude -> conclude.finds().stream().anyMatch(found -> found.text().equals(one.name().text()))
                && conclude.finds().stream().anyMatch(found -> found.text().equals(other.name().text())));
    }

    /** Whether a fault with that remedy is found by the same conclusion; the remedies may lie on one path. */
    private static boolean isConcludedWith(Fault fault, String remedy, Specimen specimen) {
        return faults(specimen).filter(other -> other.remedies().stream().anyMatch(name -> name.text().equals(remedy)))
                .anyMatch(other -> together(fault, other, specimen));
    }
}

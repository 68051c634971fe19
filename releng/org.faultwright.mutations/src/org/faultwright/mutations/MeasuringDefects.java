/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.QuantityKind;

/** Readings that cannot be: an ammeter across a point, both leads at one, values that nothing can show. */
final class MeasuringDefects {
    private static final Set<String> ALL = Consequences.all(Consequences.OF_READINGS, Consequences.OF_WALKS, Consequences.OF_WAYS,
            Consequences.OF_STATES, Consequences.OF_NAMES, Set.of("instrument-lacks-function", "wrong-dimension", "wrong-formula",
                    "ac-dc-mixed", "proof-not-measured", "proof-elsewhere", "proof-band-open", "input-rating-too-low", "category-too-low",
                    "mean-responding-meter", "outside-bandwidth", "signature-shares-not-100", "fault-without-signature"));

    private MeasuringDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                Kind.of("an ammeter across a point", Set.of("current-across-a-point"), specimen -> at(specimen)
                        .map(step -> Seed.in(step, SpecimenEdits.replace(step.kind().get().at(), "dc current")))).besides(ALL),
                Kind.of("a voltage read through a point", Set.of("current-across-a-point"), specimen -> at(specimen)
                        .filter(step -> step.against().isEmpty()).map(step -> Seed.in(step, SpecimenEdits.replace(
                                SpecimenEdits.between(step.at().source(), step.point().get().at().offset() - 3, step.point().get().at().offset()), "through "))))
                        .besides(ALL),
                Kind.of("a point against itself", Set.of("point-against-itself"), specimen -> at(specimen).filter(step -> step.against().isEmpty())
                        .map(step -> Seed.in(step, SpecimenEdits.insertAfter(step.point().get().at(), " against " + step.point().get())))).besides(ALL),
                Kind.of("more voltage expected than the point carries", Set.of("beyond-the-point"), specimen -> at(specimen)
                        .filter(MeasuringDefects::expectsSome).filter(step -> step.against().isEmpty()).flatMap(step -> specimen.procedure().scope().point(step.point().get()).stream()
                                .filter(point -> point.at().source() == specimen.procedure().source())
                                .flatMap(point -> point.carries().filter(carried -> carried.kind() == step.kind().get().value()).stream()
                                        .map(carried -> Seed.in(point, SpecimenEdits.replace(carried.upTo().at(), "1 uV")).naming(step.name().text())))))
                        // a proof at a point that can hold nothing proves nothing for the others
                        .besides(Consequences.all(ALL, Set.of("stored-charge-unsaid"))),
                Kind.of("a resistance below nothing in an example", Set.of("reading-impossible"), specimen -> specimen.procedure().examples().stream()
                        .flatMap(example -> example.shows().stream()).filter(showing -> reads(showing, QuantityKind.RESISTANCE, specimen))
                        .map(showing -> Seed.at(showing.at(), SpecimenEdits.insertBefore(showing.possible().get(0).words().at(), "-")))).besides(ALL),
                Kind.of("a calculated value that its readings do not give", Set.of("calculated-otherwise"), specimen -> specimen.procedure().examples().stream()
                        .flatMap(example -> example.shows().stream()).filter(showing -> specimen.procedure().step(showing.step()).orElse(null) instanceof Step.Calculate
                                && showing.possible().get(0).reading().isPresent())
                        .map(showing -> Seed.at(showing.at(), SpecimenEdits.insertBefore(showing.possible().get(0).words().at(), "9")))).besides(ALL),
                Kind.of("a step that a fault shows twice", Set.of("step-shown-twice"), specimen -> specimen.procedure().faults().stream()
                        .flatMap(fault -> fault.shows().stream().map(showing -> Seed.in(fault, SpecimenEdits.insertAfter(showing.at(), ", " + showing.at().text())))))
                        .besides(ALL),
                Kind.of("a fault met in no case", Set.of("cases-of-zero"), specimen -> specimen.procedure().faults().stream()
                        .flatMap(fault -> none(fault))).besides(ALL).besides(Set.of("missing-time", "cases-missing")));
    }

    private static Stream<Seed> none(Fault fault) {
        return fault.cases().stream().map(cases -> Seed.in(fault, SpecimenEdits.replace(cases.at(), "0")));
    }

    /** Measurements of a voltage at a point. */
    private static Stream<Step.Measure> at(Specimen specimen) {
        return specimen.procedure().steps().stream().filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast)
                .filter(step -> step.point().isPresent() && step.kind().map(kind -> kind.value().isVoltage()).orElse(false));
    }

    private static boolean expectsSome(Step.Measure step) {
        return step.expects().flatMap(expects -> expects.limit().value().interval(step.kind().get().value()).lower())
                .map(end -> end.value().doubleValue() > 1e-5).orElse(false);
    }

    private static boolean reads(Showing showing, QuantityKind kind, Specimen specimen) {
        return showing.possible().size() == 1 && showing.possible().get(0).reading().filter(reading -> reading.unit().isKnown()
                && reading.value().signum() > 0).isPresent() && specimen.procedure().step(showing.step()).filter(step ->
                        step instanceof Step.Measure measure && measure.kind().map(written -> written.value() == kind).orElse(false)).isPresent();
    }
}

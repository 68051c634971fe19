/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.faultwright.mutations.Consequences.OF_READINGS;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.MeterRange;

/** The wrong meter, the wrong range, a meter that is out of date or moves what it reads. */
final class InstrumentDefects {
    private static final String NUMBER = "\\d+(?:\\.\\d+)?";

    private InstrumentDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                Kind.of("an instrument that does not read this", Set.of("instrument-lacks-function", "range-exceeded"), specimen ->
                        measures(specimen).flatMap(step -> step.instrument().stream().flatMap(name -> unfit(step, specimen).stream()
                                .map(other -> Seed.in(step, SpecimenEdits.replace(name.at(), other.name().text()))))))
                        .besides(more()),
                Kind.of("no instrument named", Set.of("instrument-not-named"), specimen -> measures(specimen)
                        .flatMap(step -> step.instrument().stream().map(name -> Seed.in(step, SpecimenEdits.delete(step.range()
                                .map(range -> SpecimenEdits.between(name.at().source(), SpecimenEdits.withKeywords(name.at(), "using").offset(), range.at().end()))
                                .orElseGet(() -> SpecimenEdits.withKeywords(name.at(), "using")))))))
                        .besides(more()).besides(Set.of("unused-declaration")),
                Kind.of("a range too small", Set.of("range-exceeded"), specimen -> measures(specimen).flatMap(step -> smaller(step, specimen).stream()))
                        .besides(more()),
                Kind.of("an instrument thirty times coarser", Set.of("instrument-cannot-decide"), specimen -> decisive(specimen)
                        .flatMap(step -> ranges(step, specimen).findFirst().stream().map(range -> Seed.in(step, SpecimenEdits.insertAfter(range.at(),
                                " accuracy 30 % of reading"))))
                        .map(seed -> new Seed(seed.at(), seed.edits().stream().map(InstrumentDefects::worse).toList(), seed.names(), seed.equal())))
                        .besides(more()).besides(Set.of("nonsense-accuracy")),
                Kind.of("a resolution of nothing", Set.of("nonsense-accuracy", "missing-unit"), specimen -> measures(specimen)
                        .flatMap(step -> ranges(step, specimen).findFirst().stream().flatMap(range -> SpecimenEdits.first(range.at(), "resolution (" + NUMBER + ")").stream()
                                .map(number -> Seed.in(step, SpecimenEdits.replace(number, "0")).naming(step.instrument().get().text())))))
                        .besides(more()),
                Kind.of("calibration run out", Set.of("calibration-expired"), specimen -> measures(specimen)
                        .flatMap(step -> instrument(step, specimen).stream().flatMap(instrument -> instrument.calibrationDue().stream()
                                .map(due -> Seed.in(instrument, SpecimenEdits.replace(due.at(), "2026-05-31"))))))
                        .besides(more()),
                Kind.of("terminals rated too low", Set.of("input-rating-too-low"), specimen -> measures(specimen)
                        .filter(step -> carries(step, specimen).isPresent()).flatMap(step -> instrument(step, specimen).stream()
                                .flatMap(instrument -> instrument.rated().stream().map(rated -> Seed.in(instrument, SpecimenEdits.replace(rated.at(), "1 V"))))))
                        .besides(more()).besides(Set.of("category-too-low")),
                Kind.of("a measurement category too low", Set.of("category-too-low"), specimen -> measures(specimen)
                        .filter(step -> points(step, specimen).anyMatch(point -> point.category().isPresent()))
                        .flatMap(step -> instrument(step, specimen).stream().flatMap(instrument -> instrument.category().stream()
                                .map(category -> Seed.in(instrument, SpecimenEdits.delete(SpecimenEdits.withKeywords(category.at(), "category")))))))
                        .besides(more()),
                Kind.of("a point of a higher category than its meter", Set.of("category-too-low"), specimen -> measures(specimen)
                        .filter(step -> instrument(step, specimen).isPresent()).flatMap(step -> points(step, specimen).filter(point -> point.category().isEmpty()
                                && point.at().source() == specimen.procedure().source()).map(point -> Seed.in(point, SpecimenEdits.insertAfter(point.at(), " category 4")))))
                        .besides(more()),
                point("a source resistance that the meter loads", Set.of("loading-eats-tolerance"), (point, step) -> voltage(step)
                        ? point.sourceResistance().map(source -> SpecimenEdits.replace(source.at(), "2 Gohm"))
                                .or(() -> Optional.of(SpecimenEdits.insertAfter(point.at(), " source resistance 2 Gohm"))) : Optional.empty()),
                point("a point that carries more than the meter takes", Set.of("input-rating-too-low", "range-exceeded"), (point, step) -> voltage(step)
                        ? point.carries().map(carried -> SpecimenEdits.replace(carried.upTo().at(), "5 kV")) : Optional.empty()),
                Kind.of("a limit written finer than the meter shows", Set.of("finer-than-resolution"), specimen -> decisive(specimen)
                        .flatMap(step -> SpecimenEdits.first(step.expects().get().limit().at(), "\\d+(?:\\.\\d+)?(?= [\\p{L}])").stream()
                                .map(number -> Seed.in(step, SpecimenEdits.insertAfter(number, number.text().contains(".") ? "000001" : ".000001")))))
                        .besides(more()));
    }

    private static Set<String> more() {
        return Consequences.all(OF_READINGS, Consequences.OF_WALKS, Set.of("note-never-read", "note-after-need", "ac-dc-mixed", "unused-reading",
                "finer-than-resolution", "signal-word-fit", "example-fails", "wrong-dimension", "unused-declaration", "category-too-low", "input-rating-too-low",
                // a point of a category, or of a thousand volts, makes it a mains unit, or one not to be touched live
                "protection-not-tested", "live-tool-unfit", "charge-not-proved-absent",
                // and one that may be charged to so much has to be drained and proved itself
                "stored-charge-unsaid", "bleed-lead-unfit"));
    }

    /** Takes the accuracy out of the range and puts thirty percent in. */
    private static Fix.Edit worse(Fix.Edit behind) {
        SourceRange end = behind.at();
        String content = end.source().content();
        int start = content.lastIndexOf("accuracy", end.offset());
        return SpecimenEdits.replace(SpecimenEdits.between(end.source(), start, end.offset()), "accuracy 30 % of reading + 1 digits");
    }

    private static Kind point(String title, Set<String> found, BiFunction<Point, Step.Measure, Optional<Fix.Edit>> change) {
        return Kind.of(title, found, specimen -> measures(specimen).filter(step -> step.expects().isPresent() && step.instrument().isPresent())
                .flatMap(step -> points(step, specimen).limit(1).flatMap(point -> change.apply(point, step).stream()
                        .map(edit -> Seed.in(point, edit).naming(step.name().text()))))).besides(more());
    }

    private static boolean voltage(Step.Measure step) {
        return step.kind().map(kind -> kind.at().text().contains("voltage")).orElse(false);
    }

    private static Stream<Step.Measure> measures(Specimen specimen) {
        return specimen.ownSteps().stream().filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast);
    }

    private static Stream<Step.Measure> decisive(Specimen specimen) {
        return measures(specimen).filter(step -> step.expects().map(expected -> expected.limit().at().text().matches(".*(\\.\\.|\\+/-).*"))
                .orElse(false) && step.instrument().isPresent());
    }

    private static Optional<Instrument> instrument(Step.Measure step, Specimen specimen) {
        return step.instrument().flatMap(specimen.procedure().scope()::instrument);
    }

    private static Stream<Point> points(Step.Measure step, Specimen specimen) {
        return Stream.of(step.point(), step.against()).flatMap(Optional::stream).flatMap(name -> specimen.procedure().scope().point(name).stream());
    }

    private static Optional<Point> carries(Step.Measure step, Specimen specimen) {
        return points(step, specimen).filter(point -> point.carries().map(carried -> carried.upTo().value().base().doubleValue() > 1).orElse(false)).findFirst();
    }

    private static Stream<Written<MeterRange>> ranges(Step.Measure step, Specimen specimen) {
        return instrument(step, specimen).stream().flatMap(instrument -> instrument.ranges().stream())
                .filter(range -> step.kind().map(kind -> range.value().kind() == kind.value()).orElse(false))
                .filter(range -> step.range().map(named -> range.value().upTo().equals(named.value())).orElse(true));
    }

    private static Optional<Instrument> unfit(Step.Measure step, Specimen specimen) {
        return specimen.declarations().flatMap(declared -> declared.instruments().stream())
                .filter(instrument -> instrument.ranges().stream().noneMatch(range -> range.value().kind() == step.kind().get().value())).findFirst();
    }

    /** The author's range replaced by one of the instrument that does not hold the limits. */
    private static Optional<Seed> smaller(Step.Measure step, Specimen specimen) {
        if (step.range().isEmpty() || step.expects().isEmpty()) {
            return Optional.empty();
        }
        double highest = step.expects().get().limit().value().interval(step.kind().get().value()).upper().map(end -> end.value().doubleValue()).orElse(0.0);
        return instrument(step, specimen).stream().flatMap(instrument -> instrument.ranges().stream()).map(Written::value)
                .filter(range -> range.kind() == step.kind().get().value() && range.upTo().base().doubleValue() < highest)
                .findFirst().map(range -> Seed.in(step, SpecimenEdits.replace(step.range().get().at(), range.upTo().toString())));
    }
}

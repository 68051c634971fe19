/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.faultwright.mutations.Consequences.OF_READINGS;
import static org.faultwright.mutations.Consequences.OF_WALKS;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Numbers, units, limits and bands mistyped. */
final class QuantityDefects {
    private static final String NUMBER = "-?\\d+(?:\\.\\d+)?";
    private static final String UNIT = NUMBER + "\\s*((?!permille|%)[\\p{L}°µ]+)";
    private static final Set<String> SLIPPED = Set.of("expected-outside-bands", "example-fails", "range-exceeded",
            "instrument-cannot-decide", "hole-between-bands", "overlapping-bands", "limits-reversed", "tolerance-beyond-nominal",
            "loading-eats-tolerance", "finer-than-resolution", "fault-misses-conclusion", "outcomes-incomplete", "outcome-impossible",
            "example-names-unknown-outcome");

    private QuantityDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                limits("a unit that does not exist", Set.of("unknown-unit"), limit -> replaceFirst(limit, UNIT, "volz")),
                limits("a unit left out", Set.of("missing-unit"), limit -> replaceFirst(limit, UNIT, "")),
                limits("a unit of another dimension", Set.of("wrong-dimension"), limit -> replaceFirst(limit, UNIT, limit.text().endsWith("W") ? "V" : "W")),
                limits("a unit a thousand times too large", SLIPPED, limit -> SpecimenEdits.first(limit, UNIT).filter(unit -> larger(unit.text()).isPresent())
                        .map(unit -> SpecimenEdits.replace(unit, larger(unit.text()).get()))),
                limits("a decimal point slipped", SLIPPED, limit -> SpecimenEdits.first(limit, NUMBER).map(number -> SpecimenEdits.insertAfter(
                        number, number.text().contains(".") ? "" : "0")).map(edit -> edit.replacement().isEmpty()
                                ? SpecimenEdits.replace(edit.at(), "") : edit).filter(edit -> !edit.replacement().isEmpty())),
                limits("limits the wrong way round", Set.of("limits-reversed"), limit -> SpecimenEdits.first(limit, NUMBER + "[^.]*\\.\\. .*")
                        .filter(whole -> whole.length() == limit.length() && !limit.text().contains("under") && !limit.text().contains("over"))
                        .map(whole -> SpecimenEdits.replace(whole, limit.text().replaceFirst("(.*?)\\s*\\.\\.\\s*(.*)", "$2 .. $1")))),
                limits("a limit without width", Set.of("zero-width-tolerance"), limit -> SpecimenEdits.first(limit, NUMBER + "[^.]*\\.\\. .*")
                        .filter(whole -> whole.length() == limit.length() && !limit.text().contains("under") && !limit.text().contains("over"))
                        .map(whole -> SpecimenEdits.replace(whole, limit.text().replaceFirst("(.*?)\\s*\\.\\.\\s*(.*)", "$1 .. $1")))),
                limits("percent of nothing", Set.of("percentage-of-zero"), limit -> SpecimenEdits.first(limit, "(" + NUMBER + ")[^+]*\\+/- .*%")
                        .map(number -> SpecimenEdits.replace(number, "0"))),
                limits("a tolerance as large as the value", Set.of("tolerance-beyond-nominal"), limit -> SpecimenEdits.first(limit, "\\+/- (" + NUMBER + ")\\s*%")
                        .map(number -> SpecimenEdits.replace(number, "200"))),
                limits("a percentage to one side and a quantity to the other", Set.of("tolerance-sides-differ"), limit -> SpecimenEdits.first(limit,
                        "\\+/- " + NUMBER + "\\s*%").map(both -> SpecimenEdits.replace(both, "+" + both.text().substring(4) + " -0.1 "
                                + SpecimenEdits.first(limit, UNIT).map(SourceRange::text).orElse("V")))),
                bands("a band narrowed, so that a hole is left", Set.of("hole-between-bands"), 0.5),
                bands("a band widened over the next", Set.of("overlapping-bands"), 2),
                Kind.of("a result of a reading left out", Set.of("outcomes-incomplete", "hole-between-bands", "expected-outside-bands",
                        "unreachable-step", "fault-misses-conclusion", "example-fails", "empty-outcomes"),
                        specimen -> measured(specimen).flatMap(step -> step.outcomes().stream()
                                .filter(outcome -> !outcome.key().equals(Step.DOUBTFUL) && outcome.target().isPresent() && step.outcomes().size() > 2)
                                .map(outcome -> Seed.in(step, SpecimenEdits.delete(outcome.at()))))).besides(more()),
                Kind.of("a time below zero", Set.of("negative-amount"), specimen -> specimen.ownSteps().stream()
                        .flatMap(step -> step.frame().takes().stream().map(time -> Seed.in(step, SpecimenEdits.insertBefore(time.at(), "-"))))).besides(more()),
                Kind.of("alternating for direct voltage", Set.of("ac-dc-mixed", "instrument-lacks-function", "range-exceeded"), specimen ->
                        measured(specimen).filter(step -> step instanceof Step.Measure measure && measure.kind().isPresent()
                                && measure.kind().get().at().text().equals("dc voltage")).map(step -> Seed.in(step,
                                        SpecimenEdits.replace(((Step.Measure) step).kind().get().at(), "ac voltage")))).besides(more()),
                Kind.of("a limit of a formula in another dimension", Set.of("wrong-dimension"), specimen -> decided(specimen)
                        .flatMap(step -> limits(step).flatMap(limit -> SpecimenEdits.first(limit, UNIT).stream()
                                .map(unit -> Seed.in(step, SpecimenEdits.replace(unit, unit.text().endsWith("W") ? "V" : "W")))))).besides(more()),
                Kind.of("a formula of quantities that do not go together", Set.of("wrong-formula", "wrong-dimension"), specimen -> decided(specimen)
                        .flatMap(step -> step.formula().stream().map(formula -> Seed.in(step, SpecimenEdits.insertAfter(formula.at(), " + 1 kg")))))
                        .besides(more()),
                Kind.of("a formula that divides by what can be nothing", Set.of("division-by-zero-possible", "wrong-dimension", "wrong-formula"),
                        specimen -> decided(specimen).flatMap(step -> step.formula().stream()
                                .flatMap(formula -> SpecimenEdits.first(formula.at(), "[\\p{L}\\d]+ - [\\p{L}\\d]+").stream()
                                        .map(part -> Seed.in(step, SpecimenEdits.insertAfter(formula.at(), " / (" + part.text() + ")")))))).besides(more()),
                Kind.of("a formula of a step that reads nothing", Set.of("wrong-formula", "unknown-name"), specimen -> decided(specimen)
                        .flatMap(step -> step.formula().stream().flatMap(formula -> SpecimenEdits.first(formula.at(), "[\\p{Lu}][\\p{L}\\d]+").stream()
                                .map(name -> Seed.in(step, SpecimenEdits.replace(name, specimen.procedure().writtenSteps().get(0).name().text()))))))
                        .besides(more()).besides(Set.of("unused-reading")),
                Kind.of("a reading computed with before it is taken", Set.of("reading-not-taken"), specimen -> decided(specimen)
                        .flatMap(step -> step.formula().stream().flatMap(formula -> SpecimenEdits.first(formula.at(), "[\\p{Lu}][\\p{L}\\d]+").stream()
                                .flatMap(name -> skipped(name, specimen).stream())))).besides(more())
                        .besides(Consequences.OF_STATES).besides(Consequences.OF_WAYS).besides(Consequences.OF_NAMES));
    }

    private static Set<String> more() {
        return Consequences.all(OF_READINGS, OF_WALKS, Set.of("unused-reading", "single-valued", "unreachable-step", "unreachable-outcome", "limits-reversed", "missing-time",
                // what a reading proves or tests hangs on its kind and its limit
                "proof-not-measured", "proof-band-open", "protection-limit-loose", "note-after-need", "unused-exit"));
    }

    /** The reading that a formula uses, left out: what leads to it leads to where its good result leads. */
    private static Optional<Seed> skipped(SourceRange name, Specimen specimen) {
        return specimen.procedure().writtenSteps().stream().filter(step -> step.name().text().equals(name.text())).findFirst()
                .flatMap(step -> step.outcomes().stream().flatMap(outcome -> outcome.target().stream()).findFirst()
                        .flatMap(next -> Specimen.leadingTo(step.name(), specimen.procedure()).findFirst()
                                .map(before -> Seed.in(step, SpecimenEdits.replace(before.at(), next.text())))));
    }

    private static Kind limits(String title, Set<String> found, Function<SourceRange, Optional<Fix.Edit>> change) {
        return Kind.of(title, found, specimen -> measured(specimen).flatMap(step -> limits(step)
                .flatMap(limit -> change.apply(limit).stream()).map(edit -> Seed.in(step, edit)))).besides(more());
    }

    private static Optional<Fix.Edit> replaceFirst(SourceRange limit, String pattern, String text) {
        return SpecimenEdits.first(limit, pattern).map(found -> SpecimenEdits.replace(found, text));
    }

    private static Optional<String> larger(String unit) {
        return switch (unit) {
            case "V", "ohm", "A", "g", "N", "m" -> Optional.of("k" + unit);
            case "mV" -> Optional.of("V");
            case "mA" -> Optional.of("A");
            case "mm" -> Optional.of("m");
            case "kohm" -> Optional.of("Mohm");
            default -> Optional.empty();
        };
    }

    private static Kind bands(String title, Set<String> found, double factor) {
        return Kind.of(title, found, specimen -> measured(specimen).flatMap(step -> step.outcomes().stream()
                .filter(outcome -> outcome.head() instanceof Outcome.Band band && band.limit().at().text().startsWith("at most"))
                .flatMap(outcome -> SpecimenEdits.first(((Outcome.Band) outcome.head()).limit().at(), NUMBER).stream()
                        .map(number -> Seed.in(step, SpecimenEdits.replace(number, String.valueOf(Double.parseDouble(number.text()) * factor)))))))
                .besides(more());
    }

    private static Stream<Step> measured(Specimen specimen) {
        return specimen.steps().stream().filter(step -> step instanceof Step.Measure);
    }

    private static Stream<Step.Calculate> decided(Specimen specimen) {
        return specimen.ownSteps().stream().filter(Step.Calculate.class::isInstance).map(Step.Calculate.class::cast);
    }

    private static Stream<SourceRange> limits(Step step) {
        Stream<SourceRange> bands = step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> ((Outcome.Band) head).limit().at());
        Stream<SourceRange> expected = step instanceof Step.Measure measure ? measure.expects().stream().map(one -> one.limit().at())
                : step instanceof Step.Calculate calculate ? calculate.expects().stream().map(one -> one.limit().at()) : Stream.of();
        return Stream.concat(expected, bands);
    }
}

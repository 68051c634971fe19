/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.faultwright.mutations.Consequences.OF_NAMES;
import static org.faultwright.mutations.Consequences.OF_READINGS;
import static org.faultwright.mutations.Consequences.OF_STATES;
import static org.faultwright.mutations.Consequences.OF_WALKS;
import static org.faultwright.mutations.Consequences.OF_WAYS;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;

/** Work on what is live or charged, and what is said to make it safe, gone wrong. Every one of them is dangerous. */
final class LiveDefects {
    private static final Set<String> UNREAD = Set.of("note-never-read", "note-after-need");
    private static final Set<String> TOUCHED = Set.of("charge-not-proved-absent", "live-measurement", "live-work");

    private LiveDefects() {
    }

    static List<Kind> kinds() {
        return Stream.of(proofs(), charges(), work(), energy(), protection()).flatMap(List::stream)
                .map(kind -> kind.besides(more()).dangerous()).toList();
    }

    private static List<Kind> proofs() {
        return List.of(
                Kind.of("a point at a dangerous voltage said to be isolated for good", Set.of("isolation-unfounded"), specimen ->
                        specimen.procedure().own().points().stream().filter(point -> point.isolated().isEmpty() && isAboveHarmless(point))
                                .map(point -> Seed.in(point, SpecimenEdits.insertAfter(point.at(), " isolated")))),
                Kind.of("nothing is ever live", Set.of("live-state-unsaid"), LiveDefects::neverLive),
                Kind.of("nothing is ever live, and no point says what it carries", Set.of("live-state-unsaid"), specimen -> neverLive(specimen)
                        .filter(seed -> specimen.ownSteps().stream().anyMatch(LiveDefects::expectsHigh)).map(seed -> specimen.declarations()
                                .flatMap(declared -> declared.points().stream()).filter(point -> point.carries().isPresent() && point.stores().isEmpty())
                                .flatMap(point -> SpecimenEdits.first(point.at(), "carries up to [\\d.]+ m?V (dc|ac( rms| peak)?)?").stream())
                                .reduce(specimen.ownSteps().stream().filter(LiveDefects::expectsHigh).map(step -> step.name().text())
                                        .reduce(seed, Seed::naming, (one, other) -> one), (one, words) -> one.with(SpecimenEdits.delete(words)), (one, other) -> one))),
                Kind.of("a meter that is mute goes on to the proof", Set.of("proof-meter-untried"), specimen -> specimen.steps().stream()
                        .filter(step -> step instanceof Step.Check && !step.frame().precautions().tries().isEmpty() && step.outcomes().size() == 2)
                        .flatMap(step -> step.outcomes().get(1).target().stream().flatMap(mute -> step.outcomes().get(0).target()
                                .map(reads -> Seed.in(step, SpecimenEdits.replace(new SourceRange(mute.at().source(), mute.at().offset(),
                                        step.outcomes().get(1).at().end() - mute.at().offset()), reads.text()))).stream()))),
                Kind.of("a meter that stays mute comes to the proof", Set.of("proof-meter-untried"), specimen -> specimen.steps().stream()
                        .filter(step -> step instanceof Step.Check && !step.frame().precautions().tries().isEmpty() && step.outcomes().size() == 2)
                        .flatMap(step -> step.outcomes().get(1).repeat().stream().flatMap(mute -> step.outcomes().get(0).target()
                                .map(reads -> Seed.in(step, SpecimenEdits.replace(mute.otherwise().at(), reads.text()))).stream()))),
                Kind.of("a proof by an ac range", Set.of("proof-not-measured"), specimen -> proving(specimen)
                        .map(step -> Seed.in(step, SpecimenEdits.replace(step.kind().get().at(), "ac voltage rms")))),
                Kind.of("a proof by an ohm range", Set.of("proof-not-measured"), specimen -> proving(specimen)
                        .map(step -> Seed.in(step, SpecimenEdits.replace(step.kind().get().at(), "resistance")))),
                Kind.of("a proof that does not say where", Set.of("proof-elsewhere"), specimen -> proving(specimen)
                        .flatMap(step -> step.point().stream().map(point -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.withKeywords(point.at(), "at")))))),
                Kind.of("a proof at another point", Set.of("proof-elsewhere"), specimen -> proving(specimen).flatMap(step -> step.point().stream()
                        .flatMap(point -> points(specimen).filter(other -> other.at().source() == step.at().source())
                                .filter(other -> !other.name().text().equals(point.text())).limit(2)
                                .map(other -> Seed.in(step, SpecimenEdits.replace(point.at(), other.name().text())))))),
                Kind.of("a proof with its two bands swapped", Set.of("proof-band-open"), specimen -> proving(specimen)
                        .filter(step -> step.outcomes().size() == 2).map(step -> Seed.in(step,
                                SpecimenEdits.replace(step.outcomes().get(0).head().at(), step.outcomes().get(1).head().at().text()),
                                SpecimenEdits.replace(step.outcomes().get(1).head().at(), step.outcomes().get(0).head().at().text())))),
                Kind.of("a proof up to a hundred times as much", Set.of("proof-band-open"), specimen -> proving(specimen).flatMap(step -> step.outcomes().stream()
                        .filter(outcome -> !outcome.proves().isEmpty()).flatMap(outcome -> SpecimenEdits.first(outcome.at(), "\\b(5) V").stream())
                        .map(number -> step.outcomes().stream().filter(outcome -> outcome.proves().isEmpty())
                                .flatMap(outcome -> SpecimenEdits.first(outcome.at(), "\\b(5) V").stream()).reduce(Seed.in(step, SpecimenEdits.replace(number, "500")),
                                        (seed, other) -> seed.with(SpecimenEdits.replace(other, "500")), (one, other) -> one)))),
                Kind.of("a house limit a hundred times as high", Set.of("proof-band-open"), specimen -> conditions(specimen).flatMap(condition ->
                        condition.proved().stream().flatMap(proof -> proof.limit().stream()).flatMap(limit -> SpecimenEdits.first(limit.at(), "\\b(5) V").stream())
                                .map(number -> Seed.in(condition, SpecimenEdits.replace(number, "500"))))),
                Kind.of("the meter not tried before the proof", Set.of("proof-meter-untried"), specimen -> specimen.steps().stream()
                        .flatMap(step -> step.frame().precautions().tries().stream().map(meter -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.fromList(meter.at())))))),
                Kind.of("a charge proved absent by a look", Set.of("proof-not-measured"), specimen -> specimen.ownSteps().stream()
                        .filter(Step.Check.class::isInstance).flatMap(step -> charges(specimen).limit(1).map(condition -> Seed.in(step,
                                SpecimenEdits.insertAfter(step.outcomes().get(0).at(), " proves " + absent(condition)))))),
                Kind.of("a charge called absent by what is done", Set.of("proof-not-measured"), specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Do && step.frame().sets().isEmpty()).flatMap(step -> charges(specimen).limit(1)
                                .map(condition -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "sets " + absent(condition)))))),
                Kind.of("a charge proved by the result that it is still there", Set.of("proof-not-measured"), specimen -> specimen.ownSteps().stream()
                        .filter(Step.Perform.class::isInstance).flatMap(step -> step.outcomes().stream().filter(outcome -> outcome.key().equals("stillCharged"))
                                .flatMap(outcome -> charges(specimen).limit(1).map(condition -> Seed.in(step,
                                        SpecimenEdits.insertAfter(outcome.at(), " proves " + absent(condition))))))));
    }

    private static List<Kind> charges() {
        return List.of(
                Kind.of("a charge that nothing brings back", Set.of("charge-never-returns"), specimen -> charges(specimen)
                        .flatMap(condition -> condition.becomes().stream().map(becomes -> Seed.in(condition, SpecimenEdits.delete(becomes.at()))))),
                Kind.of("a charge that comes with the supply switched off", Set.of("charge-never-returns", "charge-not-proved-absent", "contradictory-needs"), specimen -> charges(specimen)
                        .flatMap(condition -> condition.becomes().stream().filter(becomes -> becomes.when().value().text().equals("on"))
                                .map(becomes -> Seed.in(condition, SpecimenEdits.replace(becomes.when().value().at(), "off"))))),
                Kind.of("a charge that goes by itself", Set.of("proof-not-measured"), specimen -> charges(specimen)
                        .flatMap(condition -> condition.becomes().stream().map(becomes -> Seed.in(condition, SpecimenEdits.insertAfter(becomes.at(),
                                "\n    becomes " + absent(condition).split(" ")[1] + " when " + becomes.when().condition() + " off"))))),
                Kind.of("a charge that is not there at first", Set.of("proof-not-measured"), specimen -> charges(specimen)
                        .flatMap(condition -> condition.starts().stream().map(start -> Seed.in(condition, SpecimenEdits.replace(start.at(), absent(condition).split(" ")[1]))))),
                Kind.of("a supply that is off said to keep a charge away", Set.of("isolation-unfounded"), specimen -> specimen.procedure().own().points().stream()
                        .filter(point -> point.isolated().isEmpty() && isAboveHarmless(point) && point.carries().orElseThrow().kind() == QuantityKind.DC_VOLTAGE)
                        .map(point -> Seed.in(point, SpecimenEdits.insertAfter(point.at(), " isolated when Supply off")))),
                Kind.of("what is isolated, not said", Consequences.all(TOUCHED, UNREAD), specimen -> specimen.procedure().own().points().stream()
                        .filter(point -> isProbed(point, specimen)).flatMap(point -> point.isolated().stream().map(isolated ->
                                naming(Seed.in(point, SpecimenEdits.delete(isolated.at())), point, specimen).equalFor(specimen.later().deadAnyway(point))))),
                Kind.of("what is isolated, by the wrong state", TOUCHED, specimen -> points(specimen).filter(point -> isProbed(point, specimen))
                        .flatMap(point -> point.isolated().stream().flatMap(isolated -> isolated.when().stream())
                                .flatMap(setting -> other(setting, specimen).stream().map(value -> naming(Seed.in(point,
                                        SpecimenEdits.replace(setting.value().at(), value)), point, specimen).equalFor(specimen.later().deadAnyway(point)))))));
    }

    private static List<Kind> work() {
        return List.of(
                Kind.of("the reason for live work left out", Set.of("live-work"), specimen -> specimen.steps().stream()
                        .filter(step -> !(step instanceof Step.Measure)).flatMap(step -> step.frame().precautions().liveBecause().stream()
                                .map(reason -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.withKeywords(reason.at(), "live because")))))),
                Kind.of("live work with nothing made for it", Consequences.all(Set.of("live-tool-unfit"), UNREAD), specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Check && isLive(step, specimen) && hasHighVoltage(specimen))
                        .map(step -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "live because \"it is quicker\"")))),
                Kind.of("a part handled while it is live", Set.of("live-work"), specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Measure && isLive(step, specimen) && step.frame().needs().stream()
                                .anyMatch(need -> need.value().text().equals("removed"))).filter(step -> step.frame().precautions().liveBecause().isEmpty())
                        .flatMap(step -> specimen.procedure().own().parts().stream().filter(part -> part.isolated().isEmpty()).limit(1)
                                .map(part -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "handles " + part.name()))
                                        .equalFor(specimen.later().switchesOff(step))))),
                Kind.of("the cover lifted while it runs", Set.of("live-work"), specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Check && isLive(step, specimen) && step.frame().sets().isEmpty()
                                && step.frame().needs().stream().anyMatch(need -> need.value().text().equals("fitted")))
                        .map(step -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "sets Cover removed")))),
                Kind.of("tools put into a live unit", Set.of("live-work"), specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Do && step.frame().needs().stream().anyMatch(need -> need.value().text().equals("removed"))
                                && !step.frame().tools().isEmpty()).flatMap(step -> step.frame().needs().stream()
                                        .filter(need -> need.condition().text().equals("Supply")).limit(1)
                                        .map(need -> Seed.in(step, SpecimenEdits.replace(need.value().at(), "on"))))),
                Kind.of("tools put into an open unit before the proof", Set.of("charge-not-proved-absent"), specimen -> specimen.steps().stream()
                        .filter(step -> step instanceof Step.Do && hasHighVoltage(specimen) && step.frame().tools().isEmpty() && step.frame().sets().isEmpty()
                                && step.frame().handles().isEmpty() && step.frame().needs().stream().anyMatch(need -> need.value().text().equals("removed"))
                                && step.frame().needs().stream().noneMatch(need -> need.condition().text().equals("Charge")))
                        .map(step -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "tools \"pliers\"")))),
                Kind.of("no note read again when the voltage comes back", UNREAD, specimen -> specimen.ownSteps().stream()
                        .filter(step -> step instanceof Step.Measure measure && isLive(step, specimen) && isHigh(measure, specimen))
                        .filter(step -> !step.frame().notes().isEmpty()).map(step -> specimen.ownSteps().stream()
                                .filter(other -> other instanceof Step.Perform perform && perform.routine().filter(name -> name.text().equals("SwitchOn")).isPresent()
                                        || other instanceof Step.Measure && other != step && isLive(other, specimen))
                                .flatMap(other -> notes(other).stream()).reduce(notes(step).stream().map(edit -> Seed.in(step, edit)).findFirst().orElseThrow(),
                                        (seed, edit) -> seed.with(edit), (one, other) -> one))));
    }

    private static List<Kind> energy() {
        return List.of(
                Kind.of("a bleed lead of too few watts", Set.of("bleed-lead-unfit"), specimen -> bank(specimen).flatMap(point -> leads(specimen)
                        .flatMap(lead -> lead.rated().stream().map(rated -> Seed.in(lead, SpecimenEdits.replace(rated.at(), "2 W"))
                                .with(SpecimenEdits.insertAfter(point.at(), " stores 1000 uF")).naming(lead.name().text()))))),
                Kind.of("a bleed lead of too few ohms", Set.of("bleed-lead-unfit"), specimen -> bank(specimen).flatMap(point -> leads(specimen)
                        .map(lead -> Seed.in(lead, SpecimenEdits.replace(lead.drains().orElseThrow().at(), "10 ohm"))
                                .with(SpecimenEdits.insertAfter(point.at(), " stores 1000 uF")).naming(lead.name().text())))),
                Kind.of("a wait too short for what is stored", Set.of("wait-too-short"), specimen -> bank(specimen).flatMap(point -> specimen.steps().stream()
                        .filter(step -> step.name().text().equals("WaitAMinute")).map(step -> (step.frame().waits().isPresent()
                                ? Seed.in(step, SpecimenEdits.replace(step.frame().waits().get().at(), "1 min")) : Seed.in(step, SpecimenEdits.insertInside(step.at(), "wait 1 min")))
                                .with(SpecimenEdits.insertAfter(point.at(), " stores 1000 uF drained by 20 Mohm"))))));
    }

    private static List<Kind> protection() {
        return List.of(
                Kind.of("a protective test left out", Set.of("protection-not-tested"), specimen -> specimen.steps().stream()
                        .flatMap(step -> step.frame().precautions().tests().stream().map(test -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.fromList(test.at())))
                                .naming("tests")))),
                Kind.of("the tests of class I made of a unit of class II", Set.of("protection-limit-loose"), specimen -> specimen.procedure().equipment().stream()
                        .flatMap(equipment -> equipment.protection().stream()).filter(known -> known.value() == ProtectionClass.I)
                        .filter(known -> specimen.ownSteps().stream().anyMatch(step -> step.name().text().endsWith("ClassI")))
                        .map(known -> Seed.in(specimen.ownSteps().stream().filter(step -> step.name().text().endsWith("ClassI")).findFirst().orElseThrow(),
                                SpecimenEdits.replace(known.at(), "II")))),
                Kind.of("a protective test with a limit a hundred times as loose", Set.of("protection-limit-loose"), specimen -> specimen.steps().stream()
                        .filter(step -> !step.frame().precautions().tests().isEmpty()).flatMap(step -> loosened(step).stream())),
                Kind.of("what fails a protective test goes on like what passes", Set.of("failed-test-passed"), specimen -> specimen.steps().stream()
                        .filter(step -> !step.frame().precautions().tests().isEmpty() && step.outcomes().size() == 2)
                        .flatMap(step -> step.outcomes().get(1).target().stream().flatMap(failed -> step.outcomes().get(0).target()
                                .map(passed -> Seed.in(step, SpecimenEdits.replace(failed.at(), passed.text()))).stream()))),
                Kind.of("a protective test of which the two outcomes are swapped", Set.of("failed-test-passed"), specimen -> specimen.steps().stream()
                        .filter(step -> !step.frame().precautions().tests().isEmpty() && step.outcomes().size() == 2)
                        .flatMap(step -> step.outcomes().get(1).target().stream().flatMap(failed -> step.outcomes().get(0).target()
                                .map(passed -> Seed.in(step, SpecimenEdits.replace(failed.at(), passed.text())).with(SpecimenEdits.replace(passed.at(), failed.text()))).stream()))));
    }

    private static boolean isAboveHarmless(Point point) {
        return point.carries().flatMap(carried -> VoltageLimit.exceededBy(carried.kind(), UnitVoltage.volts(point)))
                .filter(VoltageLimit::asksForNote).isPresent();
    }

    private static boolean expectsHigh(Step step) {
        return step instanceof Step.Measure measure && measure.expects().filter(expects -> measure.kind().filter(kind -> kind.value().isVoltage()
                && expects.limit().value().fits(kind.value())).isPresent()).flatMap(expects -> expects.limit().value().interval().lower())
                .filter(low -> low.value().compareTo(Exact.of(60)) > 0).isPresent();
    }

    /** The one condition that is live, where there is one and a point of the procedure's own carries mains. */
    private static Stream<Seed> neverLive(Specimen specimen) {
        List<Condition> live = specimen.procedure().scope().conditions().stream().filter(condition -> !condition.live().isEmpty()).toList();
        List<Point> dangerous = specimen.procedure().own().points().stream().filter(LiveDefects::isAboveHarmless)
                .filter(point -> point.stores().isEmpty() && point.isolated().isEmpty()).toList();
        if (live.size() != 1 || dangerous.isEmpty()) {
            return Stream.empty();
        }
        return SpecimenEdits.first(live.get(0).at(), "live when \\w+").stream()
                .map(words -> naming(Seed.in(live.get(0), SpecimenEdits.delete(words)), dangerous));
    }

    private static Seed naming(Seed seed, List<Point> points) {
        Seed named = seed;
        for (Point point : points) {
            named = named.naming(point.name().text());
        }
        return named;
    }

    private static Set<String> more() {
        return Consequences.all(OF_WALKS, OF_STATES, OF_WAYS, OF_NAMES, OF_READINGS, TOUCHED, UNREAD, Set.of("proof-not-measured", "proof-elsewhere",
                "proof-band-open", "charge-never-returns", "wrong-dimension", "ac-dc-mixed", "instrument-lacks-function", "mean-responding-meter",
                "category-too-low", "input-rating-too-low", "limits-reversed", "missing-unit", "proof-meter-untried", "unreadable-text",
                "live-reason-idle", "protection-not-tested", "outside-bandwidth", "live-tool-unfit", "wait-too-short", "bleed-lead-unfit",
                "complaint-not-confirmed", "remedy-not-done", "missing-source", "live-state-unsaid", "isolation-unfounded", "stored-charge-unsaid"));
    }

    private static Stream<Step.Measure> proving(Specimen specimen) {
        return specimen.steps().stream().filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast).filter(step -> step.kind().isPresent())
                .filter(step -> step.outcomes().stream().flatMap(outcome -> outcome.proves().stream()).anyMatch(setting -> isCharge(setting, specimen)));
    }

    private static boolean isCharge(Setting setting, Specimen specimen) {
        return specimen.procedure().scope().condition(setting.condition()).filter(condition -> !condition.charged().isEmpty()).isPresent();
    }

    private static Stream<Condition> conditions(Specimen specimen) {
        return specimen.declarations().flatMap(declared -> declared.conditions().stream());
    }

    /** Those that some step proves absent. */
    private static Stream<Condition> charges(Specimen specimen) {
        return conditions(specimen).filter(condition -> !condition.charged().isEmpty()).filter(condition -> specimen.steps().stream()
                .flatMap(step -> step.outcomes().stream()).map(Outcome::proves).flatMap(List::stream)
                .anyMatch(setting -> setting.condition().text().equals(condition.name().text())));
    }

    private static String absent(Condition condition) {
        return condition.name() + " " + condition.values().stream().filter(value -> condition.charged().stream()
                .noneMatch(charged -> charged.text().equals(value.text()))).map(Name::text).findFirst().orElseThrow();
    }

    private static Stream<Point> points(Specimen specimen) {
        return specimen.declarations().flatMap(declared -> declared.points().stream());
    }

    /** The steps that read at a point are where a change of it shows. */
    private static Seed naming(Seed seed, Point point, Specimen specimen) {
        return specimen.steps().stream().filter(step -> step instanceof Step.Measure measure
                && measure.point().filter(name -> name.text().equals(point.name().text())).isPresent())
                .map(step -> step.name().text()).reduce(seed, Seed::naming, (one, other) -> one);
    }

    private static boolean isProbed(Point point, Specimen specimen) {
        return specimen.steps().stream().anyMatch(step -> step instanceof Step.Measure measure
                && measure.point().filter(name -> name.text().equals(point.name().text())).isPresent());
    }

    private static Optional<String> other(Setting setting, Specimen specimen) {
        return specimen.procedure().scope().condition(setting.condition()).stream().flatMap(condition -> condition.values().stream())
                .map(Name::text).filter(value -> !value.equals(setting.value().text())).findFirst();
    }

    private static boolean isLive(Step step, Specimen specimen) {
        return step.frame().needs().stream().anyMatch(need -> specimen.procedure().scope().condition(need.condition())
                .filter(condition -> condition.live().stream().anyMatch(value -> value.text().equals(need.value().text()))).isPresent());
    }

    private static boolean hasHighVoltage(Specimen specimen) {
        return specimen.procedure().own().points().stream().anyMatch(LiveDefects::isHigh);
    }

    private static boolean isHigh(Step.Measure step, Specimen specimen) {
        return step.point().flatMap(specimen.procedure().scope()::point).filter(LiveDefects::isHigh).isPresent();
    }

    private static boolean isHigh(Point point) {
        return point.carries().filter(carried -> carried.upTo().value().base().compareTo(Exact.of(120)) > 0).isPresent();
    }

    private static List<Fix.Edit> notes(Step step) {
        List<Name> notes = step.frame().notes();
        if (notes.isEmpty()) {
            return List.of();
        }
        SourceRange first = notes.get(0).at();
        return List.of(SpecimenEdits.delete(SpecimenEdits.between(first.source(), SpecimenEdits.withKeywords(first, "notes").offset(), notes.get(notes.size() - 1).at().end())));
    }

    /** A point of the procedure's own that carries enough to hold a dangerous charge. */
    private static Stream<Point> bank(Specimen specimen) {
        return specimen.procedure().own().points().stream().filter(LiveDefects::isHigh).filter(point -> point.stores().isEmpty())
                .filter(point -> point.hazards().stream().anyMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE)).limit(1);
    }

    private static Stream<Part> leads(Specimen specimen) {
        return specimen.declarations().flatMap(declared -> declared.parts().stream()).filter(part -> part.drains().isPresent() && part.rated().isPresent());
    }

    private static Optional<Seed> loosened(Step step) {
        List<Fix.Edit> edits = step.outcomes().stream().flatMap(outcome -> Stream.of("(0\\.3) ohm", "((?:1|2) M)ohm", "((?:3\\.5|0\\.5) m)A")
                .flatMap(pattern -> SpecimenEdits.first(outcome.head().at(), pattern).stream())).map(number -> SpecimenEdits.replace(number,
                        number.text().endsWith("M") ? number.text().replace("M", "k") : number.text().endsWith("m") ? "350 m" : "30")).toList();
        return edits.isEmpty() ? Optional.empty() : Optional.of(edits.stream().skip(1).reduce(Seed.in(step, edits.get(0)), Seed::with, (one, other) -> one));
    }
}

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
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;

/** Names, examples, heading, sources, and the text itself. */
final class RecordDefects {
    private RecordDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                Kind.of("an example that says another result", Set.of("example-fails"), specimen -> examples(specimen)
                        .flatMap(example -> example.shows().stream().flatMap(showing -> otherResult(example, showing, specimen).stream()))).besides(more()),
                Kind.of("an example that says a result the step does not have", Set.of("example-names-unknown-outcome", "example-fails"), specimen -> examples(specimen)
                        .flatMap(example -> example.shows().stream().map(showing -> Seed.at(showing.at(),
                                SpecimenEdits.replace(showing.possible().get(0).words().at(), "purple")).equalFor(isAnythingElse(showing, specimen)))))
                        .besides(more()),
                Kind.of("an example that ends elsewhere", Set.of("example-fails"), specimen -> examples(specimen).flatMap(example -> example.endsAt().stream()
                        .flatMap(end -> specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Conclude
                                && !step.name().text().equals(end.text())).limit(1).map(step -> Seed.at(end.at(), SpecimenEdits.replace(end.at(), step.name().text()))))))
                        .besides(more()),
                Kind.of("an example of a step that is not there", Set.of("unknown-name"), specimen -> examples(specimen).flatMap(example -> example.shows().stream()
                        .limit(1).map(showing -> Seed.at(showing.at(), SpecimenEdits.insertAfter(showing.step().at(), "Z"))))).besides(more()),
                Kind.of("an example that allows too little time", Set.of("example-time-exceeded"), specimen -> examples(specimen)
                        .flatMap(example -> example.within().stream().map(time -> Seed.at(time.at(), SpecimenEdits.replace(time.at(), "5 s"))))).besides(more()),
                Kind.of("the only example of a conclusion taken out", Set.of("outcome-untried"), specimen -> examples(specimen)
                        .filter(example -> example.endsAt().isPresent() && examples(specimen).filter(other -> other.endsAt().isPresent()
                                && other.endsAt().get().text().equals(example.endsAt().get().text())).count() == 1)
                        .map(example -> Seed.at(example.at(), SpecimenEdits.delete(example.at())).naming(specimen.name()))).besides(more()),
                Kind.of("a name given twice", Set.of("duplicate-name"), specimen -> specimen.procedure().writtenSteps().stream().skip(1)
                        .map(step -> Seed.in(step, SpecimenEdits.insertAfter(step.at(), "\n" + step.at().text())))).besides(more())
                        .besides(Consequences.OF_WAYS),
                Kind.of("a library's file renamed", Set.of("library-name-differs-from-file"), specimen -> specimen.procedure().libraries().stream()
                        .map(library -> Seed.at(library.name().at(), SpecimenEdits.insertAfter(library.name().at(), "Old")))).besides(more()),
                Kind.of("a point misspelt", Set.of("unknown-name"), specimen -> specimen.ownSteps().stream().filter(Step.Measure.class::isInstance)
                        .flatMap(step -> ((Step.Measure) step).point().stream().map(name -> Seed.in(step, SpecimenEdits.insertAfter(name.at(), "q"))))).besides(more())
                        .besides(Set.of("note-never-read", "note-after-need", "loading-eats-tolerance")),
                Kind.of("a library misspelt", Set.of("unknown-name"), specimen -> specimen.procedure().uses().stream()
                        .map(name -> Seed.at(name.at(), SpecimenEdits.insertAfter(name.at(), "q")))).besides(more()).besides(Set.of("left-open", "need-not-established",
                                "charge-not-proved-absent", "live-measurement", "note-never-read", "note-after-need", "repair-not-verified", "outcome-impossible",
                                "doubtful-unhandled", "erase-without-backup-check", "complaint-not-confirmed", "single-valued", "unreachable-outcome", "instrument-not-named")),
                Kind.of("a part declared and never used", Set.of("unused-declaration"), specimen -> specimen.procedure().writtenSteps().stream().limit(1)
                        .map(step -> Seed.at(step.at(), SpecimenEdits.insertBefore(step.at(), "part NeverUsed \"Never used\"\n")))),
                Kind.of("a step without words", Set.of("missing-title"), specimen -> specimen.ownSteps().stream()
                        // without words a routine's step has those of the routine, and a conclusion those of its name
                        .filter(step -> !(step instanceof Step.Perform) && !(step instanceof Step.Conclude)).filter(step -> !step.title().isBlank())
                        .map(step -> Seed.in(step, SpecimenEdits.delete(title(step))))).besides(Set.of("better-order")),
                Kind.of("a step without its time", Set.of("missing-time"), specimen -> specimen.procedure().writtenSteps().stream()
                        // a routine performed has the time of its own steps
                        .filter(step -> !(step instanceof Step.Perform))
                        .flatMap(step -> step.frame().takes().stream().map(time -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.withKeywords(time.at(), "takes"))))))
                        .besides(more()),
                Kind.of("a limit without its source", Set.of("missing-source"), specimen -> specimen.ownSteps().stream().filter(step -> step instanceof Step.Measure)
                        .flatMap(step -> step.frame().source().stream().map(source -> Seed.in(step, SpecimenEdits.delete(source.at()))))).besides(more()),
                Kind.of("a table of codes without its source", Set.of("missing-source"), specimen -> specimen.procedure().own().indicators().stream()
                        .flatMap(indicator -> indicator.source().stream().map(source -> Seed.in(indicator, SpecimenEdits.delete(source.at()))))),
                Kind.of("no word of the equipment", Set.of("missing-header"), specimen -> specimen.procedure().equipment().stream()
                        .map(equipment -> Seed.at(equipment.at(), SpecimenEdits.delete(equipment.at())).naming(specimen.name()))),
                Kind.of("no revision", Set.of("missing-header"), specimen -> specimen.procedure().revision().stream()
                        .map(revision -> Seed.at(revision.at(), SpecimenEdits.delete(revision.at())).naming(specimen.name()))).besides(Set.of("outcome-untried")),
                Kind.of("a source of next year", Set.of("day-in-the-future"), specimen -> specimen.ownSteps().stream()
                        .flatMap(step -> step.frame().source().stream().flatMap(source -> SpecimenEdits.first(source.at(), "\\d{4}-\\d{2}-\\d{2}").stream()
                                .map(day -> Seed.in(step, SpecimenEdits.replace(day, "2027-02-28")))))),
                Kind.of("reviewed by nobody", Set.of("release-incomplete"), specimen -> specimen.procedure().revision().stream()
                        .filter(revision -> revision.by().isPresent()).flatMap(revision -> SpecimenEdits.first(revision.at(), "by \"[^\"]*\"").stream()
                                .map(words -> Seed.at(words, SpecimenEdits.delete(words)).naming(specimen.name())))),
                Kind.of("a released text changed", Set.of("changed-after-release"), specimen -> specimen.procedure().revision().stream()
                        .filter(revision -> revision.digest().isPresent()).flatMap(revision -> specimen.procedure().writtenSteps().stream()
                                .filter(step -> !step.title().isBlank()).map(step -> Seed.in(step, SpecimenEdits.replace(title(step), "\"" + step.title() + ", please\""))
                                        .naming("revision"))))
                        .besides(Set.of("better-order")),
                Kind.of("a closing brace lost", Set.of("unreadable-text"), specimen -> specimen.procedure().writtenSteps().stream()
                        .map(step -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.between(step.at().source(), step.at().end() - 1, step.at().end()))))).besides(everything()),
                Kind.of("a quotation mark lost", Set.of("unreadable-text"), specimen -> specimen.procedure().writtenSteps().stream().filter(step -> title(step).length() > 2)
                        .map(step -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.between(step.at().source(), title(step).end() - 1, title(step).end()))))).besides(everything()),
                Kind.of("an arrow mistyped", Set.of("unreadable-text"), specimen -> specimen.procedure().writtenSteps().stream().flatMap(step -> SpecimenEdits.first(step.at(), "->").stream()
                        .map(arrow -> Seed.in(step, SpecimenEdits.replace(arrow, ">"))))).besides(everything()),
                Kind.of("a keyword mistyped", Set.of("unreadable-text"), specimen -> specimen.procedure().writtenSteps().stream().skip(1)
                        .map(step -> Seed.in(step, SpecimenEdits.replace(SpecimenEdits.between(step.at().source(), step.at().offset(), step.at().offset() + step.keyword().length()),
                                step.keyword() + "e")))).besides(everything()));
    }

    private static Set<String> more() {
        return Consequences.all(OF_WALKS, OF_NAMES);
    }

    /** A text that cannot be read to the end misses whatever it held. */
    private static Set<String> everything() {
        return RuleSet.all().stream().map(rule -> rule.header().id()).filter(rule -> !rule.equals("changed-after-release")).collect(Collectors.toSet());
    }

    private static Stream<Example> examples(Specimen specimen) {
        return specimen.procedure().examples().stream();
    }

    /** The quoted words behind the name; a place of no length where it is called by its name alone. */
    static SourceRange title(Declaration declared) {
        return SpecimenEdits.first(SpecimenEdits.between(declared.at().source(), declared.name().at().end(), declared.at().end()), "\\A\\s*(\"(?:[^\"\\\\]|\\\\.)*\")")
                .orElseGet(() -> SpecimenEdits.between(declared.at().source(), declared.name().at().end(), declared.name().at().end()));
    }

    private static Optional<Seed> otherResult(Example example, Showing showing, Specimen specimen) {
        Procedure procedure = specimen.procedure();
        Optional<Step> step = procedure.step(showing.step());
        if (step.isEmpty() || showing.possible().get(0).reading().isPresent() || example.endsAt().isEmpty()) {
            return Optional.empty();
        }
        String said = showing.possible().get(0).words().text();
        Optional<String> target = step.get().outcomes().stream().filter(outcome -> outcome.key().equals(said))
                .flatMap(outcome -> outcome.target().stream()).map(Object::toString).findFirst();
        return target.flatMap(right -> step.get().outcomes().stream()
                .filter(outcome -> outcome.target().map(name -> !name.text().equals(right)).orElse(false)
                        && !(outcome.head() instanceof Outcome.AnythingElse)
                        && !(outcome.head() instanceof Outcome.Band band && band.label().isEmpty())).findFirst())
                .map(outcome -> Seed.at(showing.at(), SpecimenEdits.replace(showing.possible().get(0).words().at(), words(outcome))));
    }

    /** A lamp may show what no table has: then the step goes on by anything else, as it did before the change. */
    private static Optional<String> isAnythingElse(Showing showing, Specimen specimen) {
        String said = showing.possible().get(0).words().text();
        return specimen.procedure().step(showing.step()).filter(step -> step instanceof Step.Observe).flatMap(step -> {
            Optional<String> rest = step.outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.AnythingElse)
                    .flatMap(outcome -> outcome.target().stream()).map(Object::toString).findFirst();
            Optional<String> own = step.outcomes().stream().filter(outcome -> outcome.key().equals(said))
                    .flatMap(outcome -> outcome.target().stream()).map(Object::toString).findFirst();
            return rest.filter(target -> own.map(target::equals).orElse(true)).map(target -> "anything else leads the same way");
        });
    }

    static String words(Outcome outcome) {
        return outcome.head() instanceof Outcome.Band band ? band.label().get().text() : outcome.isUnderstood() ? outcome.key() : outcome.head().at().text();
    }

    static SourceRange all(SourceText text) {
        return SpecimenEdits.between(text, 0, text.content().length());
    }
}

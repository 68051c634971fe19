/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Changes after which nothing more may be found: each finding after one of them is a false alarm. */
final class HarmlessChanges {
    private HarmlessChanges() {
    }

    static List<Kind> kinds() {
        return List.of(
                harmless("a comment put in", specimen -> specimen.ownSteps().stream()
                        .map(step -> Seed.in(step, Edits.insertBefore(step.at(), "/* looked at again */\n// twice\n")))),
                harmless("the words of a step changed", specimen -> specimen.procedure().writtenSteps().stream().filter(step -> !step.title().isBlank())
                        .map(step -> Seed.in(step, Edits.replace(RecordDefects.title(step), "\"As before, said otherwise\"")))),
                harmless("a step moved to the end of the text", specimen -> specimen.procedure().begin().stream().flatMap(begin -> specimen.procedure().writtenSteps().stream()
                        .map(step -> Seed.in(step, Edits.delete(step.at()), Edits.insertAfter(RecordDefects.all(step.at().source()), "\n" + step.at().text() + "\n"))))),
                harmless("a step renamed wherever it is named", specimen -> specimen.procedure().writtenSteps().stream().map(step -> renamed(step, specimen))),
                harmless("the results of a step in another order", specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(step -> step.outcomes().size() > 1 && step.outcomes().stream().noneMatch(outcome -> !outcome.proves().isEmpty()))
                        .map(step -> Seed.in(step, Edits.replace(step.outcomes().get(0).at(), step.outcomes().get(1).at().text()),
                                Edits.replace(step.outcomes().get(1).at(), step.outcomes().get(0).at().text())))),
                harmless("a hint added", specimen -> specimen.procedure().writtenSteps().stream().filter(step -> step.frame().hint().isEmpty())
                        .map(step -> Seed.in(step, Edits.insertInside(step.at(), "hint \"Take your time.\"")))),
                harmless("another board named", specimen -> specimen.procedure().equipment().stream().filter(equipment -> !equipment.boards().isEmpty())
                        .map(equipment -> Seed.at(equipment.at(), Edits.insertAfter(equipment.at(), ", \"Z9\"")))),
                harmless("a limit in a smaller unit", specimen -> specimen.ownSteps().stream().filter(step -> step instanceof Step.Measure)
                        .flatMap(step -> ((Step.Measure) step).expects().stream().flatMap(expected -> Edits.first(expected.limit().at(), "^at (?:most|least) (\\d+) (?:V|A|ohm|N)$")
                                .stream().map(number -> Seed.in(step, Edits.insertAfter(Edits.between(number.source(), number.offset(), number.end() + 1),
                                        "m"), Edits.insertAfter(number, "000")))))),
                harmless("the needs of a step in another order", specimen -> specimen.ownSteps().stream().filter(step -> step.frame().needs().size() > 1)
                        .map(step -> Seed.in(step, Edits.replace(step.frame().needs().get(0).at(), step.frame().needs().get(1).at().text()),
                                Edits.replace(step.frame().needs().get(1).at(), step.frame().needs().get(0).at().text())))),
                harmless("a note read once more", specimen -> specimen.procedure().writtenSteps().stream().filter(step -> step.frame().notes().isEmpty()
                        && !(step instanceof Step.Conclude)).flatMap(step -> specimen.procedure().scope().notes().stream().limit(1)
                                .map(note -> Seed.in(step, Edits.insertInside(step.at(), "notes " + note.name()))))),
                harmless("a wider time in an example", specimen -> specimen.procedure().examples().stream().flatMap(example -> example.within().stream()
                        .map(time -> Seed.at(time.at(), Edits.replace(time.at(), "9 h"))))),
                harmless("the whole text in Windows line ends", specimen -> Stream.of(Seed.at(RecordDefects.all(specimen.procedure().source()),
                        Edits.replace(RecordDefects.all(specimen.procedure().source()), specimen.procedure().source().content().replace("\n", "\r\n"))))));
    }

    private static Kind harmless(String title, Function<Specimen, Stream<Seed>> seeds) {
        return Kind.of(title, Set.of(), seeds);
    }

    /** Steps are named by ways, faults, examples and formulas. */
    private static Seed renamed(Step step, Specimen specimen) {
        String text = specimen.procedure().source().content();
        Seed seed = Seed.in(step, Edits.insertAfter(step.name().at(), Specimen.RENAMED));
        Stream<Name> shown = Stream.concat(specimen.procedure().faults().stream().flatMap(fault -> fault.shows().stream()),
                specimen.procedure().examples().stream().flatMap(example -> example.shows().stream())).map(Showing::step);
        Stream<Name> others = Stream.concat(specimen.procedure().faults().stream().flatMap(fault -> fault.remedies().stream()),
                specimen.procedure().examples().stream().flatMap(example -> example.endsAt().stream()));
        List<Name> uses = Stream.of(Specimen.leadingTo(step.name(), specimen.procedure()), shown, others).flatMap(names -> names)
                .filter(name -> name.text().equals(step.name().text())).toList();
        for (Name use : uses) {
            seed = seed.with(Edits.insertAfter(use.at(), Specimen.RENAMED));
        }
        for (Step other : specimen.procedure().writtenSteps()) {
            if (other instanceof Step.Calculate calculate && calculate.formula().isPresent()) {
                SourceRange in = calculate.formula().get().at();
                Matcher matcher = Pattern.compile("\\b" + step.name().text() + "\\b").matcher(text.substring(in.offset(), in.end()));
                while (matcher.find()) {
                    seed = seed.with(Edits.insertAfter(Edits.between(in.source(), in.offset() + matcher.start(), in.offset() + matcher.end()), Specimen.RENAMED));
                }
            }
        }
        return seed;
    }
}

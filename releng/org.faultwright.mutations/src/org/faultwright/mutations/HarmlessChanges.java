/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.RunningOn;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;

/** Changes after which nothing more may be found: each finding after one of them is a false alarm. */
final class HarmlessChanges {
    private HarmlessChanges() {
    }

    static List<Kind> kinds() {
        return List.of(
                harmless("a comment put in", specimen -> specimen.ownSteps().stream()
                        .map(step -> Seed.in(step, SpecimenEdits.insertBefore(step.at(), "/* looked at again */\n// twice\n")))),
                harmless("the words of a step changed", specimen -> specimen.procedure().writtenSteps().stream().filter(step -> !step.title().isBlank())
                        .map(step -> Seed.in(step, SpecimenEdits.replace(RecordDefects.title(step), "\"As before, said otherwise\"")))),
                harmless("a step moved to the end of the text", specimen -> specimen.procedure().writtenSteps().stream()
                        // where nothing says where to begin it is at the first step
                        .skip(specimen.procedure().begin().isPresent() ? 0 : 1)
                        // one that runs on would run on into nothing
                        .filter(step -> RunningOn.arrows(specimen.procedure()).stream().noneMatch(arrow -> arrow.step() == step))
                        .map(step -> Seed.in(step, SpecimenEdits.kept(specimen, SpecimenEdits.delete(step.at()),
                                SpecimenEdits.insertAfter(RecordDefects.all(step.at().source()), "\n" + step.at().text() + "\n"))))),
                harmless("a step renamed wherever it is named", specimen -> specimen.procedure().writtenSteps().stream().map(step -> renamed(step, specimen))),
                harmless("the results of a step in another order", specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(step -> step.outcomes().size() > 1 && step.outcomes().stream().noneMatch(outcome -> !outcome.proves().isEmpty()))
                        .map(step -> Seed.in(step, SpecimenEdits.replace(step.outcomes().get(0).at(), step.outcomes().get(1).at().text()),
                                SpecimenEdits.replace(step.outcomes().get(1).at(), step.outcomes().get(0).at().text())))),
                harmless("a hint added", specimen -> specimen.procedure().writtenSteps().stream().filter(step -> step.frame().hint().isEmpty())
                        .map(step -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "hint \"Take your time.\"")))),
                harmless("another board named", specimen -> specimen.procedure().equipment().stream().filter(equipment -> !equipment.boards().isEmpty())
                        .map(equipment -> Seed.at(equipment.at(), SpecimenEdits.insertAfter(equipment.at(), ", \"Z9\"")))),
                harmless("a limit in a smaller unit", specimen -> specimen.ownSteps().stream().filter(step -> step instanceof Step.Measure)
                        .flatMap(step -> ((Step.Measure) step).expects().stream().flatMap(expected -> SpecimenEdits.first(expected.limit().at(), "^at (?:most|least) (\\d+) (?:V|A|ohm|N)$")
                                .stream().map(number -> Seed.in(step, SpecimenEdits.insertAfter(SpecimenEdits.between(number.source(), number.offset(), number.end() + 1),
                                        "m"), SpecimenEdits.insertAfter(number, "000")))))),
                harmless("the needs of a step in another order", specimen -> specimen.ownSteps().stream().filter(step -> step.frame().needs().size() > 1)
                        .map(step -> Seed.in(step, SpecimenEdits.replace(step.frame().needs().get(0).at(), step.frame().needs().get(1).at().text()),
                                SpecimenEdits.replace(step.frame().needs().get(1).at(), step.frame().needs().get(0).at().text())))),
                harmless("a note read once more", specimen -> specimen.procedure().writtenSteps().stream().filter(step -> step.frame().notes().isEmpty()
                        && !(step instanceof Step.Conclude)).flatMap(step -> specimen.procedure().scope().notes().stream().limit(1)
                                .map(note -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "notes " + note.name()))))),
                harmless("a wider time in an example", specimen -> specimen.procedure().examples().stream().flatMap(example -> example.within().stream()
                        .map(time -> Seed.at(time.at(), SpecimenEdits.replace(time.at(), "9 h"))))),
                harmless("a live reading that says why", specimen -> specimen.ownSteps().stream().filter(step -> step instanceof Step.Measure
                        && step.frame().precautions().liveBecause().isEmpty() && tellsOfShock(step, specimen) && needs(step, "Supply", "on"))
                        .map(step -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "live because \"it can only be read while it runs\"")))),
                before("a fuse drawn before anything is proved", "\npart FuseNine \"F9, out of its holder\" isolated\n",
                        next -> "do DrawFuseNine \"Draw F9\" { handles FuseNine takes 1 s then -> " + next + " }\n", "DrawFuseNine"),
                before("a pack clipped in and unclipped", "\ncondition PackNine \"Pack\" { out, clipped } live when clipped starts out ends out\n",
                        next -> "do ClipNine \"Clip the pack in\" { sets PackNine clipped takes 1 s then -> UnclipNine }\n"
                                + "do UnclipNine \"Unclip the pack\" { sets PackNine out takes 1 s then -> " + next + " }\n", "ClipNine"),
                before("a lid lifted that the user lifts as well", "\ncondition LidNine \"Paper lid\" { shut, lifted } starts shut ends shut may change live\n",
                        next -> "do LiftNine \"Lift the lid\" { sets LidNine lifted takes 1 s then -> ShutNine }\n"
                                + "do ShutNine \"Shut the lid\" { sets LidNine shut takes 1 s then -> " + next + " }\n", "LiftNine"),
                harmless("a tool with its rating", specimen -> specimen.ownSteps().stream().flatMap(step -> step.frame().tools().stream()
                        .map(tool -> Seed.in(step, SpecimenEdits.insertAfter(tool.at(), " rated 1000 V"))))),
                harmless("a meter tried once more", specimen -> specimen.ownSteps().stream().filter(Step.Check.class::isInstance)
                        .flatMap(step -> specimen.procedure().scope().instruments().stream().limit(1)
                                .map(meter -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "tries " + meter.name()))))),
                harmless("the house limit left to the standard", specimen -> specimen.declarations().flatMap(declared -> declared.conditions().stream())
                        .flatMap(condition -> condition.proved().stream().flatMap(proof -> proof.limit().stream())
                                .map(limit -> Seed.in(condition, SpecimenEdits.delete(limit.at()))))),
                harmless("a capacitor too small to hurt", specimen -> specimen.procedure().own().points().stream()
                        .filter(point -> point.stores().isEmpty() && point.isolated().isEmpty() && point.carries().filter(carried ->
                                carried.kind() == QuantityKind.DC_VOLTAGE && carried.upTo().value().base().compareTo(Exact.of(450)) <= 0).isPresent())
                        .map(point -> Seed.in(point, SpecimenEdits.insertAfter(point.at(), " stores 47 nF")))),
                harmless("what a step sets in another order", specimen -> specimen.ownSteps().stream().filter(step -> step.frame().sets().size() > 1)
                        .map(step -> Seed.in(step, SpecimenEdits.replace(step.frame().sets().get(0).at(), step.frame().sets().get(1).at().text()),
                                SpecimenEdits.replace(step.frame().sets().get(1).at(), step.frame().sets().get(0).at().text())))),
                harmless("a stronger signal word", specimen -> specimen.declarations().flatMap(declared -> declared.notes().stream())
                        .filter(note -> note.word() == SignalWord.CAUTION).flatMap(note -> SpecimenEdits.first(note.at(), "\\bcaution\\b").stream()
                                .map(word -> Seed.in(note, SpecimenEdits.replace(word, "warning"))))),
                harmless("the class of the unit said", specimen -> specimen.procedure().equipment().stream()
                        .filter(equipment -> equipment.protection().isEmpty()).flatMap(equipment -> SpecimenEdits.first(equipment.at(), "equipment \"[^\"]*\"").stream())
                        .map(title -> Seed.at(title, SpecimenEdits.insertAfter(title, " class III")))),
                harmless("the whole text in Windows line ends", specimen -> Stream.of(Seed.at(RecordDefects.all(specimen.procedure().source()),
                        SpecimenEdits.replace(RecordDefects.all(specimen.procedure().source()), specimen.procedure().source().content().replace("\n", "\r\n"))))));
    }

    /** One or two steps put in before a conclusion, where hands are as free as anywhere. */
    private static Kind before(String title, String declared, UnaryOperator<String> steps, String first) {
        return harmless(title, specimen -> specimen.ownSteps().stream().filter(step -> specimen.procedure().writtenSteps().contains(step))
                .flatMap(step -> step.outcomes().stream().limit(1).flatMap(outcome -> outcome.target().stream())
                        .filter(target -> specimen.procedure().step(target).filter(Step.Conclude.class::isInstance).isPresent())
                        .map(target -> Seed.in(step, SpecimenEdits.replace(target.at(), first), SpecimenEdits.insertBefore(step.at(), declared.strip() + "\n"),
                                SpecimenEdits.insertAfter(step.at(), "\n" + steps.apply(target.text()))))));
    }

    private static boolean needs(Step step, String condition, String value) {
        return step.frame().needs().stream().anyMatch(need -> need.condition().text().equals(condition) && need.value().text().equals(value));
    }

    private static boolean tellsOfShock(Step step, Specimen specimen) {
        return step.frame().notes().stream().flatMap(name -> specimen.procedure().scope().note(name).stream())
                .anyMatch(note -> note.covers().stream().anyMatch(covered -> covered.value() == Hazard.SHOCK));
    }

    private static Kind harmless(String title, Function<Specimen, Stream<Seed>> seeds) {
        return Kind.of(title, Set.of(), seeds);
    }

    /** Steps are named by ways, faults, examples and formulas. */
    private static Seed renamed(Step step, Specimen specimen) {
        String text = specimen.procedure().source().content();
        Seed seed = Seed.in(step, SpecimenEdits.insertAfter(step.name().at(), Specimen.RENAMED));
        Stream<Name> shown = Stream.concat(specimen.procedure().faults().stream().flatMap(fault -> fault.shows().stream()),
                specimen.procedure().examples().stream().flatMap(example -> example.shows().stream())).map(Showing::step);
        Stream<Name> others = Stream.concat(specimen.procedure().faults().stream().flatMap(fault -> fault.remedies().stream()),
                specimen.procedure().examples().stream().flatMap(example -> example.endsAt().stream()));
        List<Name> uses = Stream.of(Specimen.leadingTo(step.name(), specimen.procedure()), shown, others).flatMap(names -> names)
                .filter(name -> ClosingStep.written(name.text()).equals(step.name().text())).toList();
        for (Name use : uses) {
            seed = seed.with(SpecimenEdits.insertAfter(use.at(), Specimen.RENAMED));
        }
        for (Step other : specimen.procedure().writtenSteps()) {
            if (other instanceof Step.Calculate calculate && calculate.formula().isPresent()) {
                SourceRange in = calculate.formula().get().at();
                Matcher matcher = Pattern.compile("\\b" + step.name().text() + "\\b").matcher(text.substring(in.offset(), in.end()));
                while (matcher.find()) {
                    seed = seed.with(SpecimenEdits.insertAfter(SpecimenEdits.between(in.source(), in.offset() + matcher.start(), in.offset() + matcher.end()), Specimen.RENAMED));
                }
            }
        }
        return seed;
    }
}

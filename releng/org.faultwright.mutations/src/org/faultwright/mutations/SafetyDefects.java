/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.faultwright.mutations.Consequences.OF_NAMES;
import static org.faultwright.mutations.Consequences.OF_WALKS;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** Notes, complaint, repair and data: what protects people, the unit and the customer, left out. */
final class SafetyDefects {
    private static final Set<String> OUT = Set.of(Step.BELOW, Step.ABOVE, Step.OUTSIDE);
    private static final Set<String> UNREAD = Set.of("note-never-read", "note-after-need");

    private SafetyDefects() {
    }

    static List<Kind> kinds() {
        return List.of(
                Kind.of("the only note about a hazard taken out of a step", UNREAD, specimen -> specimen.procedure().writtenSteps().stream()
                        .flatMap(step -> step.frame().notes().stream().filter(note -> isOnly(note.text(), step, specimen))
                                .map(note -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.fromList(note.at())))))).besides(more()),
                Kind.of("the only note about a hazard read a step too late", UNREAD, specimen -> specimen.procedure().writtenSteps().stream()
                        .flatMap(step -> step.frame().notes().stream().filter(note -> isOnly(note.text(), step, specimen))
                                .flatMap(note -> step.outcomes().stream().limit(1).flatMap(outcome -> outcome.target().stream())
                                        .flatMap(next -> specimen.procedure().step(next).stream()).filter(next -> next.frame().notes().isEmpty())
                                        .map(next -> Seed.in(step, SpecimenEdits.delete(SpecimenEdits.fromList(note.at()))).with(SpecimenEdits.insertInside(next.at(), "notes " + note)))))).besides(more()),
                Kind.of("notes covering nothing", UNREAD, specimen -> notes(specimen).filter(note -> isNeeded(note, specimen))
                        .flatMap(note -> note.covers().stream().limit(1).map(covered -> Seed.in(note, note.covers().stream().skip(1)
                                .reduce(SpecimenEdits.delete(whole(note)), (edit, next) -> edit, (one, other) -> one)))))
                        .besides(more()).besides(Set.of("incomplete-note", "signal-word-fit")),
                Kind.of("a note taken out of the library", Set.of("unknown-name"), specimen -> notes(specimen)
                        .filter(note -> isRead(note, specimen)).map(note -> Seed.in(note, SpecimenEdits.delete(note.at())))).besides(more()),
                Kind.of("a note without its consequence", Set.of("incomplete-note"), specimen -> notes(specimen)
                        .flatMap(note -> SpecimenEdits.first(note.at(), "consequence \"[^\"]*\"").stream().map(words -> Seed.in(note, SpecimenEdits.delete(words))))),
                Kind.of("a note that does not say how to avoid it", Set.of("incomplete-note"), specimen -> notes(specimen)
                        .flatMap(note -> SpecimenEdits.first(note.at(), "avoid \"[^\"]*\"").stream().map(words -> Seed.in(note, SpecimenEdits.delete(words))))),
                Kind.of("a danger to people called a notice", Set.of("signal-word-fit"), specimen -> notes(specimen)
                        .filter(note -> note.word() != SignalWord.NOTICE && note.covers().stream().anyMatch(covered -> covered.value().hurtsPeople()))
                        .flatMap(note -> SpecimenEdits.first(note.at(), "\\b(danger|warning|caution)\\b").stream().map(word -> Seed.in(note, SpecimenEdits.replace(word, "notice")))))
                        .besides(more()),
                Kind.of("a hazard that no note is read about", UNREAD, specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(step -> step instanceof Step.Do).flatMap(step -> unread(specimen).stream().limit(1)
                                .map(hazard -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "hazards " + hazard.word())).naming(hazard.word())))).besides(more()),
                Kind.of("a point at mains voltage, and no note about shock", UNREAD, specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast)
                        .flatMap(step -> step.point().flatMap(specimen.procedure().scope()::point).stream()
                                .filter(point -> point.at().source() == specimen.procedure().source())
                                .flatMap(point -> point.carries().stream().map(carried -> Seed.in(point, SpecimenEdits.replace(carried.upTo().at(), "230 V"))
                                        .naming(step.name().text())).map(seed -> withoutShockNotes(seed, specimen)))))
                        .besides(more()).besides(Consequences.OF_READINGS).besides(Set.of("input-rating-too-low", "category-too-low", "range-exceeded", "ac-dc-mixed", "incomplete-note",
                                "protection-not-tested", "live-tool-unfit", "stored-charge-unsaid")),
                Kind.of("the complaint not confirmed", Set.of("complaint-not-confirmed"), specimen -> specimen.procedure().writtenSteps().stream()
                        .flatMap(step -> step.frame().confirms().stream().map(words -> Seed.in(step, SpecimenEdits.delete(words))))).besides(more()),
                Kind.of("the repair not verified", Set.of("repair-not-verified"), specimen -> specimen.steps().stream()
                        .flatMap(step -> step.frame().verifies().stream().map(words -> Seed.in(step, SpecimenEdits.delete(words))))).besides(more()),
                Kind.of("a repair concluded on at once", Set.of("repair-not-verified"), specimen -> specimen.procedure().faults().stream()
                        .flatMap(fault -> fault.remedies().stream()).flatMap(name -> specimen.procedure().step(name).stream())
                        .filter(step -> step.outcomes().size() == 1 && step.outcomes().get(0).target().isPresent())
                        .flatMap(step -> specimen.procedure().writtenSteps().stream().filter(one -> one instanceof Step.Conclude conclude && !conclude.finds().isEmpty()
                                && conclude.finds().stream().anyMatch(found -> specimen.procedure().fault(found).map(fault -> fault.remedies().stream()
                                        .anyMatch(remedy -> remedy.text().equals(step.name().text()))).orElse(false))).limit(1)
                                .map(end -> Seed.in(step, SpecimenEdits.replace(step.outcomes().get(0).target().get().at(), end.name().text()))))).besides(more()),
                Kind.of("data erased without asking", Set.of("erase-without-backup-check"), specimen -> specimen.procedure().writtenSteps().stream()
                        .filter(step -> step instanceof Step.Do task && task.erases().isPresent()).flatMap(step -> asking(specimen)
                                .map(check -> Seed.in(check, SpecimenEdits.delete(SpecimenEdits.fromList(check.frame().notes().stream()
                                        .filter(note -> isAbout(note.text(), Hazard.DATA_LOSS, specimen)).findFirst().get().at())))))).besides(more()),
                Kind.of("a question about data that leads on alike", Set.of("erase-without-backup-check", "unused-reading"), specimen -> asking(specimen)
                        .flatMap(check -> specimen.procedure().writtenSteps().stream().filter(step -> step.name().equals(check.name())))
                        .filter(check -> check.outcomes().size() > 1).flatMap(check -> alike(check).stream())).besides(more()),
                Kind.of("a trial of the repair that leads on alike", Set.of("repair-not-verified", "unreachable-outcome", "unused-exit"), specimen -> specimen.steps().stream()
                        .filter(step -> step.frame().verifies().isPresent() && step.outcomes().size() > 1)
                        .flatMap(step -> alike(step).stream())).besides(more()),
                Kind.of("a reading out of its limit that finds nothing", Set.of("nothing-found-wrongly", "unused-reading"), specimen -> sound(specimen).stream().flatMap(end ->
                        specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Measure measure && measure.expects().isPresent())
                                .flatMap(step -> step.outcomes().stream().filter(outcome -> OUT.contains(outcome.key()) && outcome.at().length() > 0)
                                        .flatMap(outcome -> outcome.target().stream()).map(target -> Seed.in(step, SpecimenEdits.replace(target.at(), end))))))
                        .besides(more()).dangerous(),
                Kind.of("a trial of the repair made again until it passes", Set.of("tested-until-passed"), specimen -> specimen.steps().stream()
                        .filter(step -> step.frame().verifies().isPresent() && step.outcomes().size() == 2 && step instanceof Step.Check)
                        .flatMap(step -> step.outcomes().stream().skip(1).filter(outcome -> outcome.repeat().isEmpty() && outcome.at().length() > 0)
                                .flatMap(outcome -> outcome.target().stream()).map(target -> Seed.in(step, SpecimenEdits.replace(target.at(),
                                        step.name() + " at most 2 times, else " + target.at().text()))))).besides(more()),
                Kind.of("a second thing erased after a question about the first", Set.of("question-about-other-data", "erase-without-backup-check", "note-never-read", "note-after-need"),
                        specimen -> specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Do task && task.erases().isEmpty())
                                .filter(step -> asking(specimen).findAny().isPresent())
                                .map(step -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "erases \"the night shift's tally\"")))).besides(more()),
                Kind.of("a step that erases data, not asked about", Set.of("erase-without-backup-check", "note-never-read", "note-after-need"),
                        specimen -> specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Do task && task.erases().isEmpty())
                                .filter(step -> asking(specimen).findAny().isEmpty())
                                .map(step -> Seed.in(step, SpecimenEdits.insertInside(step.at(), "erases \"the customer's settings\"")))).besides(more()));
    }

    /** The conclusion that finds nothing. */
    private static Optional<String> sound(Specimen specimen) {
        return specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Conclude end && end.findsNothing().isPresent())
                .map(step -> step.name().text()).findFirst();
    }

    /** Every outcome leads to where the first one does, and the words stay. */
    private static Optional<Seed> alike(Step step) {
        Optional<String> first = step.outcomes().get(0).target().map(target -> target.at().text());
        return first.flatMap(target -> step.outcomes().stream().skip(1).flatMap(outcome -> outcome.target().stream()
                .map(other -> SpecimenEdits.replace(new SourceRange(other.at().source(), other.at().offset(), outcome.at().end() - other.at().offset()), target)))
                .reduce(Optional.<Seed>empty(), (seed, edit) -> Optional.of(seed.map(known -> known.with(edit)).orElseGet(() -> Seed.in(step, edit))),
                        (one, other) -> one));
    }

    private static Set<String> more() {
        return Consequences.all(OF_WALKS, OF_NAMES, UNREAD, Set.of("erase-without-backup-check", "repair-not-verified", "unreachable-step",
                "complaint-not-confirmed", "unused-reading", "path-without-end", "left-open", "need-not-established", "contradictory-needs", "charge-not-proved-absent", "protection-not-tested"));
    }

    private static SourceRange whole(Note note) {
        Written<Hazard> first = note.covers().get(0);
        Written<Hazard> last = note.covers().get(note.covers().size() - 1);
        return SpecimenEdits.between(first.at().source(), SpecimenEdits.withKeywords(first.at(), "covers").offset(), last.at().end());
    }

    private static Stream<Note> notes(Specimen specimen) {
        return specimen.declarations().flatMap(declared -> declared.notes().stream());
    }

    private static boolean isRead(Note note, Specimen specimen) {
        return specimen.steps().stream().flatMap(step -> step.frame().notes().stream()).anyMatch(name -> name.text().equals(note.name().text()));
    }

    /** Whether some hazard is covered by this note alone among those read, and a step states that hazard. */
    private static boolean isNeeded(Note note, Specimen specimen) {
        return isRead(note, specimen) && note.covers().stream().map(Written::value).anyMatch(hazard -> stated(specimen).contains(hazard)
                && notes(specimen).filter(other -> other != note && isRead(other, specimen))
                        .noneMatch(other -> other.covers().stream().anyMatch(covered -> covered.value() == hazard)));
    }

    /** The hazards that steps, and the parts they handle, state by name. */
    private static Set<Hazard> stated(Specimen specimen) {
        Set<Hazard> stated = new HashSet<>();
        specimen.procedure().writtenSteps().forEach(step -> stated.addAll(stated(step, specimen)));
        return stated;
    }

    private static Set<Hazard> stated(Step step, Specimen specimen) {
        return Stream.concat(step.frame().hazards().stream(), step.frame().handles().stream()
                .flatMap(name -> specimen.procedure().scope().part(name).stream()).flatMap(part -> part.hazards().stream()))
                .map(Written::value).collect(Collectors.toSet());
    }

    /** Whether the step states a hazard that this note covers and that no other step reads a note about. */
    private static boolean isOnly(String note, Step step, Specimen specimen) {
        return stated(step, specimen).stream().filter(hazard -> isAbout(note, hazard, specimen))
                .anyMatch(hazard -> specimen.steps().stream().filter(other -> other != step)
                        .flatMap(other -> other.frame().notes().stream()).noneMatch(name -> isAbout(name.text(), hazard, specimen))
                        && step.frame().notes().stream().filter(name -> isAbout(name.text(), hazard, specimen)).count() == 1);
    }

    private static boolean isAbout(String note, Hazard hazard, Specimen specimen) {
        return notes(specimen).filter(one -> one.name().text().equals(note)).flatMap(one -> one.covers().stream())
                .anyMatch(covered -> covered.value() == hazard);
    }

    private static Seed withoutShockNotes(Seed seed, Specimen specimen) {
        Seed untold = seed;
        for (Note note : notes(specimen).toList()) {
            for (Written<Hazard> covered : note.covers()) {
                untold = covered.value() == Hazard.SHOCK ? untold.with(SpecimenEdits.delete(SpecimenEdits.fromList(covered.at()))) : untold;
            }
        }
        return untold;
    }

    private static List<Hazard> unread(Specimen specimen) {
        return Stream.of(Hazard.values()).filter(hazard -> specimen.steps().stream().flatMap(step -> step.frame().notes().stream())
                .noneMatch(name -> isAbout(name.text(), hazard, specimen))).toList();
    }

    private static Stream<Step> asking(Specimen specimen) {
        return specimen.procedure().writtenSteps().stream().filter(step -> step instanceof Step.Check && step.outcomes().size() > 1
                && step.frame().notes().stream().anyMatch(note -> isAbout(note.text(), Hazard.DATA_LOSS, specimen)));
    }
}

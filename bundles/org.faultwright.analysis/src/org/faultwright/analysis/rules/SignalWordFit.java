/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ProbePoints;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;

/** A note whose signal word does not fit what it covers (ANSI Z535.6, ISO 3864-2). */
public final class SignalWordFit implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("signal-word-fit", Severity.WARNING, Group.SAFETY,
            "A note says less than what it is about: a notice about people, a caution at a voltage that kills; or more, about things or data.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.document().own().notes().forEach(note -> check(note, findings));
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> atPoint(step, subject, findings));
    }

    /** A reading at a voltage that can kill, under words that promise a lesser injury at most. */
    private static void atPoint(Step.Measure step, Subject subject, Findings findings) {
        List<Name> ofShock = step.frame().notes().stream().filter(name -> subject.scope().note(name).filter(SignalWordFit::coversShock).isPresent()).toList();
        Predicate<Name> weak = name -> subject.scope().note(name).filter(note -> note.word() == SignalWord.CAUTION).isPresent();
        boolean live = step.kind().map(Written::value).filter(kind -> kind.isVoltage() || kind.isCurrent()).isPresent();
        if (live && !ofShock.isEmpty() && ofShock.stream().allMatch(weak)) {
            ProbePoints.points(step, subject.scope()).stream().filter(SignalWordFit::isDangerous).findFirst()
                    .ifPresent(point -> findings.report(ofShock.get(0).at(), point.name() + " carries up to " + point.carries().orElseThrow().upTo().value()
                            + ", which can kill, and " + ofShock.get(0) + " is only a caution.",
                            "Read a note here that is a warning or a danger."));
        }
    }

    private static boolean coversShock(Note note) {
        return note.covers().stream().anyMatch(covered -> covered.value() == Hazard.SHOCK);
    }

    private static boolean isDangerous(Point point) {
        return point.carries().filter(carried -> carried.upTo().value().fits(carried.kind())).flatMap(carried ->
                VoltageLimit.exceededBy(carried.kind(), carried.upTo().value().base())).filter(limit -> limit == VoltageLimit.EXTRA_LOW).isPresent();
    }

    private static void check(Note note, Findings findings) {
        List<Hazard> toPeople = note.covers().stream().map(Written::value).filter(Hazard::hurtsPeople).toList();
        String word = spoken(note.word());
        if (!toPeople.isEmpty() && !note.word().isAboutPeople()) {
            findings.report(Severity.ERROR, note.name().at(),
                    note.name() + " covers " + words(toPeople.stream()) + ", which can hurt people, but is only a notice.",
                    "Make it a caution, a warning or a danger, by how badly it can hurt.",
                    fixes(note, SignalWord.CAUTION, SignalWord.WARNING, SignalWord.DANGER));
        } else if (toPeople.isEmpty() && !note.covers().isEmpty() && note.word().isAboutPeople()) {
            findings.report(note.name().at(),
                    note.name() + " covers only " + words(note.covers().stream().map(Written::value)) + ", but is a "
                            + word + ", a word kept for what can hurt people.",
                    "Make it a notice.", fixes(note, SignalWord.NOTICE));
        }
    }

    private static String spoken(SignalWord word) {
        return word.name().toLowerCase(Locale.ROOT);
    }

    private static String words(Stream<Hazard> hazards) {
        return hazards.map(Hazard::word).collect(Collectors.joining(" and "));
    }

    /** The word stands right behind the name. */
    private static Fix[] fixes(Note note, SignalWord... words) {
        SourceRange behind = new SourceRange(note.at().source(), note.name().at().end(),
                Math.max(0, note.at().end() - note.name().at().end()));
        return new SourceLocator(behind).next(spoken(note.word())).map(at -> Stream.of(words)
                .map(word -> Fix.replacing("Make it a " + spoken(word), at, spoken(word))).toArray(Fix[]::new))
                .orElseGet(() -> new Fix[0]);
    }
}

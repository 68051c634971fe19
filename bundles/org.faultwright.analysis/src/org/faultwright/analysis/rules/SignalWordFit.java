/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Locale;
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
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Written;

/** A note whose signal word does not fit what it covers (ANSI Z535.6, ISO 3864-2). */
public final class SignalWordFit implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("signal-word-fit", Severity.WARNING, Group.SAFETY,
            "A note about people is only a notice, or one about things or data more than a notice.");

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

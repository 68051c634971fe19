/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.NearNames;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.SignalWord;
import org.faultwright.quantity.QuantityKind;

/** Words that are no part of the language. */
public final class UnreadableText implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unreadable-text", Severity.ERROR, Group.NAMES,
            "Words that cannot be read as part of a procedure or library.");
    private static final List<String> FIXED_WORDS = fixedWords();

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (ReadingProblem problem : subject.document().problems()) {
            findings.report(problem.at(), problem.message(),
                    "Correct or remove these words; " + waiting(problem),
                    fixes(problem));
        }
    }

    private static String waiting(ReadingProblem problem) {
        String what = problem.block().map(block -> block.words()).orElse("this");
        return what + " cannot be read until then, and what depends on it is checked when it can.";
    }

    /** Words of a fixed list that are near what is written, where the message names that list. */
    private static Fix[] fixes(ReadingProblem problem) {
        List<String> listed = FIXED_WORDS.stream().filter(word -> problem.message()
                .matches("(?s).*\\b" + word + "\\b.*")).toList();
        return NearNames.of(problem.at().text(), listed).stream()
                .map(near -> Fix.replacing("Write " + near, problem.at(), near)).toArray(Fix[]::new);
    }

    private static List<String> fixedWords() {
        Stream<String> lower = Stream.<Enum<?>[]>of(SignalWord.values(), Revision.Status.values()).flatMap(Arrays::stream)
                .map(word -> word.name().toLowerCase(Locale.ROOT));
        return Stream.of(Arrays.stream(Hazard.values()).map(Hazard::word), Arrays.stream(QuantityKind.values())
                .map(QuantityKind::words), lower)
                .flatMap(words -> words).toList();
    }
}

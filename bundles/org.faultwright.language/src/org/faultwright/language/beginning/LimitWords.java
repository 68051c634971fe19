/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;

/** Whether words are a limit, and of which quantity: asked of the language itself. */
public final class LimitWords {
    private static final String TEXT = """
            procedure Try "Try"
            equipment "Maker" boards "A"
            revision 1 draft
            complaints "none"
            instrument Meter "Meter" {
            %s
            }
            point Here "Here"
            measure Read "Read" {
            %s at Here using Meter
            expects %s
            takes 1 min
            within -> End
            outside -> End
            }
            conclude End "End" {
            finds nothing
            report "End"
            }
            """;

    private LimitWords() {
    }

    /** The quantity that has such limits, the usual one first: volts are taken for a dc voltage; absent where the words are no limit. */
    static Optional<String> quantity(String words, List<String> ranges) {
        return List.of("dc voltage", "resistance", "dc current", "capacitance", "frequency").stream()
                .filter(quantity -> problem(quantity, words, ranges).isEmpty()).findFirst();
    }

    /**
     * Why words are no limit of a quantity; absent where they are.
     *
     * @param quantity as the language writes it
     * @param words    as somebody types them; see {@link Interview#limit(String)}
     * @param ranges   of the meter that it is read with
     */
    public static Optional<String> problem(String quantity, String words, List<String> ranges) {
        String limit = Interview.limit(words);
        if (limit.isEmpty() || limit.matches("(?s).*[\\r\\n{}\"].*") || limit.contains("->") || limit.contains("//")) {
            return Optional.of("Write a limit, such as 24 V +/- 5 %, 12 ohm .. 15 ohm, or at least 1 Mohm.");
        }
        String text = TEXT.formatted(String.join("\n", ranges), quantity, limit);
        Document read = Beginning.READER.read(new SourceText("Try.procedure", text));
        int line = 1 + (int) text.substring(0, text.indexOf("\nexpects ") + 1).chars().filter(c -> c == '\n').count();
        boolean unreadable = !read.problems().isEmpty();
        return unreadable ? Optional.of("\"" + words + "\" cannot be read as a limit; write one such as 24 V +/- 5 %, 12 ohm .. 15 ohm, or at least 1 Mohm.")
                : new Checker().check(read).stream().filter(finding -> finding.severity() == Severity.ERROR && finding.at().line() == line)
                        .map(finding -> finding.message().replace(" of \"Read\"", "").replace("\"Meter\"", "the meter")).findFirst();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

    private static final Pattern UNIT = Pattern.compile("\\d\\s*[pnumkMG]?(V|ohm|A|F|Hz)(?![A-Za-z])");

    private LimitWords() {
    }

    /** The quantity that has such limits, the usual one first: volts are taken for a dc voltage; absent where the words are no limit. */
    static Optional<String> quantity(String words, List<String> ranges) {
        return List.of("dc voltage", "resistance", "dc current", "capacitance", "frequency").stream()
                .filter(quantity -> problem(quantity, words, ranges).isEmpty()).findFirst();
    }

    /**
     * The quantity that the unit of a limit speaks of, where another one is chosen for it; absent where they fit, or the unit says nothing yet. Volts are
     * taken for a dc voltage.
     *
     * @param chosen one of {@link Interview#quantities()}
     */
    public static Optional<String> fitting(String chosen, String words) {
        Matcher unit = UNIT.matcher(Interview.limit(words));
        String last = "";
        while (unit.find()) {
            last = unit.group(1);
        }
        List<String> known = switch (last) {
            case "V" -> List.of("dc voltage", "ac voltage");
            case "ohm" -> List.of("resistance");
            case "A" -> List.of("dc current", "ac current");
            case "F" -> List.of("capacitance");
            case "Hz" -> List.of("frequency");
            default -> List.of();
        };
        return known.isEmpty() || known.contains(chosen) ? Optional.empty() : Optional.of(known.get(0));
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

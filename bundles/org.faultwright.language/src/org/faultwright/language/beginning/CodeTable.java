/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.List;

/** A procedure that begins with a look at an indicator, from its table of codes; the steps are drafted afterwards. */
final class CodeTable {
    private CodeTable() {
    }

    static String text(String name, List<ImportedLines.Code> table) {
        StringBuilder codes = new StringBuilder();
        StringBuilder faults = new StringBuilder();
        NamesFromWords names = new NamesFromWords();
        names.name(name, "X");
        names.name("SeeIt", "X");
        names.name("ReadIndicator", "X");
        names.name("Indicator", "X");
        for (ImportedLines.Code one : table) {
            codes.append("    ").append(one.shown()).append(" means ").append(NamesFromWords.quoted(one.meaning())).append('\n');
            faults.append("fault ").append(names.name(one.meaning(), "Fault")).append(' ')
                    .append(NamesFromWords.quoted(one.meaning())).append(" {\n    cases 1\n    shows SeeIt asReported, ReadIndicator ")
                    .append(one.shown()).append("\n}\n");
        }
        return head(name) + """
                // The codes as the table has them. Say where the indicator is, and which document has the table.
                indicator Indicator "Which lamp or read-out, and where it is" {
                %s    source "Document and page"
                }

                // Each meaning is a fault that shows its code. "cases" is how often you have met it: put in your counts.
                // Add to each a "remedy", the step that repairs it.
                %s
                check SeeIt "Try it. Does it do what was reported?" {
                    confirms complaint
                    takes 2 min
                }
                observe ReadIndicator "Read the code, twice" at Indicator {
                    takes 1 min
                }
                """.formatted(codes, faults);
    }

    /** What both kinds of table begin with. */
    static String head(String name) {
        return """
                // Written from a table, to be written over. Lines that begin with // are remarks: read them, then delete them.
                // "faultwright explain WORD" says what a word means; the help has a tutorial.
                procedure %s "What is seen, in a few words"

                equipment "Maker and model" boards "A"
                revision 1 draft
                // What customers say, in their own words.
                complaints "as the customer put it"

                """.formatted(name);
    }
}

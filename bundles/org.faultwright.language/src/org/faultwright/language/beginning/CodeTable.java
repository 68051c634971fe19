/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.HashSet;
import java.util.Set;

/** A procedure that begins with a look at an indicator, from its table of codes; the steps are drafted afterwards. */
final class CodeTable {
    private CodeTable() {
    }

    static String text(String name, Table table) throws UnusableTable {
        int code = table.needed("code");
        int meaning = table.needed("meaning");
        StringBuilder codes = new StringBuilder();
        StringBuilder faults = new StringBuilder();
        Set<String> seen = new HashSet<>();
        Names names = new Names();
        names.name(name, "X");
        names.name("SeeIt", "X");
        names.name("ReadIndicator", "X");
        names.name("Indicator", "X");
        for (Table.Row row : table.rows()) {
            String shown = code(row.cell(code), row.line());
            if (!seen.add(shown)) {
                throw new UnusableTable("Line " + row.line() + " has the code " + shown + " for a second time; keep one of them.");
            }
            if (row.cell(meaning).isEmpty()) {
                throw new UnusableTable("Line " + row.line() + " does not say what " + shown + " means; fill in the cell.");
            }
            codes.append("    ").append(shown).append(" means ").append(Names.quoted(row.cell(meaning))).append('\n');
            faults.append("fault ").append(names.name(row.cell(meaning), "Fault")).append(' ')
                    .append(Names.quoted(row.cell(meaning))).append(" {\n    cases 1\n    shows SeeIt asReported, ReadIndicator ")
                    .append(shown).append("\n}\n");
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

    private static String code(String cell, long line) throws UnusableTable {
        if (cell.isEmpty()) {
            throw new UnusableTable("Line " + line + " has no code; fill in the cell or take the line out.");
        }
        if (cell.equalsIgnoreCase("none") || cell.equalsIgnoreCase("anything else")) {
            throw new UnusableTable("Line " + line + " has the code \"" + cell + "\", which every step that reads an indicator has "
                    + "anyway; take the line out.");
        }
        boolean plain = cell.matches("\\d{1,9} [A-Za-z]+") && Names.isFree(cell.replaceFirst("\\d+ ", ""))
                || cell.matches("[A-Za-z][A-Za-z0-9]*") && Names.isFree(cell);
        return plain ? cell : Names.quoted(cell);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.SourceRange;

/** Findings for reading: the place, the line with the spot marked, what is wrong, what to do. */
final class TextFindings {
    private static final int WIDEST_LINE = 160;

    private final PrintWriter out;

    TextFindings(PrintWriter out) {
        this.out = out;
    }

    void print(List<Finding> findings) {
        findings.forEach(this::print);
    }

    private void print(Finding finding) {
        SourceRange at = finding.at();
        out.printf("%s, line %d, column %d: %s (%s)%n", at.source().name(), at.line(), at.column(),
                word(finding.severity()), finding.rule());
        printLine(at);
        out.println("  " + finding.message());
        out.println("  To do: " + finding.advice());
        if (!finding.path().isEmpty()) {
            out.println("  Path:  " + finding.path().stream().map(PathStep::toString).collect(Collectors.joining(" > ")));
        }
        finding.fixes().forEach(fix -> out.println("  Fix offered: " + fix.title()));
        out.println();
    }

    /** The line, shortened about the spot when it is very long, control characters shown as a dot. */
    private void printLine(SourceRange at) {
        String line = at.source().lineText(at.line());
        int from = Math.max(0, Math.min(at.column() - 1, line.length()));
        int start = line.length() > WIDEST_LINE ? Math.max(0, from - WIDEST_LINE / 4) : 0;
        int end = Math.min(line.length(), start + WIDEST_LINE);
        String shown = line.substring(start, end).replace('\t', ' ').replaceAll("\\p{Cntrl}", ".");
        int marked = Math.max(1, Math.min(at.length(), end - from));
        String number = String.valueOf(at.line());
        out.println("  " + number + " | " + shown);
        out.println("  " + " ".repeat(number.length()) + " | " + " ".repeat(from - start) + "^".repeat(marked));
    }

    static String word(Severity severity) {
        return severity.name().toLowerCase(java.util.Locale.ROOT);
    }
}

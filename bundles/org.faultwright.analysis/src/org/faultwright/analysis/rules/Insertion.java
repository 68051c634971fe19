/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Puts new lines into a step in the way the author has laid it out. */
final class Insertion {
    private Insertion() {
    }

    /** Behind the last outcome of a step that has one, on a line of its own with the same indent. */
    static Fix outcome(String title, Step step, String line) {
        List<Outcome> outcomes = step.outcomes().stream().filter(outcome -> !outcome.isUnderstood()).toList();
        if (outcomes.isEmpty()) {
            return Fix.replacing(title, new SourceRange(step.at().source(), step.at().end() - 1, 0), "    " + line + "\n");
        }
        SourceRange last = outcomes.get(outcomes.size() - 1).at();
        String before = last.source().lineText(last.line()).substring(0, last.column() - 1);
        String indent = before.isBlank() ? before : "    ";
        return Fix.replacing(title, new SourceRange(last.source(), last.end(), 0), "\n" + indent + line);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Fix;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Adds words to what a step says of itself, before its outcomes. */
final class FrameLine {
    private FrameLine() {
    }

    /** @param words such as {@code verifies repair} */
    static Fix added(String title, Step step, String words) {
        return step.isUnderstood() ? inFull(title, step, words) : step.outcomes().isEmpty() ? beforeBrace(title, step, words) : beforeOutcome(title, step, words);
    }

    /** Names a further note that the step reads. */
    static Fix warning(String title, Step step, String note) {
        if (step.frame().notes().isEmpty()) {
            return added(title, step, "notes " + note);
        }
        SourceRange last = step.frame().notes().get(step.frame().notes().size() - 1).at();
        return Fix.replacing(title, new SourceRange(last.source(), last.end(), 0), ", " + note);
    }

    /** What an arrow to a fault leads to can say more only where it is written out: then under the name of the fault, so that the arrows stay. */
    private static Fix inFull(String title, Step step, String words) {
        String content = step.at().source().content();
        int end = content.stripTrailing().length();
        // at the end of the text, where it does not become the first step
        return Fix.replacing(title, new SourceRange(step.at().source(), end, 0),
                "\n\nconclude " + step.name() + " {\n    finds " + step.name() + "\n    " + words + "\n}" + (end == content.length() ? "\n" : ""));
    }

    private static Fix beforeOutcome(String title, Step step, String words) {
        SourceRange outcome = step.outcomes().get(0).at();
        String text = outcome.source().content();
        String before = text.substring(text.lastIndexOf('\n', outcome.offset() - 1) + 1, outcome.offset());
        String separation = before.isBlank() ? "\n" + before : "   ";
        return Fix.replacing(title, new SourceRange(outcome.source(), outcome.offset(), 0), words + separation);
    }

    private static Fix beforeBrace(String title, Step step, String words) {
        SourceRange at = step.at();
        String text = at.source().content();
        int brace = Math.max(at.offset(), text.lastIndexOf('}', at.end() - 1));
        int end = brace;
        while (end > at.offset() && Character.isWhitespace(text.charAt(end - 1))) {
            end--;
        }
        boolean onItsOwnLine = text.substring(end, brace).contains("\n");
        String indent = onItsOwnLine ? "\n    " + text.substring(text.lastIndexOf('\n', brace - 1) + 1, brace) : " ";
        return Fix.replacing(title, new SourceRange(at.source(), end, 0), indent + words + (onItsOwnLine ? "" : " "));
    }
}

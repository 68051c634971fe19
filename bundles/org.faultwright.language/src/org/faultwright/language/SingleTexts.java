/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.util.List;
import org.faultwright.language.parsing.PlainParser;
import org.faultwright.language.translation.Translator;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** Reads one text without its libraries. */
final class SingleTexts {
    /** Longer than any procedure: 8 MB. */
    static final int LONGEST = 8 * 1024 * 1024;

    private final PlainParser parser = new PlainParser();

    Document read(SourceText text) {
        if (text.content().length() > LONGEST) {
            return unread(text, "This text has " + text.content().length() / (1024 * 1024)
                    + " MB, more than the 8 MB that can be read; is it a procedure at all?");
        }
        try {
            return Translator.translate(text, parser.parse(text.content()));
        } catch (StackOverflowError tooDeep) {
            return unread(text, "Parentheses or terms are nested too deeply to be read; split the expression up.");
        }
    }

    private static Document unread(SourceText text, String message) {
        return Translator.nothing(text, List.of(new ReadingProblem(message, new SourceRange(text, 0, 0))));
    }
}

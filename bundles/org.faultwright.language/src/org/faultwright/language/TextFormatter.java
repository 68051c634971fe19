/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.ParseException;
import org.faultwright.language.formatting.LineLayout;
import org.faultwright.language.parsing.PlainParser;

/**
 * Lays a text out evenly: indents, single spaces, arrows in one column. Only white space between words
 * changes; lines stay where their author broke them, and comments where their author put them.
 */
public final class TextFormatter {
    private static final PlainParser PARSER = new PlainParser();

    private TextFormatter() {
    }

    /** The text laid out; unchanged if it cannot be read in full. Never throws. */
    public static String format(String content) {
        if (content.length() > SingleTexts.LONGEST) {
            return content;
        }
        try {
            IParseResult parsed = PARSER.parse(content);
            return parsed.hasSyntaxErrors() || parsed.getRootASTElement() == null ? content
                    : LineLayout.of(content, parsed.getRootNode());
        } catch (StackOverflowError | ParseException unreadable) {
            return content;
        }
    }
}

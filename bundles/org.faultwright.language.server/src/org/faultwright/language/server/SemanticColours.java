/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SemanticTokenTypes;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.faultwright.procedure.SourceText;

/** The colours of a text as the Language Server Protocol 3.17 sends them: five numbers for each word, counted from the word before. */
final class SemanticColours {
    private static final List<String> TYPES = List.of(SemanticTokenTypes.Keyword, SemanticTokenTypes.Variable, SemanticTokenTypes.Number,
            SemanticTokenTypes.String, SemanticTokenTypes.Comment, SemanticTokenTypes.Operator);

    private SemanticColours() {
    }

    static SemanticTokensLegend legend() {
        return new SemanticTokensLegend(TYPES, List.of());
    }

    static SemanticTokens of(SourceText text) {
        List<Integer> data = new ArrayList<>();
        Position last = new Position(0, 0);
        for (Colouring.Stretch stretch : Colouring.of(text.content())) {
            int end = stretch.offset() + stretch.length();
            int from = stretch.offset();
            // what runs over several lines is sent line by line, since not every editor takes it whole
            while (from < end) {
                int lineEnd = text.content().indexOf('\n', from);
                int to = lineEnd < 0 || lineEnd > end ? end : lineEnd;
                if (to > from) {
                    Position at = ProtocolPositions.position(text, from);
                    boolean sameLine = at.getLine() == last.getLine();
                    data.addAll(List.of(at.getLine() - last.getLine(), sameLine ? at.getCharacter() - last.getCharacter() : at.getCharacter(),
                            to - from, TYPES.indexOf(type(stretch.kind())), 0));
                    last = at;
                }
                from = to + 1;
            }
        }
        return new SemanticTokens(data);
    }

    private static String type(Colouring.Kind kind) {
        return switch (kind) {
            case BEGINNING, KEYWORD -> SemanticTokenTypes.Keyword;
            case NAME -> SemanticTokenTypes.Variable;
            case QUANTITY -> SemanticTokenTypes.Number;
            case TEXT -> SemanticTokenTypes.String;
            case COMMENT -> SemanticTokenTypes.Comment;
            case ARROW -> SemanticTokenTypes.Operator;
        };
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import org.antlr.runtime.CommonToken;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.antlr.runtime.TokenStream;

/** Where the parser could not go on: the word it found there and the word before it. */
final class SyntaxErrorPlace {
    private final Token found;
    private final Token before;

    SyntaxErrorPlace(RecognitionException cause) {
        TokenStream input = (TokenStream) cause.input;
        int index = Math.min(cause.index, input.size() - 1);
        while (index >= 0 && index < input.size() && isGap(input.get(index)) && index + 1 < input.size()) {
            index++;
        }
        boolean end = cause.token == null || cause.token.getType() == Token.EOF;
        found = end ? null : cause.token;
        int back = (end ? input.size() : Math.max(found.getTokenIndex(), 0)) - 1;
        while (back >= 0 && isGap(input.get(back))) {
            back--;
        }
        before = back >= 0 ? input.get(back) : null;
    }

    private static boolean isGap(Token token) {
        String text = token.getText();
        return text == null || text.isBlank() || text.startsWith("//") || text.startsWith("/*");
    }

    boolean isEnd() {
        return found == null;
    }

    /** The word found; empty at the end of the text. */
    String found() {
        return found == null ? "" : found.getText();
    }

    /** The word before; empty at the start of the text. */
    String before() {
        return before == null ? "" : before.getText();
    }

    boolean foundIsKeyword() {
        return found != null && Character.isLetter(found().charAt(0)) && !TokenKinds.isName(found);
    }

    /** Of the word found, or behind the last word where the text ends. */
    String[] asIssueData() {
        if (found instanceof CommonToken token) {
            return new String[] {String.valueOf(token.getStartIndex()), String.valueOf(found().length())};
        }
        int end = before instanceof CommonToken token ? token.getStopIndex() + 1 : 0;
        return new String[] {String.valueOf(end), "0"};
    }
}

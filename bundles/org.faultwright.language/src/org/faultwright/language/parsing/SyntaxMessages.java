/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import java.util.Optional;
import org.antlr.runtime.MismatchedTokenException;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.eclipse.xtext.diagnostics.Diagnostic;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.eclipse.xtext.parser.antlr.SyntaxErrorMessageProvider;

/**
 * What a technician is told about words that do not fit: what was expected after which word, in the
 * language's own words. The place travels with the message as issue data: offset and length.
 */
public final class SyntaxMessages extends SyntaxErrorMessageProvider {
    /** The issue code of what the lexer could not read: an unclosed text or comment. */
    public static final String UNREADABLE = "unreadable";

    /** How the sentence begins that a text ends where something is still open. */
    public static final String ENDS_BEFORE = "The text ends before";

    @Override
    public SyntaxErrorMessage getSyntaxErrorMessage(IParserErrorContext context) {
        RecognitionException cause = context.getRecognitionException();
        if (cause == null) {
            return new SyntaxErrorMessage(context.getDefaultMessage(), UNREADABLE);
        }
        SyntaxErrorPlace place = new SyntaxErrorPlace(cause);
        String message = message(context, cause, place);
        return new SyntaxErrorMessage(message, Diagnostic.SYNTAX_DIAGNOSTIC, place.asIssueData());
    }

    private static String message(IParserErrorContext context, RecognitionException cause, SyntaxErrorPlace place) {
        Optional<String> sign = LanguageSigns.advice(place.found());
        if (sign.isPresent()) {
            return sign.get();
        }
        SyntaxExpectation expected = new SyntaxExpectation(context);
        if (cause instanceof MismatchedTokenException mismatch && mismatch.expecting > Token.EOF
                && mismatch.expecting < context.getTokenNames().length) {
            return expected.token(context.getTokenNames()[mismatch.expecting], place);
        }
        return expected.part(place);
    }
}

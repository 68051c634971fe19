/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import org.antlr.runtime.Token;
import org.faultwright.language.parser.antlr.internal.InternalProcedureLexer;

/** Kinds of word as the lexer tells them apart. */
final class TokenKinds {
    private TokenKinds() {
    }

    static boolean isName(Token token) {
        return token.getType() == InternalProcedureLexer.RULE_ID || token.getType() == InternalProcedureLexer.RULE_RCODED;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.eclipse.xtext.parser.antlr.SyntaxErrorMessageProvider;

/** What a technician is told about words that do not fit. */
public final class SyntaxMessages extends SyntaxErrorMessageProvider {
    @Override
    public SyntaxErrorMessage getSyntaxErrorMessage(IParserErrorContext context) {
        return super.getSyntaxErrorMessage(context);
    }
}

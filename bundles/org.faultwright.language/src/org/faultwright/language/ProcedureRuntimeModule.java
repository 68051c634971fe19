/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;
import org.faultwright.language.parsing.SyntaxMessages;
import org.faultwright.language.parsing.TextValues;

/** How the grammar is read: its values and what is said of words that do not fit. Findings are not made here. */
public class ProcedureRuntimeModule extends AbstractProcedureRuntimeModule {
    @Override
    public Class<? extends IValueConverterService> bindIValueConverterService() {
        return TextValues.class;
    }

    public Class<? extends ISyntaxErrorMessageProvider> bindISyntaxErrorMessageProvider() {
        return SyntaxMessages.class;
    }
}

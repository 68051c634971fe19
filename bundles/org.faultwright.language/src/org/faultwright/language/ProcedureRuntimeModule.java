/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.linking.ILinkingDiagnosticMessageProvider;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider;
import org.eclipse.xtext.scoping.IScopeProvider;
import org.eclipse.xtext.validation.IResourceValidator;
import org.faultwright.language.editing.FindingsValidator;
import org.faultwright.language.editing.NamesInReach;
import org.faultwright.language.editing.QuietLinking;
import org.faultwright.language.parsing.SyntaxMessages;
import org.faultwright.language.parsing.TextValues;

/** What the language brings to the editing services in place of their defaults. */
public class ProcedureRuntimeModule extends AbstractProcedureRuntimeModule {
    @Override
    public Class<? extends IValueConverterService> bindIValueConverterService() {
        return TextValues.class;
    }

    public Class<? extends ISyntaxErrorMessageProvider> bindISyntaxErrorMessageProvider() {
        return SyntaxMessages.class;
    }

    @Override
    public Class<? extends IScopeProvider> bindIScopeProvider() {
        return NamesInReach.class;
    }

    public Class<? extends ILinkingDiagnosticMessageProvider.Extended> bindILinkingDiagnosticMessageProvider() {
        return QuietLinking.class;
    }

    public Class<? extends IResourceValidator> bindIResourceValidator() {
        return FindingsValidator.class;
    }
}

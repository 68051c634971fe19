/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.procedure.Quotation;

/** What the parser puts into the model: strings without their quotation marks, everything else as written. */
public final class TextValues implements IValueConverterService {
    @Override
    public Object toValue(String text, String rule, INode node) {
        return isString(rule) ? QuotedText.read(text) : text;
    }

    @Override
    public String toString(Object value, String rule) {
        return isString(rule) ? Quotation.of(String.valueOf(value)) : String.valueOf(value);
    }

    /** Rules come with or without the name of their grammar. */
    private static boolean isString(String rule) {
        return rule != null && rule.endsWith("STRING");
    }
}

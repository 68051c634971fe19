/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.List;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.DefaultAnnotationHover;

/** Says at a mark in the margin what was found in its line, each thing once. */
final class MarginHover extends DefaultAnnotationHover {
    @Override
    protected boolean isIncluded(Annotation annotation) {
        return annotation instanceof FindingMark;
    }

    @Override
    protected String formatSingleMessage(String message) {
        return message;
    }

    @Override
    @SuppressWarnings("rawtypes") // of the platform
    protected String formatMultipleMessages(List messages) {
        StringBuilder all = new StringBuilder();
        for (Object message : new java.util.LinkedHashSet<Object>(messages)) {
            all.append(all.isEmpty() ? "" : "\n\n").append(message);
        }
        return all.toString();
    }
}

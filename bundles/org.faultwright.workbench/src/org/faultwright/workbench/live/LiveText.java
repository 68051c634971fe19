/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import org.eclipse.core.resources.IFile;
import org.eclipse.jface.text.IDocument;
import org.faultwright.language.server.OpenText;

/**
 * A text open in an editor with the last answer about it.
 *
 * @param text what was read and found; it may be one keystroke older than the document
 */
public record LiveText(IFile file, IDocument document, OpenText text) {
    /** Whether the document has not been changed since it was read. */
    public boolean isCurrent() {
        return document.get().equals(text.content());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.ui.editors.text.TextFileDocumentProvider;
import org.faultwright.workbench.files.SameEncoding;

/** The texts of all editors; each is written as it was read. */
final class ProcedureDocuments extends TextFileDocumentProvider {
    static final ProcedureDocuments ALL = new ProcedureDocuments();

    @Override
    protected void commitFileBuffer(IProgressMonitor monitor, FileInfo info, boolean overwrite) throws CoreException {
        SameEncoding.during(info.fTextFileBuffer, () -> super.commitFileBuffer(monitor, info, overwrite));
    }
}

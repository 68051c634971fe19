/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.text.edits.MalformedTreeException;
import org.eclipse.text.edits.MultiTextEdit;
import org.eclipse.text.edits.ReplaceEdit;
import org.faultwright.analysis.Fix;

/** Changes a document as a fix says, in one step that can be undone. */
public final class Fixing {
    private Fixing() {
    }

    /** @return whether the document was changed; it is left alone where it no longer is the text that was checked */
    public static boolean apply(Fix fix, IDocument document) {
        if (fix.edits().isEmpty() || !fix.edits().get(0).at().source().content().equals(document.get())) {
            return false;
        }
        MultiTextEdit edits = new MultiTextEdit();
        try {
            fix.edits().forEach(edit -> edits.addChild(new ReplaceEdit(edit.at().offset(), edit.at().length(),
                    edit.replacement())));
            edits.apply(document);
            return true;
        } catch (BadLocationException | MalformedTreeException wrong) {
            ILog.of(Fixing.class).error("The fix '" + fix.title() + "' could not be carried out.", wrong);
            return false;
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.core.runtime.ILog;
import java.util.Comparator;
import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.graphics.Point;
import org.eclipse.text.edits.MalformedTreeException;
import org.faultwright.analysis.Fix;
import org.faultwright.workbench.live.LiveTexts;

/** Changes a document as a fix says, in one step that can be undone. */
public final class FixApplication {
    private FixApplication() {
    }

    /** @return whether the document was changed; it is left alone where it no longer is the text that was checked, or is not open any more */
    public static boolean apply(Fix fix, IDocument document) {
        if (fix.edits().isEmpty() || LiveTexts.get().of(document).isEmpty() || !fix.edits().get(0).at().source().content().equals(document.get())) {
            return false;
        }
        try {
            DocumentEdits.apply(fix.edits().stream().map(edit -> new DocumentEdits.Edit(edit.at().offset(), edit.at().length(), edit.replacement()))
                    .toList(), document);
            return true;
        } catch (BadLocationException | MalformedTreeException wrong) {
            ILog.of(FixApplication.class).error("The fix '" + fix.title() + "' could not be applied.", wrong);
            return false;
        }
    }

    /**
     * What is selected after a fix: the words that it wrote in a line; of several lines only the beginning is shown, because the
     * next key would replace all of them.
     */
    public static Point toSelect(Fix fix, IDocument document) {
        Point changed = changed(fix, document);
        String words = document.get().substring(changed.x, changed.x + changed.y);
        if (words.strip().indexOf('\n') < 0) {
            return changed;
        }
        return new Point(changed.x + words.length() - words.stripLeading().length(), 0);
    }

    /** Where the last edit of a fix that was applied has put its words: the place to look at. */
    public static Point changed(Fix fix, IDocument document) {
        List<Fix.Edit> edits = fix.edits().stream().sorted(Comparator.comparingInt(edit -> edit.at().offset())).toList();
        int shifted = 0;
        Point last = new Point(0, 0);
        for (Fix.Edit edit : edits) {
            last = new Point(edit.at().offset() + shifted, edit.replacement().length());
            shifted += edit.replacement().length() - edit.at().length();
        }
        int end = document.getLength();
        return new Point(Math.min(last.x, end), Math.min(last.y, Math.max(0, end - last.x)));
    }
}

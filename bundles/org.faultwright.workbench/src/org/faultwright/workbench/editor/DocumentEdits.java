/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.link.LinkedModeModel;
import org.eclipse.text.edits.MalformedTreeException;
import org.eclipse.text.edits.MultiTextEdit;
import org.eclipse.text.edits.ReplaceEdit;
import org.eclipse.text.undo.DocumentUndoManagerRegistry;
import org.eclipse.text.undo.IDocumentUndoManager;

/** Changes of a text at many places that are one change for whoever takes them back. */
final class DocumentEdits {
    /** One replaced stretch, in UTF-16 units of the text before the change. */
    record Edit(int offset, int length, String replacement) {
    }

    private DocumentEdits() {
    }

    /**
     * Applies edits that do not overlap as one undo step.
     *
     * @throws BadLocationException   if an edit lies outside the text
     * @throws MalformedTreeException if two edits overlap; nothing is changed then
     */
    static void apply(List<Edit> edits, IDocument document) throws BadLocationException {
        if (edits.isEmpty()) {
            return;
        }
        MultiTextEdit all = new MultiTextEdit();
        edits.forEach(edit -> all.addChild(new ReplaceEdit(edit.offset(), edit.length(), edit.replacement())));
        // blanks that are still linked would take part in the change
        LinkedModeModel.closeAllModels(document);
        IDocumentUndoManager undo = DocumentUndoManagerRegistry.getDocumentUndoManager(document);
        if (undo != null) {
            undo.beginCompoundChange();
        }
        try {
            all.apply(document);
        } finally {
            if (undo != null) {
                undo.endCompoundChange();
            }
        }
    }

    /**
     * What turns one text into another of which only the white space differs; one replaced middle where more differs.
     */
    static List<Edit> between(String before, String after) {
        List<Edit> edits = new ArrayList<>();
        int b = 0;
        int a = 0;
        while (b < before.length() || a < after.length()) {
            int endB = endOfSpace(before, b);
            int endA = endOfSpace(after, a);
            if (!before.substring(b, endB).equals(after.substring(a, endA))) {
                edits.add(new Edit(b, endB - b, after.substring(a, endA)));
            }
            b = endB;
            a = endA;
            if (b == before.length() && a == after.length()) {
                break;
            }
            if (b == before.length() || a == after.length() || before.charAt(b) != after.charAt(a)) {
                return List.of(middle(before, after));
            }
            b++;
            a++;
        }
        return edits;
    }

    /** The one stretch in which two texts differ. */
    static Edit middle(String before, String after) {
        int shorter = Math.min(before.length(), after.length());
        int head = 0;
        while (head < shorter && before.charAt(head) == after.charAt(head)) {
            head++;
        }
        int tail = 0;
        while (tail < shorter - head
                && before.charAt(before.length() - 1 - tail) == after.charAt(after.length() - 1 - tail)) {
            tail++;
        }
        return new Edit(head, before.length() - tail - head, after.substring(head, after.length() - tail));
    }

    /** Changes a text and leaves the selection on the words it was on. */
    static void applyKeepingSelection(List<Edit> edits, ProcedureEditor editor, IDocument document) throws BadLocationException {
        Position selected = editor.selection();
        try {
            document.addPosition(selected);
            apply(edits, document);
        } finally {
            document.removePosition(selected);
        }
        editor.select(selected);
    }

    private static int endOfSpace(String text, int from) {
        int end = from;
        while (end < text.length() && Character.isWhitespace(text.charAt(end))) {
            end++;
        }
        return end;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DefaultIndentLineAutoEditStrategy;
import org.eclipse.jface.text.DocumentCommand;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.TextUtilities;

/** A new line begins under the one before, further in behind a brace that opens; a brace that closes goes back under the line that opened it. */
final class IndentInBraces extends DefaultIndentLineAutoEditStrategy {
    private static final String OPENS = "{";
    private static final String CLOSES = "}";

    @Override
    public void customizeDocumentCommand(IDocument document, DocumentCommand command) {
        boolean line = command.length == 0 && TextUtilities.equals(document.getLegalLineDelimiters(), command.text) >= 0;
        super.customizeDocumentCommand(document, command);
        try {
            if (line && before(document, command.offset).stripTrailing().endsWith(OPENS)) {
                command.text += " ".repeat(ProcedureConfiguration.INDENT);
            } else if (command.text.equals(CLOSES)) {
                goBack(document, command);
            }
        } catch (BadLocationException changed) {
            command.doit = true; // what was typed is written as it was typed
        }
    }

    /** The words of the line before the place. */
    private static String before(IDocument document, int offset) throws BadLocationException {
        int line = document.getLineInformationOfOffset(offset).getOffset();
        return document.get(line, offset - line);
    }

    private static void goBack(IDocument document, DocumentCommand command) throws BadLocationException {
        String before = before(document, command.offset);
        if (!before.isEmpty() && before.isBlank()) {
            int taken = Math.min(ProcedureConfiguration.INDENT, before.length());
            int open = lineThatOpens(document, document.getLineOfOffset(command.offset));
            if (open >= 0) {
                IRegion line = document.getLineInformation(open);
                String opening = document.get(line.getOffset(), line.getLength());
                taken = Math.max(0, before.length() - (opening.length() - opening.stripLeading().length()));
            }
            command.offset -= taken;
            command.length += taken;
        }
    }

    /** The last line above that opened what is not closed yet; -1 where there is none. */
    private static int lineThatOpens(IDocument document, int below) throws BadLocationException {
        int open = 0;
        for (int line = below - 1; line >= 0; line--) {
            IRegion region = document.getLineInformation(line);
            String words = document.get(region.getOffset(), region.getLength()).strip();
            open += words.endsWith(OPENS) ? 1 : words.startsWith(CLOSES) ? -1 : 0;
            if (open > 0) {
                return line;
            }
        }
        return -1;
    }
}

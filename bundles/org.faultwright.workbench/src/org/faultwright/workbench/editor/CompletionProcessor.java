/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.IContentAssistProcessor;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.contentassist.IContextInformationValidator;
import org.faultwright.language.server.Colouring;
import org.faultwright.language.server.Proposals;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/** Asks what could be written at the cursor. */
public final class CompletionProcessor implements IContentAssistProcessor {
    static final String NOTHING_FITS = "Nothing fits here.";

    @Override
    public ICompletionProposal[] computeCompletionProposals(ITextViewer viewer, int offset) {
        if (isWords(viewer.getDocument(), offset)) {
            return new ICompletionProposal[0];
        }
        Optional<LiveText> live = LiveTexts.get().current(viewer.getDocument());
        return live.map(text -> Proposals.at(text.text(), offset)).orElseGet(List::of).stream()
                .map(WrittenProposal::new).toArray(ICompletionProposal[]::new);
    }

    /** Whether the offset is in a comment or in quotation marks, where people write as they like. */
    private static boolean isWords(IDocument document, int offset) {
        try {
            int line = document.getLineInformationOfOffset(offset).getOffset();
            int comment = document.get(0, offset).lastIndexOf("/*");
            if (comment >= 0 && document.get(comment, offset - comment).indexOf("*/") < 0) {
                return true;
            }
            String before = document.get(line, offset - line);
            return Colouring.of(before).stream().filter(last -> last.offset() + last.length() == before.length())
                    .anyMatch(last -> last.kind() == Colouring.Kind.COMMENT
                            || last.kind() == Colouring.Kind.TEXT && !isClosed(before.substring(last.offset())));
        } catch (BadLocationException changed) {
            return false;
        }
    }

    private static boolean isClosed(String text) {
        return text.length() > 1 && text.endsWith("\"");
    }

    @Override
    public IContextInformation[] computeContextInformation(ITextViewer viewer, int offset) {
        return new IContextInformation[0];
    }

    @Override
    public char[] getCompletionProposalAutoActivationCharacters() {
        return new char[] {'>'};
    }

    @Override
    public char[] getContextInformationAutoActivationCharacters() {
        return new char[0];
    }

    @Override
    public String getErrorMessage() {
        return NOTHING_FITS;
    }

    @Override
    public IContextInformationValidator getContextInformationValidator() {
        return null;
    }
}

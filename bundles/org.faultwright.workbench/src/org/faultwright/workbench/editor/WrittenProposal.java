/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension2;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.link.LinkedModeModel;
import org.eclipse.jface.text.link.LinkedModeUI;
import org.eclipse.jface.text.link.LinkedPosition;
import org.eclipse.jface.text.link.LinkedPositionGroup;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.faultwright.language.server.Proposal;
import org.faultwright.workbench.look.Icons;

/** Writes a proposal; where it has blanks, the tab key goes through them in reading order. */
final class WrittenProposal implements ICompletionProposal, ICompletionProposalExtension2 {
    private static final Pattern BLANK = Pattern.compile("\\$\\{\\d+:([^}]*)}");

    private record Blank(int offset, int length) {
    }

    private final Proposal proposal;
    private Point selection;

    WrittenProposal(Proposal proposal) {
        this.proposal = proposal;
    }

    @Override
    public void apply(IDocument document) {
        write(document, proposal.to(), new ArrayList<>());
    }

    @Override
    public void apply(ITextViewer viewer, char trigger, int stateMask, int offset) {
        List<Blank> blanks = new ArrayList<>();
        write(viewer.getDocument(), offset, blanks);
        if (!blanks.isEmpty()) {
            link(viewer, blanks);
        }
    }

    private void write(IDocument document, int to, List<Blank> blanks) {
        try {
            String written = written(indent(document), blanks);
            document.replace(proposal.from(), to - proposal.from(), written);
            selection = blanks.isEmpty() ? new Point(proposal.from() + written.length(), 0)
                    : new Point(blanks.get(0).offset(), blanks.get(0).length());
        } catch (BadLocationException changed) {
            ILog.of(WrittenProposal.class).warn("The text changed before the proposal was written.", changed);
        }
    }

    private String written(String indent, List<Blank> blanks) {
        Matcher blank = BLANK.matcher(proposal.insert().replace("\n", "\n" + indent));
        StringBuilder text = new StringBuilder();
        while (blank.find()) {
            blank.appendReplacement(text, "");
            blanks.add(new Blank(proposal.from() + text.length(), blank.group(1).length()));
            text.append(blank.group(1));
        }
        blank.appendTail(text);
        return text.toString();
    }

    /** The spaces that the line begins with. */
    private String indent(IDocument document) throws BadLocationException {
        int start = document.getLineInformationOfOffset(proposal.from()).getOffset();
        String before = document.get(start, proposal.from() - start);
        return before.substring(0, before.length() - before.stripLeading().length());
    }

    private void link(ITextViewer viewer, List<Blank> blanks) {
        try {
            LinkedModeModel model = new LinkedModeModel();
            for (int i = 0; i < blanks.size(); i++) {
                LinkedPositionGroup group = new LinkedPositionGroup();
                group.addPosition(new LinkedPosition(viewer.getDocument(), blanks.get(i).offset(),
                        blanks.get(i).length(), i));
                model.addGroup(group);
            }
            model.forceInstall();
            LinkedModeUI blanksInTurn = new LinkedModeUI(model, viewer);
            blanksInTurn.enter();
        } catch (BadLocationException changed) {
            ILog.of(WrittenProposal.class).warn("The blanks could not be linked.", changed);
        }
    }

    @Override
    public boolean validate(IDocument document, int offset, DocumentEvent event) {
        try {
            String typed = document.get(proposal.from(), Math.max(0, offset - proposal.from()));
            return proposal.label().regionMatches(true, 0, typed, 0, typed.length());
        } catch (BadLocationException changed) {
            return false;
        }
    }

    @Override
    public Point getSelection(IDocument document) {
        return selection;
    }

    @Override
    public String getDisplayString() {
        return proposal.detail().isEmpty() ? proposal.label() : proposal.label() + "   " + proposal.detail();
    }

    @Override
    public Image getImage() {
        return Icons.of(proposal.kind(), proposal.keyword()).orElse(null);
    }

    @Override
    public String getAdditionalProposalInfo() {
        return proposal.insert().contains("\n") ? proposal.plainInsert() : null;
    }

    @Override
    public IContextInformation getContextInformation() {
        return null;
    }

    @Override
    public void selected(ITextViewer viewer, boolean smartToggle) {
        // nothing is shown in the text before it is written
    }

    @Override
    public void unselected(ITextViewer viewer) {
        // nothing was shown
    }
}

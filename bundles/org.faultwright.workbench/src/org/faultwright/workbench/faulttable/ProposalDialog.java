/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;
import org.faultwright.workbench.look.TitledDialog;

/** Shows what a change of the whole procedure brings, why, and the lines it changes, before it is made. */
final class ProposalDialog extends TitledDialog {
    private final ProposedChange proposed;
    private StyledText lines;

    ProposalDialog(Shell shell, String title, ProposedChange proposed) {
        super(shell, title);
        this.proposed = proposed;
        setShellStyle(getShellStyle() | SWT.MAX);
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        Label outcome = new Label(area, SWT.WRAP);
        outcome.setText(begunLarge(proposed.outcome()).replace("&", "&&"));
        outcome.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DIALOG_FONT));
        GridDataFactory.fillDefaults().grab(true, false).hint(600, SWT.DEFAULT).applyTo(outcome);
        SashForm parts = new SashForm(area, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).hint(760, 480).applyTo(parts);
        if (!proposed.reasons().isEmpty()) {
            StyledText reasons = part(parts, "What it does and why");
            reasons.setWrapIndent(24);
            reasons.setText(String.join("\n", proposed.reasons()));
        }
        proposed.change().ifPresent(fix -> {
            lines = part(parts, "The lines of the text that change: - goes, + comes");
            lines.setWordWrap(false);
            lines.setFont(JFaceResources.getTextFont());
            write(lines, fix);
        });
        if (parts.getChildren().length == 2) {
            parts.setWeights(2, 3);
        }
        return area;
    }

    private static String begunLarge(String sentence) {
        return sentence.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + sentence.substring(1);
    }

    private static StyledText part(SashForm parts, String heading) {
        Composite part = new Composite(parts, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 4).applyTo(part);
        new Label(part, SWT.NONE).setText(heading);
        Composite frame = new Composite(part, SWT.NONE);
        frame.setLayout(new FillLayout());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(frame);
        StyledText text = new StyledText(frame, SWT.BORDER | SWT.MULTI | SWT.READ_ONLY | SWT.V_SCROLL | SWT.H_SCROLL);
        text.setMargins(8, 6, 8, 6);
        text.setWordWrap(true);
        text.setBackground(Palette.now().of(Use.PAPER));
        text.setForeground(Palette.now().of(Use.NAME));
        AccessibleName.as(text, heading);
        // the keys of the dialog work in here as well
        text.addListener(SWT.Traverse, event -> {
            if (event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS || event.detail == SWT.TRAVERSE_RETURN) {
                event.doit = true;
            }
        });
        return text;
    }

    private static void write(StyledText text, Fix fix) {
        StringBuilder all = new StringBuilder();
        List<StyleRange> styles = new ArrayList<>();
        for (LinesOfChange.Line line : LinesOfChange.between(fix.edits().get(0).at().source(), fix.applied())) {
            int from = all.length();
            all.append(line.sign()).append(' ').append(line.words()).append('\n');
            Use use = line.sign() == '-' ? Use.ERROR : line.sign() == '+' ? Use.KEYWORD : Use.COMMENT;
            StyleRange style = new StyleRange(from, all.length() - from, Palette.now().of(use), null, line.sign() == '+' ? SWT.BOLD : SWT.NORMAL);
            style.strikeout = line.sign() == '-';
            styles.add(style);
        }
        text.setText(all.toString().stripTrailing());
        styles.stream().filter(style -> style.start + style.length <= text.getCharCount() + 1).forEach(style -> {
            style.length = Math.min(style.length, text.getCharCount() - style.start);
            text.setStyleRange(style);
        });
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        if (proposed.change().isPresent()) {
            createButton(parent, IDialogConstants.OK_ID, "Change the text", true);
            createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
        } else {
            createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CLOSE_LABEL, true);
        }
    }

    @Override
    protected Point getInitialSize() {
        Point wanted = super.getInitialSize();
        return new Point(Math.max(wanted.x, 820), proposed.change().isPresent() ? Math.max(wanted.y, 640) : Math.min(wanted.y, 420));
    }
}

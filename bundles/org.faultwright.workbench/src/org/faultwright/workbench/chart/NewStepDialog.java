/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.Optional;
import java.util.Set;
import org.eclipse.jface.dialogs.Dialog;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.faultwright.analysis.steps.NewStep;
import org.faultwright.language.server.Renaming;

/** Asks what a new step is: its kind, its name and its words. */
final class NewStepDialog extends Dialog {
    private final String title;
    private final Set<String> taken;
    private Combo kind;
    private Text name;
    private Text words;
    private Label problem;
    private Optional<NewStep> answer = Optional.empty();

    /** @param taken names that are given already */
    NewStepDialog(Shell shell, String title, Set<String> taken) {
        super(shell);
        this.title = title;
        this.taken = taken;
        setShellStyle(getShellStyle() | SWT.RESIZE);
    }

    Optional<NewStep> ask() {
        return open() == OK ? answer : Optional.empty();
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(title);
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = new Composite((Composite) super.createDialogArea(parent), SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(area);
        GridLayoutFactory.swtDefaults().numColumns(2).margins(8, 8).spacing(10, 8).applyTo(area);
        new Label(area, SWT.NONE).setText("Kind");
        kind = new Combo(area, SWT.READ_ONLY);
        for (NewStep.Kind one : NewStep.Kind.values()) {
            kind.add(one.words());
        }
        kind.select(0);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(kind);
        new Label(area, SWT.NONE).setText("Name");
        name = text(area, free());
        new Label(area, SWT.NONE).setText("Words");
        words = text(area, "");
        words.setMessage("The question, what is done, or the conclusion");
        problem = new Label(area, SWT.WRAP);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(convertWidthInCharsToPixels(64), 2 * convertHeightInCharsToPixels(1)).applyTo(problem);
        name.selectAll();
        name.setFocus();
        return area;
    }

    private Text text(Composite area, String begin) {
        Text text = new Text(area, SWT.BORDER);
        text.setText(begin);
        text.addListener(SWT.Modify, event -> check());
        GridDataFactory.fillDefaults().grab(true, false).hint(convertWidthInCharsToPixels(44), SWT.DEFAULT).applyTo(text);
        return text;
    }

    private String free() {
        String wanted = "NewStep";
        String one = wanted;
        for (int number = 2; taken.contains(one); number++) {
            one = wanted + number;
        }
        return one;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Write it", true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
        check();
    }

    private void check() {
        String typed = name.getText().strip();
        Optional<String> wrong = Renaming.unfit(typed)
                .or(() -> taken.contains(typed) ? Optional.of("There is a step \"" + typed + "\" already.") : Optional.empty())
                .or(() -> words.getText().isBlank() ? Optional.of("Write what the technician reads.") : Optional.empty());
        problem.setText(wrong.map(sentence -> sentence.replace("&", "&&")).orElse(""));
        getButton(IDialogConstants.OK_ID).setEnabled(wrong.isEmpty());
    }

    @Override
    protected void okPressed() {
        answer = Optional.of(new NewStep(NewStep.Kind.values()[kind.getSelectionIndex()], name.getText().strip(), words.getText().strip()));
        super.okPressed();
    }
}

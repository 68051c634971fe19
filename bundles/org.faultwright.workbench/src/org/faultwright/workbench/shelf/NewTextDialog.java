/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.shelf;

import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.dialogs.Dialog;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.Beginning;

/** Asks what is begun, and its name. */
final class NewTextDialog extends Dialog {
    private final IContainer folder;
    private Button procedure;
    private Button library;
    private Text name;
    private Label hint;
    private IFile file;
    private Beginning beginning;

    NewTextDialog(Shell shell, IContainer folder) {
        super(shell);
        this.folder = folder;
    }

    IFile file() {
        return file;
    }

    Beginning beginning() {
        return beginning;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(NewTextHandler.TITLE);
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = new Composite((Composite) super.createDialogArea(parent), SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(area);
        GridLayoutFactory.swtDefaults().numColumns(2).margins(12, 10).spacing(10, 8).applyTo(area);
        procedure = kind(area, "Procedure: the steps of one repair");
        library = kind(area, "Library: instruments, points and notes that procedures share");
        procedure.setSelection(true);
        new Label(area, SWT.NONE).setText("Name");
        name = new Text(area, SWT.BORDER);
        name.addListener(SWT.Modify, event -> check());
        GridDataFactory.fillDefaults().grab(true, false).hint(380, SWT.DEFAULT).applyTo(name);
        hint = new Label(area, SWT.WRAP);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(460, 2 * name.getLineHeight() + 8).applyTo(hint);
        name.setFocus();
        return area;
    }

    private Button kind(Composite area, String words) {
        Button button = new Button(area, SWT.RADIO);
        button.setText(words);
        button.addListener(SWT.Selection, event -> check());
        GridDataFactory.fillDefaults().span(2, 1).applyTo(button);
        return button;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Begin", true);
        createButton(parent, IDialogConstants.CANCEL_ID, "Cancel", false);
        check();
    }

    private void check() {
        String typed = name.getText().strip();
        boolean fits = Beginning.isName(typed);
        IFile wanted = NewTextHandler.file(folder, library.getSelection(), fits ? typed : "x");
        boolean taken = fits && wanted.exists();
        hint.setText(typed.isEmpty() ? "Letters and digits, such as " + (library.getSelection() ? "NorthBench." : "OllenbyFaintLabels.")
                : !fits ? "Use letters and digits, a letter first; a word of the language cannot be a name."
                : taken ? "There is a file of that name."
                : "Goes into " + wanted.getParent().getLocation().toOSString());
        if (getButton(IDialogConstants.OK_ID) != null) {
            getButton(IDialogConstants.OK_ID).setEnabled(fits && !taken);
        }
    }

    @Override
    protected void okPressed() {
        String chosen = name.getText().strip();
        file = NewTextHandler.file(folder, library.getSelection(), chosen);
        beginning = library.getSelection() ? Beginning.library(chosen) : Beginning.procedure(chosen);
        super.okPressed();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.faultwright.publish.page.PlainText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.TitledDialog;

/** Asks for one of the steps, found by any part of its name or words. */
final class StepChooser extends TitledDialog {
    /** What can be chosen. @param key what is answered @param words its title; empty where there is none */
    record Choice(String key, String name, String words) {
        private boolean has(String part) {
            return (name + " " + words).toLowerCase(Locale.ROOT).contains(part.toLowerCase(Locale.ROOT));
        }

        private String shown() {
            return PlainText.line(words.isEmpty() ? name : name + ": " + words);
        }
    }

    private final String question;
    private final List<Choice> choices;
    private List<Choice> shown;
    private Text part;
    private Table table;
    private Optional<Choice> chosen = Optional.empty();

    StepChooser(Shell shell, String title, String question, List<Choice> choices) {
        super(shell, title);
        this.question = question;
        this.choices = choices;
        this.shown = choices;
    }

    /** Opens it. @return absent where nothing was chosen */
    Optional<Choice> ask() {
        return open() == OK ? chosen : Optional.empty();
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = area(parent);
        GridLayoutFactory.swtDefaults().margins(8, 8).applyTo(area);
        new Label(area, SWT.WRAP).setText(question);
        part = new Text(area, SWT.BORDER | SWT.SEARCH);
        part.setMessage("Part of the name or of the words");
        AccessibleName.as(part, question);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(part);
        table = new Table(area, SWT.BORDER | SWT.SINGLE | SWT.V_SCROLL | SWT.FULL_SELECTION);
        AccessibleName.as(table, "Steps");
        GridDataFactory.fillDefaults().grab(true, true).hint(convertWidthInCharsToPixels(84), 14 * table.getItemHeight()).applyTo(table);
        part.addListener(SWT.Modify, event -> fill());
        part.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ARROW_DOWN || event.keyCode == SWT.ARROW_UP) {
                int wanted = table.getSelectionIndex() + (event.keyCode == SWT.ARROW_DOWN ? 1 : -1);
                table.setSelection(Math.max(0, Math.min(wanted, table.getItemCount() - 1)));
                event.doit = false;
            }
        });
        table.addListener(SWT.DefaultSelection, event -> okPressed());
        return area;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Choose", true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
        fill();
    }

    private void fill() {
        shown = choices.stream().filter(choice -> choice.has(part.getText().strip())).toList();
        table.setRedraw(false);
        table.removeAll();
        shown.forEach(choice -> new TableItem(table, SWT.NONE).setText(choice.shown()));
        table.setSelection(0);
        table.setRedraw(true);
        getButton(IDialogConstants.OK_ID).setEnabled(!shown.isEmpty());
    }

    @Override
    protected void okPressed() {
        int index = table.getSelectionIndex();
        if (index >= 0 && index < shown.size()) {
            chosen = Optional.of(shown.get(index));
            super.okPressed();
        }
    }
}

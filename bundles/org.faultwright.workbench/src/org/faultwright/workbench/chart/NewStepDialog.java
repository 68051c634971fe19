/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
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
import org.faultwright.workbench.look.Fields;
import org.faultwright.workbench.look.TitledDialog;

/** Asks what a new step is: its kind, its name and its words. */
final class NewStepDialog extends TitledDialog {
    private final Set<String> taken;
    private Combo kind;
    private Text name;
    private Text words;
    private Label problem;
    private Optional<NewStep> answer = Optional.empty();

    /** @param taken names that are given already */
    NewStepDialog(Shell shell, String title, Set<String> taken) {
        super(shell, title);
        this.taken = taken;
    }

    Optional<NewStep> ask() {
        return open() == OK ? answer : Optional.empty();
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = area(parent);
        GridLayoutFactory.swtDefaults().numColumns(2).margins(8, 8).spacing(10, 8).applyTo(area);
        kind = Fields.choice(area, "Kind", Stream.of(NewStep.Kind.values()).map(NewStep.Kind::words).toList(), () -> { });
        name = Fields.text(area, "Name", "", this::check);
        words = Fields.text(area, "Words", "The question, what is done, or the conclusion", this::check);
        problem = new Label(area, SWT.WRAP);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(convertWidthInCharsToPixels(64), 2 * convertHeightInCharsToPixels(1)).applyTo(problem);
        return area;
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
        name.setText(free());
        name.selectAll();
        name.setFocus();
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

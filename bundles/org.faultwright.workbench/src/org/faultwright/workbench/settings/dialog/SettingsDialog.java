/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.settings.dialog;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.DateTime;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Spinner;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.ColourTheme;
import org.faultwright.workbench.look.TitledDialog;
import org.faultwright.workbench.settings.WorkbenchSettings;

/** All there is to set: the size of the text, the colours, the day of calibration, the folders. */
public final class SettingsDialog extends TitledDialog {
    public static final String TITLE = "Settings";

    private Spinner fontSize;
    private Combo colours;
    private Button today;
    private DateTime day;
    private org.eclipse.swt.widgets.List folders;
    private Button takeOff;
    private List<IProject> open = List.of();

    public SettingsDialog(Shell shell) {
        super(shell, TITLE);
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = area(parent);
        GridLayoutFactory.swtDefaults().numColumns(3).margins(12, 10).spacing(10, 10).applyTo(area);
        font(area);
        if (ColourTheme.canBeChosen()) {
            colours(area);
        }
        calibration(area);
        folders(area);
        return area;
    }

    private void font(Composite area) {
        label(area, "Size of the text");
        fontSize = new Spinner(area, SWT.BORDER);
        fontSize.setValues(WorkbenchSettings.fontSize(), WorkbenchSettings.SMALLEST_FONT, WorkbenchSettings.LARGEST_FONT, 0, 1, 4);
        new Label(area, SWT.NONE).setText("points");
    }

    private void colours(Composite area) {
        label(area, "Colours");
        colours = new Combo(area, SWT.READ_ONLY);
        colours.setItems("As the system has them", "Light", "Dark");
        colours.select(WorkbenchSettings.colours().ordinal());
        new Label(area, SWT.NONE).setText("from the next start on");
    }

    private void calibration(Composite area) {
        label(area, "Calibration is judged on");
        today = new Button(area, SWT.CHECK);
        today.setText("the day of work");
        day = new DateTime(area, SWT.DATE | SWT.DROP_DOWN | SWT.BORDER);
        LocalDate judged = WorkbenchSettings.calibrationDay();
        day.setDate(judged.getYear(), judged.getMonthValue() - 1, judged.getDayOfMonth());
        today.setSelection(WorkbenchSettings.fixedCalibrationDay().isEmpty());
        day.setEnabled(!today.getSelection());
        today.addListener(SWT.Selection, event -> day.setEnabled(!today.getSelection()));
    }

    private void folders(Composite area) {
        Label label = label(area, "Folders");
        GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(label);
        folders = new org.eclipse.swt.widgets.List(area, SWT.BORDER | SWT.V_SCROLL | SWT.H_SCROLL | SWT.SINGLE);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(420, 120).applyTo(folders);
        new Label(area, SWT.NONE);
        Composite buttons = new Composite(area, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(buttons);
        GridDataFactory.fillDefaults().span(2, 1).applyTo(buttons);
        Button another = new Button(buttons, SWT.PUSH);
        another.setText("Open a folder\u2026");
        another.addListener(SWT.Selection, event -> openFolder());
        takeOff = new Button(buttons, SWT.PUSH);
        takeOff.setText("Take off");
        takeOff.addListener(SWT.Selection, event -> takeOff());
        folders.addListener(SWT.Selection, event -> takeOff.setEnabled(folders.getSelectionIndex() >= 0));
        fill();
    }

    private void fill() {
        open = Folders.all();
        folders.setItems(open.stream().map(Folders::words).toArray(String[]::new));
        takeOff.setEnabled(false);
    }

    private void openFolder() {
        String chosen = new DirectoryDialog(getShell()).open();
        if (chosen != null) {
            try {
                Folders.link(Path.of(chosen));
            } catch (CoreException refused) {
                MessageDialog.openInformation(getShell(), TITLE, refused.getStatus().getMessage());
            }
            fill();
        }
    }

    private void takeOff() {
        Folders.takeOff(open.get(folders.getSelectionIndex()), getShell());
        fill();
    }

    private static Label label(Composite area, String words) {
        Label label = new Label(area, SWT.NONE);
        label.setText(words);
        return label;
    }

    @Override
    protected void okPressed() {
        if (fontSize.getSelection() != WorkbenchSettings.fontSize()) {
            WorkbenchSettings.useFontSize(fontSize.getSelection());
        }
        if (colours != null) {
            WorkbenchSettings.choose(WorkbenchSettings.Colours.values()[colours.getSelectionIndex()]);
        }
        Optional<LocalDate> judged = today.getSelection() ? Optional.empty()
                : Optional.of(LocalDate.of(day.getYear(), day.getMonth() + 1, day.getDay()));
        if (!judged.equals(WorkbenchSettings.fixedCalibrationDay())) {
            WorkbenchSettings.judgeCalibrationOn(judged);
        }
        super.okPressed();
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Keep", true);
        createButton(parent, IDialogConstants.CANCEL_ID, "Cancel", false);
    }
}

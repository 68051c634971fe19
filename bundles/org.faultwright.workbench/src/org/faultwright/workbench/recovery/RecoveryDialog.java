/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.recovery;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.publish.WholeFile;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.TitledDialog;

/** Shows what was not saved beside what the file says, one text after the other, and asks which one is to stay. */
final class RecoveryDialog extends TitledDialog {
    static final String TITLE = "Text that was not saved";
    static final int TAKE = IDialogConstants.CLIENT_ID;
    static final int KEEP_FILE = IDialogConstants.CLIENT_ID + 1;

    private final UnsavedText unsaved;
    private final String saved;

    private RecoveryDialog(Shell shell, UnsavedText unsaved) {
        super(shell, TITLE);
        this.unsaved = unsaved;
        this.saved = Recovery.saved(unsaved);
        setShellStyle(getShellStyle() | SWT.MAX);
    }

    /** Asks for each text that is left; one that is put off is asked for again at the next start. */
    static void askForAll(Shell shell) {
        for (UnsavedText text : Recovery.get().putAside()) {
            int answer = new RecoveryDialog(shell, text).open();
            if (answer == TAKE) {
                take(text);
            } else if (answer == KEEP_FILE) {
                Recovery.get().drop(text);
            }
        }
    }

    /** Puts the unsaved text into the editor of its file, to be saved by the writer; a deleted file is written again. */
    private static void take(UnsavedText text) {
        Optional<IFile> file = Editors.file(text.file());
        if (file.isEmpty() || !file.get().exists()) {
            writeAgain(text);
            return;
        }
        Editors.open(file.get()).flatMap(Editors::document).ifPresent(document -> {
            Editors.replace(document, text.text());
            Recovery.get().takenUp(text);
        });
    }

    private static void writeAgain(UnsavedText text) {
        try {
            WholeFile.replace(Path.of(text.file()), text.text());
            Recovery.get().drop(text);
            Optional<IFile> file = Editors.file(text.file());
            if (file.isPresent()) {
                file.get().refreshLocal(0, null);
                Editors.open(file.get());
            }
        } catch (java.io.IOException | CoreException refused) {
            org.eclipse.jface.dialogs.MessageDialog.openWarning(null, TITLE, text.file()
                    + " cannot be written again. The copy stays; it is offered at the next start.");
        }
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        GridLayoutFactory.swtDefaults().numColumns(2).equalWidth(true).margins(12, 10).applyTo(area);
        Label what = new Label(area, SWT.WRAP);
        what.setText(unsaved.file() + " was being changed when the window ended. Which text is to stay?");
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(600, SWT.DEFAULT).applyTo(what);
        String typed = "As it was typed, not saved";
        String inFile = saved.isEmpty() ? "The file is empty or gone" : "As the file has it";
        new Label(area, SWT.NONE).setText(typed);
        new Label(area, SWT.NONE).setText(inFile);
        AccessibleName.as(text(area, unsaved.text(), saved), typed);
        AccessibleName.as(text(area, saved, unsaved.text()), inFile);
        return area;
    }

    /** The text with the stretch in which it differs from the other one marked. */
    private static StyledText text(Composite area, String text, String other) {
        StyledText shown = new StyledText(area, SWT.BORDER | SWT.V_SCROLL | SWT.H_SCROLL | SWT.READ_ONLY);
        shown.setFont(JFaceResources.getTextFont());
        shown.setText(text);
        List<StyleRange> marks = new ArrayList<>();
        int[] differing = Editors.differing(text, other);
        if (differing[1] > 0) {
            StyleRange mark = new StyleRange();
            mark.start = differing[0];
            mark.length = differing[1];
            mark.underline = true;
            mark.fontStyle = SWT.BOLD;
            marks.add(mark);
        }
        shown.setStyleRanges(marks.toArray(StyleRange[]::new));
        shown.setTopIndex(Math.max(0, shown.getLineAtOffset(differing[0]) - 3));
        GridDataFactory.fillDefaults().grab(true, true).hint(460, 380).applyTo(shown);
        return shown;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, TAKE, "Take the unsaved text", true);
        createButton(parent, KEEP_FILE, "Keep the file", false);
        createButton(parent, IDialogConstants.CANCEL_ID, "Decide later", false);
    }

    @Override
    protected void buttonPressed(int button) {
        setReturnCode(button);
        close();
    }

    @Override
    protected Point getInitialSize() {
        return new Point(1040, 620);
    }
}

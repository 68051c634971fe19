/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.List;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.faultwright.analysis.Fix;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.TitledDialog;

/** The lines that a new name changes, file by file. */
final class RenamePreview extends TitledDialog {
    private final NewName renaming;

    RenamePreview(Shell shell, NewName renaming) {
        super(shell, "Rename \"" + renaming.declared().text() + "\" to \"" + renaming.newName() + "\"");
        this.renaming = renaming;
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        Label what = new Label(area, SWT.WRAP);
        what.setText(renaming.places() + " places in " + renaming.edits().size() + " files change. A file that is open is changed in"
                + " its editor and saved by you; the others are saved at once.");
        GridDataFactory.fillDefaults().grab(true, false).hint(560, SWT.DEFAULT).applyTo(what);
        Tree tree = new Tree(area, SWT.BORDER);
        AccessibleName.as(tree, "Places that change");
        renaming.edits().forEach((file, edits) -> add(tree, file, edits));
        GridDataFactory.fillDefaults().grab(true, true).hint(560, 320).applyTo(tree);
        return area;
    }

    private static void add(Tree tree, IFile file, List<Fix.Edit> edits) {
        TreeItem top = new TreeItem(tree, SWT.NONE);
        top.setText(file.getProjectRelativePath() + "   " + edits.size() + (edits.size() == 1 ? " place" : " places"));
        for (Fix.Edit edit : edits) {
            new TreeItem(top, SWT.NONE).setText("line " + edit.at().line() + ":  " + changed(edit));
        }
        top.setExpanded(true);
    }

    private static String changed(Fix.Edit edit) {
        String line = edit.at().source().lineText(edit.at().line());
        int column = edit.at().column() - 1;
        return (line.substring(0, column) + edit.replacement()
                + line.substring(Math.min(line.length(), column + edit.at().length()))).strip();
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Rename", true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
    }

    @Override
    protected Point getInitialSize() {
        return new Point(720, 520);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import java.nio.file.Path;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.DialogParent;

/** Puts a folder of procedures on the shelf; its files stay where they are. */
public final class OpenFolderHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        Shell shell = DialogParent.shell();
        DirectoryDialog dialog = new DirectoryDialog(shell);
        dialog.setText("Open a folder of procedures");
        String folder = dialog.open();
        if (folder != null) {
            try {
                Folders.link(Path.of(folder));
            } catch (CoreException refused) {
                MessageDialog.openInformation(shell, dialog.getText(), refused.getStatus().getMessage());
            }
        }
        return null;
    }
}

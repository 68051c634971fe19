/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Platform;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.statushandlers.AbstractStatusHandler;
import org.eclipse.ui.statushandlers.StatusAdapter;
import org.eclipse.ui.statushandlers.StatusManager;
import org.faultwright.workbench.look.DialogParent;

/** Says in plain words that something of the program failed; what it was stands in the log, for whoever mends it. */
final class PlainErrors extends AbstractStatusHandler {
    static final String TITLE = "Something did not work";

    private boolean saying;

    @Override
    public void handle(StatusAdapter adapter, int style) {
        IStatus status = adapter.getStatus();
        if ((style & (StatusManager.LOG | StatusManager.SHOW | StatusManager.BLOCK)) != 0) {
            ILog.get().log(status);
        }
        if ((style & (StatusManager.SHOW | StatusManager.BLOCK)) != 0 && status.matches(IStatus.ERROR | IStatus.WARNING)) {
            Display.getDefault().asyncExec(this::say);
        }
    }

    private void say() {
        if (saying) {
            return;
        }
        saying = true;
        try {
            MessageDialog.openInformation(DialogParent.shell(), TITLE, words());
        } finally {
            saying = false;
        }
    }

    static String words() {
        return "A part of the program has failed. What you typed is kept. Go on, or close the window and open it again; what is not"
                + " saved is offered then.\n\nWhoever looks into it needs the file " + Platform.getLogFileLocation().toOSString() + ".";
    }
}

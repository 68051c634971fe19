/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.Arrays;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;

/**
 * To which window a dialog belongs. The window system tells of an active one only while its user works in it; a dialog without a window lies behind
 * it, takes no Esc and lets it be worked on.
 */
public final class DialogParent {
    private static final int MODAL = SWT.PRIMARY_MODAL | SWT.APPLICATION_MODAL | SWT.SYSTEM_MODAL;

    private DialogParent() {
    }

    /** The dialog that is open, else the window; null only while there is none. Only for the window's thread. */
    public static Shell shell() {
        Display display = Display.getCurrent();
        Shell active = display.getActiveShell();
        return active != null && active.isVisible() ? active : openDialog(display).or(DialogParent::window).orElse(null);
    }

    private static Optional<Shell> openDialog(Display display) {
        return Arrays.stream(display.getShells()).filter(shell -> shell.isVisible() && (shell.getStyle() & MODAL) != 0).reduce((one, later) -> later);
    }

    private static Optional<Shell> window() {
        return PlatformUI.isWorkbenchRunning() ? Arrays.stream(PlatformUI.getWorkbench().getWorkbenchWindows()).map(IWorkbenchWindow::getShell).filter(Shell::isVisible).findFirst()
                : Optional.empty();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PlatformUI;
import org.faultwright.workbench.look.ColourTheme;
import org.faultwright.workbench.start.StartSequence;

/** Starts the window and stays until it is closed. */
public final class FaultwrightApplication implements IApplication {
    @Override
    public Object start(IApplicationContext context) {
        PlatformLogHandler.useFromNowOn();
        Display display = PlatformUI.createDisplay();
        try {
            // the picture of the start goes before anything is asked; the window takes it away itself
            if (!StartSequence.mayOpen(context::applicationRunning)) {
                return IApplication.EXIT_OK;
            }
            ColourTheme.choose(display);
            int code = PlatformUI.createAndRunWorkbench(display, new FaultwrightWorkbenchAdvisor());
            return code == PlatformUI.RETURN_RESTART ? IApplication.EXIT_RESTART : IApplication.EXIT_OK;
        } finally {
            display.dispose();
        }
    }

    @Override
    public void stop() {
        if (PlatformUI.isWorkbenchRunning()) {
            IWorkbench workbench = PlatformUI.getWorkbench();
            workbench.getDisplay().syncExec(workbench::close);
        }
    }
}

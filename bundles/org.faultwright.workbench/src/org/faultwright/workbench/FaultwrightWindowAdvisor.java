/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.swt.graphics.Point;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;

/** Size, title and bars of the window. */
final class FaultwrightWindowAdvisor extends WorkbenchWindowAdvisor {
    FaultwrightWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        super(configurer);
    }

    @Override
    public void preWindowOpen() {
        IWorkbenchWindowConfigurer window = getWindowConfigurer();
        window.setInitialSize(new Point(1280, 860));
        window.setTitle("Faultwright");
        window.setShowCoolBar(true);
        window.setShowStatusLine(true);
    }
}

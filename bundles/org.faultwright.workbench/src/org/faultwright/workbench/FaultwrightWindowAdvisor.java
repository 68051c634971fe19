/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.swt.graphics.Point;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;
import org.eclipse.ui.internal.WorkbenchPlugin;
import org.eclipse.ui.internal.registry.ActionSetRegistry;
import org.eclipse.ui.internal.registry.IActionSetDescriptor;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.Shelf;
import org.faultwright.workbench.shelf.Folders;

/** Size, title and bars of the window, and what a first start shows. */
final class FaultwrightWindowAdvisor extends WorkbenchWindowAdvisor {
    private static final String FIRST_SHOWN = "OllenbyFaintLabels.procedure";

    FaultwrightWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        super(configurer);
    }

    @Override
    public ActionBarAdvisor createActionBarAdvisor(IActionBarConfigurer configurer) {
        return new FaultwrightBars(configurer);
    }

    /** Tools that platform bundles bring along for programmers; there is no public way to leave them out. */
    private static void withoutForeignTools() {
        ActionSetRegistry registry = WorkbenchPlugin.getDefault().getActionSetRegistry();
        for (IActionSetDescriptor set : registry.getActionSets()) {
            registry.removeExtension(set.getConfigurationElement().getDeclaringExtension(), new Object[] {set});
        }
    }

    @Override
    public void preWindowOpen() {
        withoutForeignTools();
        IWorkbenchWindowConfigurer window = getWindowConfigurer();
        window.setInitialSize(new Point(1500, 960));
        window.setTitle("Faultwright");
        window.setShowCoolBar(true);
        window.setShowStatusLine(true);
        window.setShowPerspectiveBar(false);
        window.setShowProgressIndicator(true);
    }

    @Override
    public void postWindowOpen() {
        IWorkbenchWindow window = getWindowConfigurer().getWindow();
        ActiveText.get().follow(window);
        if (ResourcesPlugin.getWorkspace().getRoot().getProjects().length == 0) {
            showDemo();
        }
        Shelf.get();
    }

    private static void showDemo() {
        try {
            IFile first = Folders.demo().getFile(FIRST_SHOWN);
            if (first.exists()) {
                Editors.open(first);
            }
        } catch (CoreException refused) {
            ILog.of(FaultwrightWindowAdvisor.class).error("The demo could not be put on the shelf.", refused);
        }
    }
}

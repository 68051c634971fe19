/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.List;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.e4.ui.model.application.ui.MUIElement;
import org.eclipse.e4.ui.model.application.ui.basic.MWindow;
import org.eclipse.e4.ui.workbench.modeling.EModelService;
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
import org.faultwright.workbench.look.Look;
import org.faultwright.workbench.recovery.Recovery;
import org.faultwright.workbench.settings.Settings;
import org.faultwright.workbench.shelf.Folders;
import org.faultwright.workbench.start.Starting;

/** Size, title and bars of the window, and what a first start shows. */
final class FaultwrightWindowAdvisor extends WorkbenchWindowAdvisor {
    static final String FIRST_SHOWN = "OllenbyFaintLabels.procedure";

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
        Look.colour();
        Settings.showFont();
        IWorkbenchWindowConfigurer window = getWindowConfigurer();
        window.setInitialSize(new Point(1500, 960));
        window.setTitle("Faultwright");
        window.setShowCoolBar(true);
        window.setShowStatusLine(true);
        window.setShowPerspectiveBar(false);
        window.setShowProgressIndicator(true);
    }

    /** The platform's search over all its commands names what a technician has no use for. */
    private static void withoutSearchField(IWorkbenchWindow window) {
        MWindow model = window.getService(MWindow.class);
        EModelService models = window.getService(EModelService.class);
        for (MUIElement field : models.findElements(model, "SearchField", MUIElement.class, List.of(), EModelService.IN_TRIM)) {
            field.setToBeRendered(false);
        }
    }

    @Override
    public void postWindowOpen() {
        IWorkbenchWindow window = getWindowConfigurer().getWindow();
        withoutSearchField(window);
        ActiveText.get().follow(window);
        Starting.opened(window.getShell());
        if (ResourcesPlugin.getWorkspace().getRoot().getProjects().length == 0) {
            showDemo();
        }
        Shelf.get();
        Recovery.get().start();
        window.getShell().getDisplay().asyncExec(() -> Recovery.ask(window.getShell()));
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

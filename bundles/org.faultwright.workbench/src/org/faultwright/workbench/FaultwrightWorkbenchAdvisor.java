/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.IAdaptable;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.application.IWorkbenchConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchAdvisor;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.statushandlers.AbstractStatusHandler;

/** What the workbench opens with. */
final class FaultwrightWorkbenchAdvisor extends WorkbenchAdvisor {
    private final AbstractStatusHandler errors = new PlainErrors();

    @Override
    public void initialize(IWorkbenchConfigurer configurer) {
        super.initialize(configurer);
        configurer.setSaveAndRestore(true);
        IDE.registerAdapters();
    }

    @Override
    public synchronized AbstractStatusHandler getWorkbenchErrorHandler() {
        return errors;
    }

    /** No page of settings of another bundle can be reached; ours is a dialog of its own. */
    @Override
    public void postStartup() {
        PlatformUI.getWorkbench().getPreferenceManager().removeAll();
    }

    @Override
    public String getInitialWindowPerspectiveId() {
        return WritingPerspective.ID;
    }

    @Override
    public IAdaptable getDefaultPageInput() {
        return ResourcesPlugin.getWorkspace().getRoot();
    }

    @Override
    public WorkbenchWindowAdvisor createWorkbenchWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        return new FaultwrightWindowAdvisor(configurer);
    }

    @Override
    public boolean preShutdown() {
        try {
            ResourcesPlugin.getWorkspace().save(true, null);
        } catch (org.eclipse.core.runtime.CoreException unsaved) {
            org.eclipse.core.runtime.ILog.of(getClass()).error("The state of the shelf could not be saved.", unsaved);
        }
        return super.preShutdown();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.welcome;

import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IPersistableElement;

/** The one welcome there is; it is not opened again at the next start when something else is. */
final class WelcomeInput implements IEditorInput {
    static final WelcomeInput ONE = new WelcomeInput();

    private WelcomeInput() {
    }

    @Override
    public boolean exists() {
        return false;
    }

    @Override
    public ImageDescriptor getImageDescriptor() {
        return ImageDescriptor.getMissingImageDescriptor();
    }

    @Override
    public String getName() {
        return "Welcome";
    }

    @Override
    public IPersistableElement getPersistable() {
        return null;
    }

    @Override
    public String getToolTipText() {
        return "What to begin with";
    }

    @Override
    public <T> T getAdapter(Class<T> adapter) {
        return null;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.handlers.HandlerUtil;

/** Goes to the fault table of the procedure in front. */
public final class FaultTableHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        try {
            // a view that is in front already is not given the keyboard by being shown
            HandlerUtil.getActiveWorkbenchWindowChecked(event).getActivePage().showView(FaultTableView.ID).setFocus();
        } catch (PartInitException refused) {
            throw new ExecutionException("The fault table cannot be shown.", refused);
        }
        return null;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.faultwright.workbench.look.DialogParent;

/** Asks for a new library, to be put into the folder that is at hand. */
public final class NewLibraryHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        new NewLibraryDialog(DialogParent.shell(), NewProcedureHandler.folder(event)).open();
        return null;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.IStatusLineManager;
import org.eclipse.ui.texteditor.BasicTextEditorActionContributor;

/** Connects the menus with the editor in front. The status line is left to sentences; lines have their numbers beside them. */
public final class ProcedureBars extends BasicTextEditorActionContributor {
    @Override
    public void contributeToMenu(IMenuManager menu) {
        // every entry stands in FaultwrightBars
    }

    @Override
    public void contributeToStatusLine(IStatusLineManager line) {
        // no fields for a programmer
    }
}

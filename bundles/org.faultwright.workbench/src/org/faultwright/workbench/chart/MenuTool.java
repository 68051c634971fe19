/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.ToolItem;

/** A tool that shows the menu that the right button shows too. */
final class MenuTool extends Action {
    private final Menu menu;

    MenuTool(String words, String hint, Menu menu) {
        super(words, IAction.AS_PUSH_BUTTON);
        this.menu = menu;
        setToolTipText(hint);
    }

    @Override
    public void runWithEvent(Event event) {
        if (event.widget instanceof ToolItem item) {
            Rectangle area = item.getBounds();
            menu.setLocation(item.getParent().toDisplay(area.x, area.y + area.height));
            menu.setVisible(true);
        }
    }
}

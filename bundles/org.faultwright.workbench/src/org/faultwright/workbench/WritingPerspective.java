/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.outline.OutlineView;
import org.faultwright.workbench.shelf.ShelfView;
import org.faultwright.workbench.usedby.UsedByView;

/** The arrangement for writing procedures: what there is, the text, its card, and what was found. */
public final class WritingPerspective implements IPerspectiveFactory {
    static final String ID = "org.faultwright.workbench.writing";

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(true);
        layout.addView(ShelfView.ID, IPageLayout.LEFT, 0.19f, layout.getEditorArea());
        layout.addView(OutlineView.ID, IPageLayout.BOTTOM, 0.42f, ShelfView.ID);
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.72f, layout.getEditorArea());
        below.addView(FindingsView.ID);
        below.addView(UsedByView.ID);
        IFolderLayout right = layout.createFolder("right", IPageLayout.RIGHT, 0.62f, layout.getEditorArea());
        right.addView(CardView.ID);
        right.addPlaceholder(HelpView.ID);
        for (String view : new String[] {ShelfView.ID, FindingsView.ID, CardView.ID, OutlineView.ID, UsedByView.ID}) {
            layout.getViewLayout(view).setCloseable(false);
        }
    }
}

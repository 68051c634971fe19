/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.chart.ChartView;
import org.faultwright.workbench.compare.CompareView;
import org.faultwright.workbench.faulttable.FaultTableView;
import org.faultwright.workbench.find.FindView;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.folders.ShelfView;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.outline.OutlineView;
import org.faultwright.workbench.settings.WorkbenchSettings;
import org.faultwright.workbench.usedby.UsedByView;
import org.faultwright.workbench.walk.WalkView;

/** The arrangement for writing procedures: what there is, the text, its card and the walk through it, and what was found. The text has room for a usual line first of all. */
public final class WritingPerspective implements IPerspectiveFactory {
    static final String ID = "org.faultwright.workbench.writing";

    private static final float SHELF = 0.19f;
    private static final float SHELF_BELOW = 0.38f;
    private static final float TEXT_BESIDE_CARD = 0.62f;
    /** Characters: 95 of 100 lines of the demo are no longer. */
    static final int USUAL_LINE = 82;
    /** Characters that the line numbers, the margins and the scroll bar take. */
    private static final int BESIDE_THE_LINE = 9;

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(true);
        boolean beside = hasRoomForACard();
        boolean shelfBeside = hasRoomForTheShelf(FaultwrightWindowAdvisor.size().x, WorkbenchSettings.characterWidth());
        if (shelfBeside) {
            layout.addView(ShelfView.ID, IPageLayout.LEFT, SHELF, layout.getEditorArea());
            layout.addView(OutlineView.ID, IPageLayout.BOTTOM, 0.42f, ShelfView.ID);
        }
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, beside ? 0.72f : 0.62f, layout.getEditorArea());
        if (!shelfBeside) {
            IFolderLayout left = layout.createFolder("left", IPageLayout.LEFT, SHELF_BELOW, "below");
            left.addView(ShelfView.ID);
            left.addView(OutlineView.ID);
            left.addView(FindView.ID);
        }
        below.addView(FindingsView.ID);
        below.addView(FaultTableView.ID);
        if (shelfBeside) {
            below.addView(FindView.ID);
        }
        below.addView(UsedByView.ID);
        below.addView(CompareView.ID);
        if (beside) {
            IFolderLayout right = layout.createFolder("right", IPageLayout.RIGHT, TEXT_BESIDE_CARD, layout.getEditorArea());
            right.addView(CardView.ID);
            right.addView(WalkView.ID);
            right.addView(ChartView.ID);
            right.addPlaceholder(HelpView.ID);
        } else {
            below.addView(CardView.ID);
            below.addView(WalkView.ID);
            below.addView(ChartView.ID);
            below.addPlaceholder(HelpView.ID);
        }
        for (String view : new String[] {ShelfView.ID, FindingsView.ID, CardView.ID, WalkView.ID, ChartView.ID, FaultTableView.ID, OutlineView.ID,
                FindView.ID, UsedByView.ID, CompareView.ID}) {
            layout.getViewLayout(view).setCloseable(false);
        }
    }

    /** On a small screen, or with large letters, the card goes below the text, where its words can still be read. */
    private static boolean hasRoomForACard() {
        return hasRoomForACard(FaultwrightWindowAdvisor.size().x, WorkbenchSettings.characterWidth());
    }

    /**
     * Where a usual line would not fit beside the shelf, procedures and outline stand below the text, and the text has the whole width.
     *
     * @param window    the width of the window, in pixels
     * @param character the width of a character of the text, in pixels
     */
    static boolean hasRoomForTheShelf(int window, double character) {
        return window * (1 - SHELF) >= (USUAL_LINE + BESIDE_THE_LINE) * character;
    }

    /** @param window the width of the window, in pixels @param character the width of a character of the text, in pixels */
    static boolean hasRoomForACard(int window, double character) {
        return window * (1 - SHELF) * TEXT_BESIDE_CARD >= (USUAL_LINE + BESIDE_THE_LINE) * character;
    }
}

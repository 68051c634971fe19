/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;

/** Tells a screen reader of the table: a child for each cell, named by all there is to say of it. */
final class SpokenCells {
    private SpokenCells() {
    }

    static void of(GridCanvas grid) {
        grid.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = event.childID == ACC.CHILDID_SELF ? "Fault table" : name(grid, event.childID);
            }

            @Override
            public void getDescription(AccessibleEvent event) {
                event.result = grid.told();
            }
        });
        grid.getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = event.childID == ACC.CHILDID_SELF ? ACC.ROLE_TABLE : ACC.ROLE_TABLECELL;
            }

            @Override
            public void getChildCount(AccessibleControlEvent event) {
                event.detail = grid.sheet().map(sheet -> sheet.rows().size() * sheet.columns().size()).orElse(0);
            }

            @Override
            public void getFocus(AccessibleControlEvent event) {
                event.childID = grid.isFocusControl() ? child(grid) : ACC.CHILDID_NONE;
            }

            @Override
            public void getValue(AccessibleControlEvent event) {
                event.result = event.childID == ACC.CHILDID_SELF ? grid.told() : name(grid, event.childID);
            }

            @Override
            public void getState(AccessibleControlEvent event) {
                event.detail = ACC.STATE_FOCUSABLE | ACC.STATE_SELECTABLE
                        | (event.childID == child(grid) && grid.isFocusControl() ? ACC.STATE_FOCUSED | ACC.STATE_SELECTED : 0);
            }

            @Override
            public void getLocation(AccessibleControlEvent event) {
                Rectangle at = event.childID < 0 ? grid.getBounds() : area(grid, event.childID);
                Point corner = event.childID < 0 ? grid.getParent().toDisplay(at.x, at.y) : grid.toDisplay(at.x, at.y);
                event.x = corner.x;
                event.y = corner.y;
                event.width = at.width;
                event.height = at.height;
            }
        });
    }

    /** After another cell was taken in hand, or the one in hand says something else. */
    static void moved(GridCanvas grid) {
        if (grid.sheet().isPresent()) {
            grid.getAccessible().setFocus(child(grid));
        }
        grid.getAccessible().sendEvent(ACC.EVENT_VALUE_CHANGED, null);
        grid.getAccessible().sendEvent(ACC.EVENT_DESCRIPTION_CHANGED, null);
    }

    private static int child(GridCanvas grid) {
        return grid.sheet().map(sheet -> grid.row() * sheet.columns().size() + grid.column()).orElse(ACC.CHILDID_SELF);
    }

    /** What is said of a cell; empty where there is none of that number. */
    static String name(GridCanvas grid, int child) {
        return grid.sheet().filter(sheet -> child >= 0 && child < sheet.rows().size() * sheet.columns().size())
                .map(sheet -> sheet.told(sheet.rows().get(child / sheet.columns().size()), sheet.columns().get(child % sheet.columns().size()))).orElse("");
    }

    private static Rectangle area(GridCanvas grid, int child) {
        int columns = grid.sheet().map(sheet -> sheet.columns().size()).orElse(1);
        return grid.sheet().filter(sheet -> child < sheet.rows().size() * columns).map(sheet -> grid.area(child / columns, child % columns))
                .orElseGet(() -> new Rectangle(0, 0, 0, 0));
    }
}

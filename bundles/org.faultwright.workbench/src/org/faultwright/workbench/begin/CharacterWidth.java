/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Control;

/** How wide letters are. */
final class CharacterWidth {
    private CharacterWidth() {
    }

    /** In pixels, on the average. */
    static double width(Control of) {
        GC gc = new GC(of);
        try {
            return gc.getFontMetrics().getAverageCharacterWidth();
        } finally {
            gc.dispose();
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;

/**
 * Tells a press that was meant for what is shown from one that goes on from before: a key that is held down, and the second half of a
 * double click. Neither reads a note nor answers a step.
 */
final class DeliberatePress {
    private int heldKey;
    private long pressed;
    private boolean again;
    private long drawn;

    /** Listens until the control is disposed. */
    DeliberatePress(Control in) {
        Listener keys = this::key;
        Listener mouse = this::mouse;
        in.getDisplay().addFilter(SWT.KeyDown, keys);
        in.getDisplay().addFilter(SWT.KeyUp, keys);
        in.getDisplay().addFilter(SWT.MouseDown, mouse);
        in.addListener(SWT.Dispose, event -> {
            in.getDisplay().removeFilter(SWT.KeyDown, keys);
            in.getDisplay().removeFilter(SWT.KeyUp, keys);
            in.getDisplay().removeFilter(SWT.MouseDown, mouse);
        });
    }

    private void key(Event event) {
        again = false;
        if (event.type == SWT.KeyUp) {
            heldKey = 0;
        } else if (event.keyCode != heldKey) {
            heldKey = event.keyCode;
            pressed = System.nanoTime();
        }
    }

    private void mouse(Event event) {
        heldKey = 0;
        again = event.count > 1;
        if (!again) {
            pressed = System.nanoTime();
        }
    }

    /** Something else is shown from now on. */
    void drawn() {
        drawn = System.nanoTime();
    }

    /** Whether a press that comes now began before what is shown was there. */
    boolean isOld() {
        return (heldKey != 0 || again) && drawn - pressed > 0;
    }
}

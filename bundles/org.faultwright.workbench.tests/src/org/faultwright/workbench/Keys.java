/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;

/** Keys that are pressed and let go again: the walk waits for that, in whatever test comes after, too. */
public final class Keys {
    private Keys() {
    }

    public static void press(Control on, int key) {
        press(on, key, 0);
    }

    /** @param with the keys that are held meanwhile, such as {@link SWT#MOD1} */
    public static void press(Control on, int key, int with) {
        on.notifyListeners(SWT.KeyDown, event(key, with));
        if (!on.isDisposed()) {
            on.notifyListeners(SWT.KeyUp, event(key, with));
        }
    }

    private static Event event(int key, int with) {
        Event event = new Event();
        event.keyCode = key;
        event.stateMask = with;
        event.character = key < 128 ? (char) key : 0;
        event.doit = true;
        return event;
    }
}

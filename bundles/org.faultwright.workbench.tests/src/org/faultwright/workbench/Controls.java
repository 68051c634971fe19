/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;

/** What a window holds. */
public final class Controls {
    private Controls() {
    }

    /** Every control of a kind, however deep, in its order. */
    public static <T extends Control> List<T> all(Composite in, Class<T> kind) {
        List<T> found = new ArrayList<>();
        for (Control child : in.getChildren()) {
            if (kind.isInstance(child)) {
                found.add(kind.cast(child));
            }
            if (child instanceof Composite inner) {
                found.addAll(all(inner, kind));
            }
        }
        return found;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.function.Supplier;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.widgets.Control;

/** What a screen reader says of a control that has no words of its own and no label beside it. */
public final class AccessibleName {
    private AccessibleName() {
    }

    public static void as(Control control, String name) {
        as(control, () -> name);
    }

    /** @param name asked for each time, where it changes */
    public static void as(Control control, Supplier<String> name) {
        control.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                if (event.childID == org.eclipse.swt.accessibility.ACC.CHILDID_SELF) {
                    event.result = name.get();
                }
            }
        });
    }
}

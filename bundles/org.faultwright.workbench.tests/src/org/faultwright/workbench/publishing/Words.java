/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;

/** Reads what a dialog says. */
public final class Words {
    private Words() {
    }

    public static String of(Composite composite) {
        StringBuilder words = new StringBuilder();
        for (Control child : composite.getChildren()) {
            if (child instanceof Label label) {
                words.append(label.getText()).append(' ');
            } else if (child instanceof Link link) {
                words.append(link.getText()).append(' ');
            } else if (child instanceof StyledText text) {
                words.append(text.getText()).append('\n');
            } else if (child instanceof Composite inner) {
                words.append(of(inner));
            }
        }
        return words.toString();
    }
}

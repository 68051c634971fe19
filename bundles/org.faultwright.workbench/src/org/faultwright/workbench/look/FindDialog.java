/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Group;
import org.eclipse.swt.widgets.Shell;

/** The platform's dialog for finding and replacing, in words that a technician uses; it has no way to be given others. */
public final class FindDialog {
    public static final String TITLE = "Find and replace";
    private static final String ITS_TITLE = "Find/Replace";
    private static final Map<String, String> WORDS = Map.of("Scope", "Where", "All", "In the w&hole text", "Selected lines",
            "In the se&lected lines", "Case sensitive", "&Capitals count", "Wrap search", "&Go on from the other end", "Whole word",
            "&Whole words", "Incremental", "Find while it is &typed", "Regular expressions", "By a pattern (regular e&xpression)",
            "Select All", "&Select all found", "Replace/Find", "Replace, fin&d next");

    private FindDialog() {
    }

    /** Changes the words whenever it opens. */
    public static void inPlainWords(Display display) {
        display.addFilter(SWT.Show, event -> {
            if (event.widget instanceof Shell shell && shell.getText().equals(ITS_TITLE)) {
                shell.setText(TITLE);
                change(shell);
                Point needed = shell.computeSize(SWT.DEFAULT, SWT.DEFAULT);
                Point size = shell.getSize();
                shell.setSize(Math.max(size.x, needed.x), Math.max(size.y, needed.y));
                shell.layout(true, true);
            }
        });
    }

    private static void change(Composite in) {
        for (Control child : in.getChildren()) {
            if (child instanceof Button button) {
                button.setText(WORDS.getOrDefault(plain(button.getText()), button.getText()));
                if (button.getLayoutData() instanceof GridData place && place.widthHint != SWT.DEFAULT) {
                    place.widthHint = Math.max(place.widthHint, button.computeSize(SWT.DEFAULT, SWT.DEFAULT).x);
                }
            } else if (child instanceof Group group) {
                group.setText(WORDS.getOrDefault(plain(group.getText()), group.getText()));
            }
            if (child instanceof Composite inner) {
                change(inner);
            }
        }
    }

    private static String plain(String words) {
        return words.replace("&", "");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.workbench.publishing.Words;

/** Answers the dialogs that a test meets, and remembers what they said. */
public final class Dialogs {
    private static final int MILLISECONDS_A_TURN = 50;
    /** As long as {@link Waiting} waits: a dialog that comes later and is answered by nobody would hold the tests up for good. */
    private static final int MOST_TURNS = 30_000 / MILLISECONDS_A_TURN;

    private Dialogs() {
    }

    /**
     * Presses a button in the next dialog with that title.
     *
     * @return what the dialog said, once it has come
     */
    public static List<String> answer(String title, String button) {
        return answer(title, dialog -> { }, button);
    }

    /** The same after something was done in the dialog. */
    public static List<String> answer(String title, Consumer<Shell> does, String button) {
        List<String> said = new ArrayList<>();
        Display display = Display.getCurrent();
        Runnable looking = new Runnable() {
            private int turns;

            @Override
            public void run() {
                for (Shell shell : display.getShells()) {
                    if (shell.isVisible() && shell.getText().startsWith(title)) {
                        does.accept(shell);
                        said.add(Words.of(shell));
                        press(shell, button);
                        return;
                    }
                }
                if (turns++ < MOST_TURNS) {
                    display.timerExec(MILLISECONDS_A_TURN, this);
                }
            }
        };
        display.timerExec(MILLISECONDS_A_TURN, looking);
        return said;
    }

    private static void press(Composite in, String button) {
        for (Control child : in.getChildren()) {
            if (child instanceof Button one && one.getText().replace("&", "").equals(button)) {
                Event event = new Event();
                one.notifyListeners(org.eclipse.swt.SWT.Selection, event);
                return;
            }
            if (child instanceof Composite inner && !in.isDisposed()) {
                press(inner, button);
            }
            if (in.isDisposed()) {
                return;
            }
        }
    }
}

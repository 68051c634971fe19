/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.File;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.Accessible;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.accessibility.AccessibleListener;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Somebody at the keyboard who goes on by Tab and hears what each control is called; nothing is reached that has not the focus. */
public final class Keyboard {
    private static final int MOST_TABS = 250;

    private final Display display = Display.getCurrent();
    private int answers;
    private int keys;

    /** How many fields were answered. */
    public int answers() {
        return answers;
    }

    /** How many keys were pressed: letters, Tab, Return, arrows. */
    public int keys() {
        return keys;
    }

    /** The window with this title, once it is there. */
    public Shell window(String title) {
        return Waiting.untilPresent("there is a window " + title, () -> Arrays.stream(display.getShells())
                .filter(shell -> shell.isVisible() && shell.getText().equals(title)).reduce((one, other) -> other));
    }

    /**
     * Does something once the window with this title has the focus. A window that is still being opened is left alone: what is done inside of that would hold
     * its opening up.
     */
    public void when(String title, Runnable act) {
        Runnable looking = new Runnable() {
            private int turns;

            @Override
            public void run() {
                Control here = display.getFocusControl();
                if (here != null && here.getShell().getText().equals(title) || turns++ > 300) {
                    act.run();
                } else {
                    display.timerExec(50, this);
                }
            }
        };
        display.timerExec(50, looking);
    }

    /** Goes on by Tab until the focus is on what is called so. */
    public Control go(String called) {
        StringBuilder heard = new StringBuilder();
        for (int i = 0; i < MOST_TABS; i++) {
            Control here = focus();
            if (name(here).equals(called)) {
                return here;
            }
            heard.append(name(here)).append(", ");
            keys++;
            here.traverse(SWT.TRAVERSE_TAB_NEXT);
            settle();
        }
        return fail("Tab never comes to \"" + called + "\", only to " + heard);
    }

    /** Goes to a field and answers it. */
    public void answer(String called, String words) {
        Control field = go(called);
        answers++;
        if (field instanceof Text text) {
            keys += words.length();
            text.selectAll();
            text.insert(words);
        } else if (field instanceof Combo combo) {
            int at = combo.indexOf(words);
            assertTrue(at >= 0, words + " is not among " + List.of(combo.getItems()));
            keys += Math.abs(at - combo.getSelectionIndex());
            combo.select(at);
            combo.notifyListeners(SWT.Selection, new Event());
        } else if (field instanceof Button button) {
            keys++;
            button.setSelection(!button.getSelection());
            button.notifyListeners(SWT.Selection, new Event());
        }
        settle();
    }

    /** Goes to a button and presses it. */
    public void press(String called) {
        Control button = go(called);
        keys++;
        assertTrue(button.isEnabled(), called + " is grey");
        button.notifyListeners(SWT.Selection, new Event());
        settle();
    }

    /** Return: the default button of the window. */
    public void enter(String expected) {
        Shell shell = focus().getShell();
        Waiting.until(expected + " can be pressed", () -> shell.getDefaultButton() != null && plain(shell.getDefaultButton()).equals(expected)
                && shell.getDefaultButton().isEnabled());
        keys++;
        shell.getDefaultButton().notifyListeners(SWT.Selection, new Event());
        settle();
    }

    /** Esc. */
    public void escape() {
        keys++;
        // as the window system does: it is offered to those around the focus, and at last to the window
        Control here = focus();
        Shell shell = here.getShell();
        String from = name(here) + " in \"" + shell.getText() + "\"";
        while (here != shell && !here.isDisposed()) {
            Control outside = here.getParent();
            here.traverse(SWT.TRAVERSE_ESCAPE);
            here = outside;
        }
        if (!shell.isDisposed()) {
            Event event = new Event();
            event.doit = true;
            boolean taken = shell.traverse(SWT.TRAVERSE_ESCAPE, event);
            assertTrue(taken, () -> "the window does not take Esc from " + from + "; " + (shell.isDisposed() ? "it is closed" : "seen " + shell.isVisible()
                    + ", worked in " + shell.isEnabled() + ", let through " + event.doit + ", beside " + Arrays.toString(display.getShells())));
        }
        settle();
    }

    private Control focus() {
        return Waiting.untilPresent("something has the focus", () -> Optional.ofNullable(display.getFocusControl()));
    }

    private static String plain(Button button) {
        return button.getText().replaceAll("&(.)", "$1");
    }

    /** What a screen reader says. */
    public static String name(Control control) {
        if (control instanceof Button button && !button.getText().equals("\u2715")) {
            return plain(button);
        }
        try {
            // there is no public way to ask in the place of a screen reader
            java.lang.reflect.Field listeners = Accessible.class.getDeclaredField("accessibleListeners");
            listeners.setAccessible(true);
            AccessibleEvent asked = new AccessibleEvent(control);
            asked.childID = ACC.CHILDID_SELF;
            if (listeners.get(control.getAccessible()) instanceof List<?> all) {
                all.forEach(one -> ((AccessibleListener) one).getName(asked));
            }
            return asked.result == null ? "" : asked.result;
        } catch (ReflectiveOperationException other) {
            return "";
        }
    }

    public void settle() {
        for (int i = 0; i < 50 && display.readAndDispatch(); i++) {
            assertEquals(Display.getCurrent(), display);
        }
    }

    /** Lets the window work for a while. */
    public void rest(int milliseconds) {
        boolean[] over = {false};
        display.timerExec(milliseconds, () -> over[0] = true);
        Waiting.until("a while is over", () -> over[0]);
    }

    /** Keeps a picture of the screen under target/way. */
    public void picture(String name) {
        rest(700);
        File folder = new File(System.getProperty("basedir", "."), "target/way");
        folder.mkdirs();
        Image image = new Image(display, display.getBounds().width, display.getBounds().height);
        GC gc = new GC(display);
        try {
            gc.copyArea(image, 0, 0);
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {image.getImageData()};
            loader.save(new File(folder, name + ".png").getPath(), SWT.IMAGE_PNG);
        } finally {
            gc.dispose();
            image.dispose();
        }
    }
}

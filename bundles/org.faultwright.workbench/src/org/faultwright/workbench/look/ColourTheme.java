/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.preference.IPreferenceStore;
import org.eclipse.jface.preference.JFacePreferences;
import org.eclipse.jface.preference.PreferenceConverter;
import org.eclipse.jface.resource.ColorRegistry;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.editors.text.EditorsUI;
import org.faultwright.workbench.look.Palette.Use;
import org.faultwright.workbench.settings.WorkbenchSettings;

/** Brings the window into the colours that were chosen: those of the window system before anything is shown, then our own. */
public final class ColourTheme {
    /** The window system tells within some milliseconds; one that has no other colours never does. */
    private static final long MOST_NANOSECONDS = 1_000_000_000L;

    private ColourTheme() {
    }

    /** Where the window system can be asked for light or dark; elsewhere the window has its colours and no choice. */
    public static boolean canBeChosen() {
        return "gtk".equals(SWT.getPlatform()) || "cocoa".equals(SWT.getPlatform());
    }

    /**
     * Asks the window system for what the settings say, and waits until it has come to that: what is made before is made in the colours that
     * were, and stays so. Before the first window.
     */
    public static void choose(Display display) {
        if (!canBeChosen() || WorkbenchSettings.colours() == WorkbenchSettings.Colours.OF_THE_SYSTEM) {
            return;
        }
        boolean dark = WorkbenchSettings.colours() == WorkbenchSettings.Colours.DARK;
        try {
            // SWT has no public way to ask for this, and the same method on both
            Class.forName("org.eclipse.swt.internal." + SWT.getPlatform() + ".OS").getMethod("setTheme", boolean.class).invoke(null, dark);
            long end = System.nanoTime() + MOST_NANOSECONDS;
            boolean[] woken = {true};
            while (Palette.isDark(display) != dark && System.nanoTime() < end) {
                if (woken[0]) {
                    woken[0] = false;
                    display.timerExec(5, () -> woken[0] = true);
                }
                if (!display.readAndDispatch()) {
                    display.sleep();
                }
            }
        } catch (ReflectiveOperationException other) {
            ILog.of(ColourTheme.class).warn("The window keeps the colours of the system.", other);
        }
    }

    /** Gives our colours to the editor and to the lists. Before the first editor. */
    public static void colour() {
        Palette palette = Palette.now();
        IPreferenceStore editors = EditorsUI.getPreferenceStore();
        colour(editors, "currentLineColor", palette.rgb(Use.CURRENT_LINE));
        colour(editors, "stepInHandColour", palette.rgb(Use.STEP_IN_HAND));
        colour(editors, "lineNumberColor", palette.rgb(Use.LINE_NUMBER));
        colour(editors, "matchingBracketsColor", palette.rgb(Use.BRACKET));
        colour(editors, "findingErrorColour", palette.rgb(Use.ERROR));
        colour(editors, "findingWarningColour", palette.rgb(Use.WARNING));
        colour(editors, "findingAdviceColour", palette.rgb(Use.ADVICE));
        ColorRegistry lists = JFaceResources.getColorRegistry();
        lists.put(JFacePreferences.QUALIFIER_COLOR, palette.rgb(Use.BESIDE));
        lists.put(JFacePreferences.COUNTER_COLOR, palette.rgb(Use.COUNT));
    }

    private static void colour(IPreferenceStore store, String key, RGB colour) {
        PreferenceConverter.setDefault(store, key, colour);
    }
}

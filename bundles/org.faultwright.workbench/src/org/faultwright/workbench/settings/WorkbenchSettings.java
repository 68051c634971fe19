/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.settings;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Display;
import org.osgi.service.prefs.BackingStoreException;
import org.osgi.service.prefs.Preferences;

/** The few things that a user chooses, kept with the workspace. */
public final class WorkbenchSettings {
    /** Which colours the window has. */
    public enum Colours { OF_THE_SYSTEM, LIGHT, DARK }

    /** In points. */
    public static final int SMALLEST_FONT = 6;
    /** In points. */
    public static final int LARGEST_FONT = 40;

    private static final String COLOURS = "colours";
    private static final String CALIBRATION = "calibrationJudgedOn";
    private static final String FONT = "fontSize";
    private static final List<Runnable> LISTENERS = new CopyOnWriteArrayList<>();

    private WorkbenchSettings() {
    }

    private static Preferences kept() {
        return InstanceScope.INSTANCE.getNode("org.faultwright.workbench");
    }

    public static Colours colours() {
        String name = kept().get(COLOURS, Colours.OF_THE_SYSTEM.name());
        return Arrays.stream(Colours.values()).filter(one -> one.name().equals(name)).findFirst().orElse(Colours.OF_THE_SYSTEM);
    }

    /** From the next start on. */
    public static void choose(Colours colours) {
        keep(COLOURS, colours == Colours.OF_THE_SYSTEM ? Optional.empty() : Optional.of(colours.name()));
    }

    /** The day on which calibration is judged: the one that was chosen, or today. */
    public static LocalDate calibrationDay() {
        return fixedCalibrationDay().orElseGet(LocalDate::now);
    }

    /** The day that was chosen; absent where it is always today. */
    public static Optional<LocalDate> fixedCalibrationDay() {
        try {
            return Optional.ofNullable(kept().get(CALIBRATION, null)).map(LocalDate::parse);
        } catch (DateTimeParseException unreadable) {
            return Optional.empty();
        }
    }

    public static void judgeCalibrationOn(Optional<LocalDate> day) {
        keep(CALIBRATION, day.map(LocalDate::toString));
        LISTENERS.forEach(Runnable::run);
    }

    /** Called when calibration is judged on another day. */
    public static void addListener(Runnable listener) {
        LISTENERS.add(listener);
    }

    /** Of the texts, in points. Only for the window's thread. */
    public static int fontSize() {
        return JFaceResources.getTextFont().getFontData()[0].getHeight();
    }

    /** How wide a character of the texts is, in pixels. Only for the window's thread. */
    public static double characterWidth() {
        GC gc = new GC(Display.getCurrent());
        try {
            gc.setFont(JFaceResources.getTextFont());
            return gc.getFontMetrics().getAverageCharacterWidth();
        } finally {
            gc.dispose();
        }
    }

    public static void useFontSize(int points) {
        show(points);
    }

    /** Gives the texts the size that was chosen, and remembers it from now on. Only for the window's thread. */
    public static void showFont() {
        int points = kept().getInt(FONT, 0);
        if (points >= SMALLEST_FONT && points <= LARGEST_FONT) {
            show(points);
        }
        // the keys for larger and smaller text count as well
        JFaceResources.getFontRegistry().addListener(event -> {
            if (JFaceResources.TEXT_FONT.equals(event.getProperty())) {
                keep(FONT, Optional.of(String.valueOf(fontSize())));
            }
        });
    }

    private static void show(int points) {
        FontData[] font = JFaceResources.getTextFont().getFontData();
        Arrays.stream(font).forEach(one -> one.setHeight(points));
        JFaceResources.getFontRegistry().put(JFaceResources.TEXT_FONT, font);
    }

    private static void keep(String key, Optional<String> value) {
        value.ifPresentOrElse(one -> kept().put(key, one), () -> kept().remove(key));
        try {
            kept().flush();
        } catch (BackingStoreException refused) {
            ILog.of(WorkbenchSettings.class).warn("The settings could not be kept.", refused);
        }
    }
}

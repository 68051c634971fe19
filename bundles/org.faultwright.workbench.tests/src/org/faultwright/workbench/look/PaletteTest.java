/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.core.runtime.Platform;
import org.eclipse.jface.preference.JFacePreferences;
import org.eclipse.jface.preference.PreferenceConverter;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.editors.text.EditorsUI;
import org.faultwright.workbench.look.Palette.Kind;
import org.faultwright.workbench.look.Palette.Use;
import org.faultwright.workbench.settings.WorkbenchSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledIfEnvironmentVariable;

/** The contrast of every colour with every ground that it is seen on, by the formula of WCAG 2.1. */
class PaletteTest {
    /** WCAG 2.1, success criterion 1.4.3: text. */
    private static final double FOR_WORDS = 4.5;
    /** WCAG 2.1, success criterion 1.4.11: graphical objects. */
    private static final double FOR_MARKS = 3;
    /** Signs within a filled mark, and paper within a picture; they lie on the colour of the mark. */
    private static final Set<String> WITHIN_A_MARK = Set.of("#fff", "#222");

    @Test
    void should_compute_contrast_as_the_guidelines_do() {
        assertEquals(21, contrast(new RGB(0, 0, 0), new RGB(255, 255, 255)), 1e-9, "WCAG 2.1: black on white, the definition's end");
        assertEquals(4.54, contrast(rgb("#767676"), new RGB(255, 255, 255)), 0.005, "the lightest grey that passes on white; from memory");
        assertEquals(4.48, contrast(rgb("#777777"), new RGB(255, 255, 255)), 0.005, "and the next that fails; from memory");
    }

    /** What is made before the window system has come to the chosen colours is half of one and half of the other for good. */
    @Test
    @DisabledIfEnvironmentVariable(named = "GTK_THEME", matches = ".+", disabledReason = "the colours of the system cannot be changed then")
    void should_wait_for_the_colours_that_were_chosen() {
        Display display = Display.getCurrent();
        WorkbenchSettings.Colours before = WorkbenchSettings.colours();
        WorkbenchSettings.Colours were = Palette.isDark(display) ? WorkbenchSettings.Colours.DARK : WorkbenchSettings.Colours.LIGHT;
        WorkbenchSettings.Colours others = were == WorkbenchSettings.Colours.DARK ? WorkbenchSettings.Colours.LIGHT : WorkbenchSettings.Colours.DARK;
        try {
            for (WorkbenchSettings.Colours chosen : List.of(others, were)) {
                WorkbenchSettings.choose(chosen);
                ColourTheme.choose(display);
                assertEquals(chosen == WorkbenchSettings.Colours.DARK, Palette.isDark(display), chosen + " at once");
            }
        } finally {
            WorkbenchSettings.choose(before);
        }
    }

    @Test
    void should_have_a_colour_for_every_use_in_both_windows() {
        for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
            assertEquals(Use.values().length, palette.all().size());
        }
    }

    @Test
    void should_be_readable_in_a_light_and_in_a_dark_window() {
        List<String> poor = new ArrayList<>();
        int compared = 0;
        for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
            for (Map.Entry<Use, RGB> one : palette.all().entrySet()) {
                Kind kind = one.getKey().kind();
                for (Use ground : Use.values()) {
                    boolean under = kind == Kind.ON_DESK ? ground.kind() == Kind.DESK && ground == Use.DESK
                            : (kind == Kind.WORDS || kind == Kind.MARK) && ground.kind() == Kind.GROUND;
                    if (under) {
                        compared++;
                        double wanted = kind == Kind.MARK ? FOR_MARKS : FOR_WORDS;
                        double is = contrast(one.getValue(), palette.rgb(ground));
                        if (is < wanted) {
                            poor.add((palette == Palette.DARK ? "dark " : "light ") + one.getKey() + " on " + ground + " " + is);
                        }
                    }
                }
            }
        }
        assertEquals(List.of(), poor);
        assertTrue(compared > 80, compared + " pairs");
    }

    @Test
    void should_have_pictures_that_are_seen_in_a_light_and_in_a_dark_window() throws IOException {
        TreeSet<String> poor = new TreeSet<>();
        List<URL> pictures = Collections.list(Platform.getBundle("org.faultwright.workbench").findEntries("icons", "*.svg", false));
        for (URL picture : pictures) {
            if (picture.getPath().endsWith("/faultwright.svg")) {
                continue; // the program's own picture has a ground of its own
            }
            try (InputStream bytes = picture.openStream()) {
                Matcher colour = Pattern.compile("#[0-9a-fA-F]{3,6}").matcher(new String(bytes.readAllBytes(), StandardCharsets.UTF_8));
                while (colour.find()) {
                    for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
                        for (Use ground : List.of(Use.PAPER, Use.WINDOW)) {
                            if (!WITHIN_A_MARK.contains(colour.group())
                                    && contrast(rgb(colour.group()), palette.rgb(ground)) < FOR_MARKS) {
                                poor.add(colour.group() + " in " + picture.getPath());
                            }
                        }
                    }
                }
            }
        }
        assertEquals(new TreeSet<>(), poor);
        assertTrue(pictures.size() > 20);
    }

    @Test
    void should_stand_on_the_grounds_that_the_window_really_has() {
        Display display = Display.getCurrent();
        for (int system : new int[] {SWT.COLOR_LIST_BACKGROUND, SWT.COLOR_WIDGET_BACKGROUND}) {
            RGB ground = display.getSystemColor(system).getRGB();
            Palette.now().all().forEach((use, colour) -> {
                if (use.kind() == Kind.WORDS) {
                    assertTrue(contrast(colour, ground) >= FOR_WORDS, use + " on " + ground);
                }
            });
        }
    }

    @Test
    void should_give_its_colours_to_the_editor_and_to_the_lists() {
        assertEquals(Palette.now().rgb(Use.LINE_NUMBER), PreferenceConverter.getColor(EditorsUI.getPreferenceStore(), "lineNumberColor"));
        assertEquals(Palette.now().rgb(Use.ERROR), PreferenceConverter.getColor(EditorsUI.getPreferenceStore(), "findingErrorColour"));
        assertEquals(Palette.now().rgb(Use.BESIDE), JFaceResources.getColorRegistry().getRGB(JFacePreferences.QUALIFIER_COLOR));
    }

    @Test
    void should_know_a_dark_ground_from_a_light_one() {
        assertTrue(Palette.isDark(new RGB(45, 45, 45)) && Palette.isDark(new RGB(0, 0, 0)));
        assertTrue(!Palette.isDark(new RGB(255, 255, 255)) && !Palette.isDark(new RGB(240, 235, 220)));
    }

    /** WCAG 2.1, "contrast ratio" and "relative luminance". */
    private static double contrast(RGB one, RGB other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(RGB colour) {
        return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
    }

    private static double linear(int eightBits) {
        double part = eightBits / 255.0;
        return part <= 0.03928 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }

    private static RGB rgb(String hex) {
        String six = hex.length() == 4 ? "#" + hex.charAt(1) + hex.charAt(1) + hex.charAt(2) + hex.charAt(2) + hex.charAt(3) + hex.charAt(3)
                : hex;
        int value = Integer.parseInt(six.substring(1), 16);
        return new RGB(value >> 16 & 0xFF, value >> 8 & 0xFF, value & 0xFF);
    }
}

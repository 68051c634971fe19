/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Display;

/**
 * Every colour of our own, for a light and for a dark window. Which one it is, is measured: the ground that the window system
 * draws lists and texts on. Words have a contrast of at least 4.5 to 1 with their ground, marks and lines that mean something
 * 3 to 1 (WCAG 2.1, 1.4.3 and 1.4.11).
 */
public final class Palette {
    /** What a colour is for. Words are read, marks are seen, grounds lie under them. */
    public enum Use {
        KEYWORD(Kind.WORDS), NAME(Kind.WORDS), QUANTITY(Kind.WORDS), TEXT(Kind.WORDS), COMMENT(Kind.WORDS), HEADING(Kind.WORDS),
        BESIDE(Kind.WORDS), COUNT(Kind.WORDS), LINK(Kind.WORDS), LINE_NUMBER(Kind.WORDS),
        ERROR(Kind.MARK), WARNING(Kind.MARK), ADVICE(Kind.MARK), BRACKET(Kind.MARK),
        PAPER(Kind.GROUND), WINDOW(Kind.GROUND), CURRENT_LINE(Kind.GROUND), STEP_IN_HAND(Kind.GROUND), CODE_GROUND(Kind.GROUND),
        DESK(Kind.DESK), DESK_WORDS(Kind.ON_DESK), PAGE_EDGE(Kind.DESK);

        private final Kind kind;

        Use(Kind kind) {
            this.kind = kind;
        }

        public Kind kind() {
            return kind;
        }
    }

    /** What must be told apart from what. */
    public enum Kind { WORDS, MARK, GROUND, DESK, ON_DESK }

    public static final Palette LIGHT = new Palette()
            .with(Use.PAPER, 0xFFFFFF).with(Use.WINDOW, 0xF6F5F4).with(Use.CURRENT_LINE, 0xEEF3F4).with(Use.STEP_IN_HAND, 0xE6F1E4).with(Use.CODE_GROUND, 0xF2F5F6)
            .with(Use.KEYWORD, 0x145464).with(Use.NAME, 0x1C1C1C).with(Use.QUANTITY, 0x9C420E).with(Use.TEXT, 0x4A4A4A)
            .with(Use.COMMENT, 0x62686C).with(Use.HEADING, 0x145464).with(Use.BESIDE, 0x62686C).with(Use.COUNT, 0x145464)
            .with(Use.LINE_NUMBER, 0x62686C).with(Use.LINK, 0x145C9E)
            .with(Use.ERROR, 0xB3261E).with(Use.WARNING, 0x9A6B00).with(Use.ADVICE, 0x2F6F8F).with(Use.BRACKET, 0x788C92)
            .with(Use.DESK, 0xE2E6E8).with(Use.DESK_WORDS, 0x282E30).with(Use.PAGE_EDGE, 0xBEC4C7);

    public static final Palette DARK = new Palette()
            .with(Use.PAPER, 0x2D2D2D).with(Use.WINDOW, 0x353535).with(Use.CURRENT_LINE, 0x373C3E).with(Use.STEP_IN_HAND, 0x2F3F35).with(Use.CODE_GROUND, 0x363A3C)
            .with(Use.KEYWORD, 0x83CBDC).with(Use.NAME, 0xEEEEEE).with(Use.QUANTITY, 0xF2AC84).with(Use.TEXT, 0xCFCFCF)
            .with(Use.COMMENT, 0xA9B1B5).with(Use.HEADING, 0x83CBDC).with(Use.BESIDE, 0xB4BABD).with(Use.COUNT, 0x83CBDC)
            .with(Use.LINE_NUMBER, 0xA9B1B5).with(Use.LINK, 0x8AC4FF)
            .with(Use.ERROR, 0xF27A70).with(Use.WARNING, 0xE0A93A).with(Use.ADVICE, 0x6FB4D8).with(Use.BRACKET, 0x93A5AB)
            .with(Use.DESK, 0x3A3F41).with(Use.DESK_WORDS, 0xE6E8E9).with(Use.PAGE_EDGE, 0x565C5F);

    private static Palette now;

    private final Map<Use, RGB> colours = new EnumMap<>(Use.class);
    private final Map<Use, Color> made = new EnumMap<>(Use.class);

    private Palette() {
    }

    private Palette with(Use use, int rgb) {
        colours.put(use, new RGB(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF));
        return this;
    }

    /** The colours for this window. Only for its thread. */
    public static Palette now() {
        if (now == null) {
            now = isDark(Display.getCurrent()) ? DARK : LIGHT;
        }
        return now;
    }

    /** What the window system draws by now. Only for the window's thread. */
    static boolean isDark(Display display) {
        return isDark(display.getSystemColor(SWT.COLOR_LIST_BACKGROUND).getRGB());
    }

    /** Whether light words belong on a ground. */
    static boolean isDark(RGB ground) {
        return 299 * ground.red + 587 * ground.green + 114 * ground.blue < 128 * 1000;
    }

    public RGB rgb(Use use) {
        return colours.get(use);
    }

    public Color of(Use use) {
        return made.computeIfAbsent(use, one -> new Color(colours.get(one)));
    }

    /** Every colour with its use. */
    public Map<Use, RGB> all() {
        return new LinkedHashMap<>(colours);
    }
}

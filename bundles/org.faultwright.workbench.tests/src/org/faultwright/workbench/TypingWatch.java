/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Display;

/**
 * Somebody who types at 20 ms a key, and a watch on the window's thread meanwhile. A key is drawn when the text has been painted with it. All
 * times are milliseconds of the thread's own processor time, so that other work on the machine does not count.
 */
final class TypingWatch {
    private static final int MILLISECONDS_A_KEY = 20;
    private static final int MOST_EVENTS = 20_000;
    private static final int MILLISECONDS_BETWEEN_LOOKS = 200;
    private static final int MILLISECONDS_OF_DRAWING = 1_500;
    private static final int MOST_LOOKS = 300;
    /** Put off again while it waits, so that no more than one does. */
    private static final Runnable WAKE = () -> { };

    private final StyledText text;
    private final List<Double> drawn = new ArrayList<>();
    private final StallWatch watch = StallWatch.ofThisThread();

    TypingWatch(StyledText text) {
        this.text = text;
    }

    void typeAndTakeBack(int at, String words) {
        type(at, words);
        words.chars().forEach(letter -> key(SWT.BS));
    }

    /** Selects some words and types others over them. */
    void typeOver(int at, String selected, String words) {
        text.setSelection(at, at + selected.length());
        text.showSelection();
        words.chars().forEach(this::key);
    }

    void type(int at, String words) {
        text.setSelection(at);
        text.showSelection();
        words.chars().forEach(this::key);
    }

    private void key(int key) {
        long until = System.nanoTime() + MILLISECONDS_A_KEY * 1_000_000L;
        watch.begins();
        Keys.press(text, key);
        text.update();
        drawn.add(watch.ends());
        answerUntil(until);
    }

    /** Waits as somebody does who thinks, while what was typed is checked, and a moment more, in which marks, outline and card are drawn anew. */
    void thinkUntil(BooleanSupplier checked) {
        for (int looks = 0; looks < MOST_LOOKS && !checked.getAsBoolean(); looks++) {
            answerUntil(System.nanoTime() + MILLISECONDS_BETWEEN_LOOKS * 1_000_000L);
        }
        answerUntil(System.nanoTime() + MILLISECONDS_OF_DRAWING * 1_000_000L);
    }

    private void answerUntil(long until) {
        Display display = text.getDisplay();
        for (int events = 0; events < MOST_EVENTS && System.nanoTime() < until; events++) {
            display.timerExec(MILLISECONDS_A_KEY, WAKE);
            watch.begins();
            boolean more = display.readAndDispatch();
            watch.ends();
            if (!more) {
                display.sleep();
            }
        }
    }

    /** The longest time without an answer to anything. */
    double longestStall() {
        return watch.longest();
    }

    /** How long so many of a hundred keys took at most. */
    double drawnWithin(int percent) {
        List<Double> sorted = new ArrayList<>(drawn);
        Collections.sort(sorted);
        return sorted.get(Math.min(sorted.size() - 1, sorted.size() * percent / 100));
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d keys, 99 %% drawn within %.0f ms, half within %.1f ms, longest stall of the window's thread %.0f ms%s",
                drawn.size(), drawnWithin(99), drawnWithin(50), longestStall(), watch.where());
    }
}

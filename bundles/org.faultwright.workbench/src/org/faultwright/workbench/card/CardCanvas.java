/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.card;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.ScrollBar;
import org.faultwright.publish.card.CardPages;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/** Shows the pages below one another, as wide as the view, with a bar beside the marked step. */
final class CardCanvas extends Canvas {
    private static final int GAP = 10;
    private static final int BAR = 5;

    /** The page is white in every window: it shows what comes out of the printer. */
    private static final Color PAPER = new Color(255, 255, 255);
    private static final Color MARK = new Color(184, 84, 31);

    private final PagePictures pictures = new PagePictures(this);
    private final List<Rectangle2D> sizes = new ArrayList<>();
    private final Consumer<String> onStep;
    private Optional<CardPages> pages = Optional.empty();
    private Optional<String> marked = Optional.empty();
    private String words = "";
    private int top;

    CardCanvas(Composite parent, Consumer<String> onStep) {
        super(parent, SWT.V_SCROLL | SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        this.onStep = onStep;
        addPaintListener(event -> paint(event.gc));
        addListener(SWT.Resize, event -> {
            fitBar();
            reveal();
        });
        addListener(SWT.Dispose, event -> pictures.clear());
        addListener(SWT.MouseUp, event -> click(event.x, event.y));
        addListener(SWT.KeyDown, event -> scroll(event.keyCode));
        addListener(SWT.Traverse, event -> event.doit = event.detail != SWT.TRAVERSE_ARROW_NEXT
                && event.detail != SWT.TRAVERSE_ARROW_PREVIOUS);
        AccessibleName.as(this, () -> sizes.isEmpty() ? "Bench card: " + words : "Bench card, " + sizes.size() + " pages. "
                + marked().map(step -> "Step " + step + " is marked.").orElse(""));
        getVerticalBar().addListener(SWT.Selection, event -> {
            top = getVerticalBar().getSelection();
            redraw();
        });
    }

    Optional<CardPages> pages() {
        return pages;
    }

    /** How many pictures of pages are in memory. */
    int kept() {
        return pictures.kept();
    }

    Optional<String> marked() {
        return pages.flatMap(card -> marked.filter(step -> card.places().containsKey(step)));
    }

    /** Shows words instead of pages. */
    void say(String instead) {
        words = instead;
        pages = Optional.empty();
        sizes.clear();
        pictures.clear();
        fitBar();
        redraw();
    }

    /** Shows a card and closes the one before. */
    void show(CardPages made) {
        pages = Optional.of(made);
        sizes.clear();
        for (int page = 0; page < made.count(); page++) {
            sizes.add(made.size(page));
        }
        pictures.show(made);
        fitBar();
        reveal();
        redraw();
    }

    /** Marks a step and scrolls to it. */
    void mark(Optional<String> step) {
        if (!step.equals(marked)) {
            marked = step;
            reveal();
            redraw();
        }
    }

    private int width() {
        return Math.max(40, getClientArea().width - 2 * GAP);
    }

    private double scale(int page) {
        return width() / sizes.get(page).getWidth();
    }

    private int height(int page) {
        return (int) Math.round(sizes.get(page).getHeight() * scale(page));
    }

    private int pageTop(int page) {
        int y = GAP;
        for (int i = 0; i < page; i++) {
            y += height(i) + GAP;
        }
        return y;
    }

    private void fitBar() {
        ScrollBar bar = getVerticalBar();
        int height = sizes.isEmpty() ? 1 : pageTop(sizes.size());
        int seen = Math.max(1, getClientArea().height);
        top = Math.max(0, Math.min(top, height - seen));
        bar.setValues(top, 0, Math.max(height, seen), seen, 40, seen);
        bar.setVisible(height > seen);
    }

    /** As far as the bar goes with a click beside its thumb or on its ends. */
    private void scroll(int key) {
        ScrollBar bar = getVerticalBar();
        int to = switch (key) {
            case SWT.ARROW_DOWN -> top + bar.getIncrement();
            case SWT.ARROW_UP -> top - bar.getIncrement();
            case SWT.PAGE_DOWN -> top + bar.getPageIncrement();
            case SWT.PAGE_UP -> top - bar.getPageIncrement();
            case SWT.HOME -> 0;
            case SWT.END -> bar.getMaximum();
            default -> top;
        };
        if (to != top) {
            top = to;
            fitBar();
            redraw();
        }
    }

    private void reveal() {
        place().ifPresent(place -> {
            Rectangle area = area(place);
            int seen = getClientArea().height;
            if (area.y < top || area.y + area.height > top + seen) {
                top = Math.max(0, area.y - Math.max(GAP, (seen - area.height) / 3));
                fitBar();
                redraw();
            }
        });
    }

    private Optional<CardPages.Place> place() {
        return pages.flatMap(card -> marked.map(card.places()::get));
    }

    private Rectangle area(CardPages.Place place) {
        Rectangle2D on = place.area();
        double scale = scale(place.page());
        return new Rectangle((int) (GAP + on.getX() * scale), (int) (pageTop(place.page()) + on.getY() * scale),
                (int) (on.getWidth() * scale), (int) (on.getHeight() * scale));
    }

    private void paint(GC gc) {
        Rectangle view = getClientArea();
        gc.setBackground(Palette.now().of(Use.DESK));
        gc.fillRectangle(view);
        if (sizes.isEmpty()) {
            gc.setForeground(Palette.now().of(Use.DESK_WORDS));
            Point size = gc.textExtent(words);
            gc.drawText(words, Math.max(GAP, (view.width - size.x) / 2), view.height / 3, true);
            return;
        }
        gc.setAdvanced(true);
        gc.setInterpolation(SWT.HIGH);
        gc.setAntialias(SWT.ON);
        List<Integer> seen = new ArrayList<>();
        int y = GAP - top;
        for (int page = 0; page < sizes.size() && y < view.height; page++) {
            int height = height(page);
            if (y + height > 0) {
                seen.add(page);
                page(gc, page, y, height);
            }
            y += height + GAP;
        }
        place().ifPresent(place -> {
            Rectangle area = area(place);
            gc.setBackground(MARK);
            gc.fillRectangle(area.x - BAR - 3, area.y - top, BAR, area.height);
        });
        pictures.want(seen, width());
    }

    private void page(GC gc, int page, int y, int height) {
        Optional<Image> picture = pictures.of(page);
        if (picture.isPresent()) {
            Rectangle bounds = picture.get().getBounds();
            gc.drawImage(picture.get(), 0, 0, bounds.width, bounds.height, GAP, y, width(), height);
        } else {
            gc.setBackground(PAPER);
            gc.fillRectangle(GAP, y, width(), height);
        }
        gc.setForeground(Palette.now().of(Use.PAGE_EDGE));
        gc.drawRectangle(GAP, y, width(), height);
    }

    private void click(int x, int y) {
        Point at = new Point(x, y + top);
        pages.ifPresent(card -> card.places().entrySet().stream().filter(entry -> area(entry.getValue()).contains(at))
                .map(Map.Entry::getKey).findFirst().ifPresent(onStep));
    }
}

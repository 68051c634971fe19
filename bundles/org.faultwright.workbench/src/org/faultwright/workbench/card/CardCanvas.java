/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.card;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.ScrollBar;
import org.faultwright.publish.card.CardPages;

/** Draws the pages below one another, as wide as the view, with a bar beside the marked step. */
final class CardCanvas extends Canvas {
    private static final int GAP = 10;
    private static final int BAR = 5;
    private static final Color DESK = new Color(226, 230, 232);
    private static final Color EDGE = new Color(190, 196, 199);
    private static final Color MARK = new Color(184, 84, 31);

    private final List<Image> images = new ArrayList<>();
    private final Consumer<String> onStep;
    private CardPages pages;
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
        addListener(SWT.Dispose, event -> disposeImages());
        addListener(SWT.MouseUp, event -> click(event.x, event.y));
        getVerticalBar().addListener(SWT.Selection, event -> {
            top = getVerticalBar().getSelection();
            redraw();
        });
    }

    Optional<CardPages> pages() {
        return Optional.ofNullable(pages);
    }

    Optional<String> marked() {
        return pages == null ? Optional.empty() : marked.filter(step -> pages.places().containsKey(step));
    }

    /** Shows words instead of pages. */
    void say(String instead) {
        words = instead;
        pages = null;
        disposeImages();
        fitBar();
        redraw();
    }

    void show(CardPages made) {
        pages = made;
        disposeImages();
        made.pictures().forEach(picture -> images.add(new Image(getDisplay(), data(picture))));
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

    private double scale() {
        return images.isEmpty() ? 1
                : Math.max(0.1, (getClientArea().width - 2.0 * GAP) / images.get(0).getBounds().width);
    }

    private int pageTop(int page) {
        double y = GAP;
        for (int i = 0; i < page; i++) {
            y += images.get(i).getBounds().height * scale() + GAP;
        }
        return (int) Math.round(y);
    }

    private void fitBar() {
        ScrollBar bar = getVerticalBar();
        int height = images.isEmpty() ? 1 : pageTop(images.size());
        int seen = Math.max(1, getClientArea().height);
        top = Math.max(0, Math.min(top, height - seen));
        bar.setValues(top, 0, Math.max(height, seen), seen, 40, seen);
        bar.setVisible(height > seen);
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
        return pages == null ? Optional.empty() : marked.map(pages.places()::get);
    }

    private Rectangle area(CardPages.Place place) {
        Rectangle2D on = place.area();
        double scale = scale();
        return new Rectangle((int) (GAP + on.getX() * scale), (int) (pageTop(place.page()) + on.getY() * scale),
                (int) (on.getWidth() * scale), (int) (on.getHeight() * scale));
    }

    private void paint(GC gc) {
        Rectangle view = getClientArea();
        gc.setBackground(DESK);
        gc.fillRectangle(view);
        if (images.isEmpty()) {
            Point size = gc.textExtent(words);
            gc.drawText(words, Math.max(GAP, (view.width - size.x) / 2), view.height / 3, true);
            return;
        }
        gc.setAdvanced(true);
        gc.setInterpolation(SWT.HIGH);
        gc.setAntialias(SWT.ON);
        double scale = scale();
        for (int page = 0; page < images.size(); page++) {
            Rectangle bounds = images.get(page).getBounds();
            int y = pageTop(page) - top;
            int height = (int) Math.round(bounds.height * scale);
            if (y < view.height && y + height > 0) {
                int width = (int) Math.round(bounds.width * scale);
                gc.drawImage(images.get(page), 0, 0, bounds.width, bounds.height, GAP, y, width, height);
                gc.setForeground(EDGE);
                gc.drawRectangle(GAP, y, width, height);
            }
        }
        place().ifPresent(place -> {
            Rectangle area = area(place);
            gc.setBackground(MARK);
            gc.fillRectangle(area.x - BAR - 3, area.y - top, BAR, area.height);
        });
    }

    private void click(int x, int y) {
        if (pages != null) {
            Point at = new Point(x, y + top);
            pages.places().entrySet().stream().filter(entry -> area(entry.getValue()).contains(at))
                    .min(Comparator.comparingDouble(entry -> entry.getValue().area().getHeight()))
                    .map(Map.Entry::getKey).ifPresent(onStep);
        }
    }

    private void disposeImages() {
        images.forEach(Image::dispose);
        images.clear();
    }

    private static ImageData data(BufferedImage picture) {
        int width = picture.getWidth();
        int height = picture.getHeight();
        ImageData data = new ImageData(width, height, 24, new PaletteData(0xFF0000, 0xFF00, 0xFF));
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            picture.getRGB(0, y, width, 1, row, 0, width);
            data.setPixels(0, y, width, row, 0);
        }
        return data;
    }
}

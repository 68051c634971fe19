/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.card;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.widgets.Canvas;
import org.faultwright.publish.card.CardPages;

/**
 * The pictures of the pages that are looked at: drawn off the window's thread, at the width they are shown in, and at
 * most {@value #MOST} of them kept, however long the card is. Only for the window's thread.
 */
final class PagePictures {
    static final int MOST = 6;
    private static final double POINTS_PER_INCH = 72;

    private record Picture(Image image, int width) {
    }

    private final Canvas canvas;
    private final Map<Integer, Picture> pictures = new LinkedHashMap<>(16, 0.75f, true);
    private final Job drawing = new Drawing();
    private volatile Optional<CardPages> pages = Optional.empty();
    private volatile List<Integer> wanted = List.of();
    private volatile int width;
    private boolean stale;

    PagePictures(Canvas canvas) {
        this.canvas = canvas;
        drawing.setSystem(true);
        drawing.setPriority(Job.SHORT);
    }

    /** Draws these pages from now on; the pictures of the ones before stay until theirs are ready. */
    void show(CardPages next) {
        closePages();
        pages = Optional.of(next);
        stale = true;
    }

    void clear() {
        closePages();
        pages = Optional.empty();
        pictures.values().forEach(picture -> picture.image().dispose());
        pictures.clear();
    }

    private void closePages() {
        drawing.cancel();
        // away from the window's thread, which would wait for the page that is being drawn
        pages.ifPresent(old -> Job.createSystem("Putting a card away", monitor -> {
            old.close();
            return Status.OK_STATUS;
        }).schedule());
    }

    int kept() {
        return pictures.size();
    }

    /** The pages seen now. Missing ones are drawn, and the canvas is told. */
    void want(List<Integer> seen, int pixels) {
        List<Integer> missing = new ArrayList<>();
        for (int page : seen) {
            Picture kept = pictures.get(page);
            if (stale || kept == null || kept.width() != pixels) {
                missing.add(page);
            }
        }
        if (!missing.isEmpty() && !(missing.equals(wanted) && pixels == width && !stale)) {
            stale = false;
            wanted = List.copyOf(missing);
            width = pixels;
            drawing.cancel();
            drawing.schedule();
        }
    }

    Optional<Image> of(int page) {
        return Optional.ofNullable(pictures.get(page)).map(Picture::image);
    }

    private void put(CardPages of, int page, BufferedImage drawn, int pixels) {
        if (canvas.isDisposed() || pages.filter(now -> now == of).isEmpty()) {
            return;
        }
        Picture before = pictures.put(page, new Picture(new Image(canvas.getDisplay(), data(drawn)), pixels));
        if (before != null) {
            before.image().dispose();
        }
        while (pictures.size() > MOST) {
            Integer longestUnseen = pictures.keySet().iterator().next();
            pictures.remove(longestUnseen).image().dispose();
        }
        canvas.redraw();
    }

    private final class Drawing extends Job {
        Drawing() {
            super("Drawing the card");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            CardPages of = pages.orElse(null);
            int pixels = width;
            for (int page : wanted) {
                if (of == null || monitor.isCanceled() || page >= of.count()) {
                    break;
                }
                try {
                    BufferedImage drawn = of.picture(page, pixels * POINTS_PER_INCH / of.size(page).getWidth());
                    if (!canvas.isDisposed()) {
                        canvas.getDisplay().asyncExec(() -> put(of, page, drawn, pixels));
                    }
                } catch (IOException | RuntimeException failed) {
                    if (pages.filter(now -> now == of).isPresent()) {
                        ILog.of(PagePictures.class).error("Page " + (page + 1) + " of the card could not be drawn.", failed);
                    }
                    break;
                }
            }
            wanted = List.of();
            return Status.OK_STATUS;
        }
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

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.resource.ImageRegistry;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.ResourceLocator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.PaintObjectListener;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.GlyphMetrics;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Listener;

/**
 * A picture on a page of the help, no wider than the page.
 *
 * @param offset of the sign that stands for it in the text
 * @param file   under the help's folder, without its ending
 */
record HelpPicture(int offset, String file) {
    private static final String BUNDLE = "org.faultwright.workbench";
    private static final String PAINTING = HelpPicture.class.getName();

    /** Puts them in their places on a page in the place of those that were there. */
    static void put(List<HelpPicture> pictures, StyledText page) {
        if (page.getData(PAINTING) instanceof Placed before) {
            page.removePaintObjectListener(before);
            page.removeListener(SWT.Resize, before);
        }
        Placed placed = new Placed(pictures, page);
        page.setData(PAINTING, placed);
        page.addPaintObjectListener(placed);
        page.addListener(SWT.Resize, placed);
        placed.fit();
    }

    Optional<Image> image() {
        ImageRegistry registry = JFaceResources.getImageRegistry();
        String key = BUNDLE + ".help." + file;
        if (registry.getDescriptor(key) == null) {
            ResourceLocator.imageDescriptorFromBundle(BUNDLE, "help/" + file + ".png").ifPresent(found -> registry.put(key, found));
        }
        return Optional.ofNullable(registry.get(key));
    }

    private record Placed(List<HelpPicture> pictures, StyledText page) implements PaintObjectListener, Listener {
        private static final int LEAST_WIDTH = 120;

        @Override
        public void handleEvent(org.eclipse.swt.widgets.Event resized) {
            fit();
        }

        void fit() {
            for (HelpPicture picture : pictures) {
                picture.image().ifPresent(image -> {
                    Point size = size(image);
                    StyleRange place = new StyleRange();
                    place.start = picture.offset();
                    place.length = 1;
                    place.metrics = new GlyphMetrics(size.y, 0, size.x);
                    page.setStyleRange(place);
                });
            }
        }

        private Point size(Image image) {
            Rectangle whole = image.getBounds();
            int room = Math.max(LEAST_WIDTH, page.getClientArea().width - page.getLeftMargin() - page.getRightMargin());
            int width = Math.min(whole.width, room);
            return new Point(width, whole.height * width / whole.width);
        }

        @Override
        public void paintObject(org.eclipse.swt.custom.PaintObjectEvent event) {
            pictures.stream().filter(picture -> picture.offset() == event.style.start).findFirst().flatMap(HelpPicture::image).ifPresent(image -> {
                Rectangle whole = image.getBounds();
                Point size = size(image);
                event.gc.setAntialias(SWT.ON);
                event.gc.setInterpolation(SWT.HIGH);
                event.gc.drawImage(image, 0, 0, whole.width, whole.height, event.x, event.y + event.ascent - size.y, size.x, size.y);
            });
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.awt.image.BufferedImage;
import java.io.IOException;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.printing.Printer;
import org.eclipse.swt.printing.PrinterData;
import org.faultwright.publish.card.CardPages;

/** Puts the pages of a card on paper: the same pages that the PDF has. */
final class CardPrinting {
    /** Pixels per inch; hatching and small print stay sharp. */
    private static final int DPI = 300;
    private static final int POINTS_PER_INCH = 72;

    private CardPrinting() {
    }

    /**
     * Prints; not in the window's thread, since it takes a second for each page.
     *
     * @return whether the printer took all of it
     * @throws IOException if a page cannot be drawn
     */
    static boolean print(CardPages pages, PrinterData on, String title) throws IOException {
        Printer printer = new Printer(on);
        try {
            if (!printer.startJob(title)) {
                return false;
            }
            int first = on.scope == PrinterData.PAGE_RANGE ? Math.max(1, on.startPage) : 1;
            int last = on.scope == PrinterData.PAGE_RANGE ? Math.min(pages.count(), on.endPage) : pages.count();
            for (int page = first; page <= last; page++) {
                if (!printer.startPage()) {
                    printer.cancelJob();
                    return false;
                }
                draw(pages.picture(page - 1, DPI), pages.size(page - 1).getWidth(), printer);
                printer.endPage();
            }
            printer.endJob();
            return true;
        } finally {
            printer.dispose();
        }
    }

    /** In its own size, from the corner of the paper, unless the paper is smaller. */
    private static void draw(BufferedImage picture, double widthInPoints, Printer printer) {
        Point dpi = printer.getDPI();
        Rectangle paper = printer.computeTrim(0, 0, 0, 0);
        Rectangle area = printer.getClientArea();
        int width = (int) Math.round(widthInPoints * dpi.x / POINTS_PER_INCH);
        int height = width * picture.getHeight() / picture.getWidth();
        int paperWidth = area.width + paper.width;
        int paperHeight = area.height + paper.height;
        double fits = Math.min(1, Math.min((double) paperWidth / width, (double) paperHeight / height));
        Image image = new Image(printer, data(picture));
        GC gc = new GC(printer);
        try {
            gc.drawImage(image, 0, 0, picture.getWidth(), picture.getHeight(), paper.x, paper.y, (int) (width * fits), (int) (height * fits));
        } finally {
            gc.dispose();
            image.dispose();
        }
    }

    private static ImageData data(BufferedImage picture) {
        ImageData data = new ImageData(picture.getWidth(), picture.getHeight(), 24, new PaletteData(0xFF0000, 0xFF00, 0xFF));
        int[] row = new int[picture.getWidth()];
        for (int y = 0; y < picture.getHeight(); y++) {
            picture.getRGB(0, y, row.length, 1, row, 0, row.length);
            for (int x = 0; x < row.length; x++) {
                row[x] &= 0xFFFFFF;
            }
            data.setPixels(0, y, row.length, row, 0);
        }
        return data;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import javax.print.Doc;
import javax.print.DocFlavor;
import javax.print.PrintException;
import javax.print.PrintService;
import javax.print.PrintServiceLookup;
import javax.print.SimpleDoc;
import javax.print.attribute.HashPrintRequestAttributeSet;
import javax.print.attribute.PrintRequestAttribute;
import javax.print.attribute.PrintRequestAttributeSet;
import javax.print.attribute.Size2DSyntax;
import javax.print.attribute.standard.Copies;
import javax.print.attribute.standard.JobName;
import javax.print.attribute.standard.MediaSize;
import javax.print.attribute.standard.Sides;

/** Puts the pages of a card on paper: the same pages that the PDF has. Slow (a second a page), so never in a window's thread. */
public final class CardPrinting {
    public static final int MOST_COPIES = 99;
    private static final DocFlavor PAGES = DocFlavor.SERVICE_FORMATTED.PAGEABLE;
    private static final int POINTS_PER_INCH = 72;

    /**
     * How a card is wanted.
     *
     * @param title     what the queue of the printer calls it
     * @param copies    1 to {@value CardPrinting#MOST_COPIES}
     * @param bothSides turned over on the long edge, where the printer can
     */
    public record PrintRequest(String title, int copies, boolean bothSides) {
        public PrintRequest {
            if (copies < 1 || copies > MOST_COPIES) {
                throw new IllegalArgumentException("copies: " + copies + ", not 1 to " + MOST_COPIES);
            }
        }
    }

    private CardPrinting() {
    }

    /** The printers of this machine, the usual one first; asking for them may take seconds. */
    public static List<PrintService> printers() {
        Optional<PrintService> usual = Optional.ofNullable(PrintServiceLookup.lookupDefaultPrintService());
        return List.of(PrintServiceLookup.lookupPrintServices(PAGES, null)).stream()
                .sorted((one, other) -> Boolean.compare(usual.equals(Optional.of(other)), usual.equals(Optional.of(one)))).toList();
    }

    public static boolean printsBothSides(PrintService printer) {
        return printer.isAttributeValueSupported(Sides.TWO_SIDED_LONG_EDGE, PAGES, null);
    }

    /**
     * Returns when the printer has taken all of it.
     *
     * @throws PrintException if the printer refuses, or a page cannot be drawn
     */
    public static void print(CardPages pages, PrintService printer, PrintRequest wish) throws PrintException {
        Doc doc = new SimpleDoc(pages.paper(), PAGES, null);
        printer.createPrintJob().print(doc, attributes(pages, printer, wish));
    }

    /** Only what the printer can do; the rest it would refuse, or settle in a way of its own. */
    private static PrintRequestAttributeSet attributes(CardPages pages, PrintService printer, PrintRequest wish) {
        PrintRequestAttributeSet attributes = new HashPrintRequestAttributeSet();
        Rectangle2D size = pages.size(0);
        double width = Math.min(size.getWidth(), size.getHeight());
        double height = Math.max(size.getWidth(), size.getHeight());
        PrintRequestAttribute[] wanted = { new JobName(wish.title(), null), new Copies(wish.copies()),
            wish.bothSides() ? Sides.TWO_SIDED_LONG_EDGE : Sides.ONE_SIDED,
            MediaSize.findMedia((float) width / POINTS_PER_INCH, (float) height / POINTS_PER_INCH, Size2DSyntax.INCH) };
        for (PrintRequestAttribute one : wanted) {
            if (printer.isAttributeValueSupported(one, PAGES, null)) {
                attributes.add(one);
            }
        }
        return attributes;
    }
}

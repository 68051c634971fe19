/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.print.Pageable;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDestinationNameTreeNode;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitRectangleDestination;
import org.apache.pdfbox.printing.Orientation;
import org.apache.pdfbox.printing.PDFPageable;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** The pages of a card for a view that has no browser; each is drawn when it is asked for. May be used by any one thread at a time. */
public final class CardPages implements AutoCloseable {
    /**
     * Where a step stands. One that runs over several pages has its first part here.
     *
     * @param page from 0
     * @param area in points (1/72 inch), from the page's upper left corner
     */
    public record Place(int page, Rectangle2D area) {
    }

    /** Names of places by their number on the card begin so; no step's can. */
    private static final String NUMBERED = "step-";
    /** Pixels per inch; small print stays sharp. */
    private static final int PRINTER_DPI = 300;

    private final PDDocument pdf;
    private final Map<String, Place> places = new TreeMap<>();
    private final Map<String, Place> printed = new TreeMap<>();
    private boolean closed;

    private CardPages(PDDocument pdf) throws IOException {
        this.pdf = pdf;
        places(pdf).forEach((name, place) -> (name.startsWith(NUMBERED) ? printed : places)
                .put(name.startsWith(NUMBERED) ? name.substring(NUMBERED.length()) : name, place));
    }

    /**
     * @param card a PDF made by the export {@code card-pdf}
     * @throws IOException if the bytes are no PDF
     */
    public static CardPages open(byte[] card) throws IOException {
        return new CardPages(Loader.loadPDF(card));
    }

    /** Those of a sheet that is looked at only. */
    static CardPages of(PDDocument pdf) throws IOException {
        return new CardPages(pdf);
    }

    public int count() {
        return pdf.getNumberOfPages();
    }

    /** The width and height of a page in points (1/72 inch). @param page from 0 */
    public Rectangle2D size(int page) {
        PDRectangle paper = pdf.getPage(page).getMediaBox();
        return new Rectangle2D.Double(0, 0, paper.getWidth(), paper.getHeight());
    }

    /** Where each step stands, by its name: {@code SeeIt}, and in a routine {@code MakeSafe/SwitchOff}. */
    public Map<String, Place> places() {
        return Map.copyOf(places);
    }

    /** Where each number stands, such as {@code 7b}; a short routine is printed at each step that performs it. */
    public Map<String, Place> printed() {
        return Map.copyOf(printed);
    }

    /**
     * @param page from 0
     * @param dpi  pixels per inch; 96 is life size on many screens
     * @throws IOException if the pages were closed or the page cannot be drawn
     */
    public synchronized BufferedImage picture(int page, double dpi) throws IOException {
        if (closed) {
            throw new IOException("These pages were closed; another card has taken their place.");
        }
        return new PDFRenderer(pdf).renderImageWithDPI(page, (float) dpi, ImageType.RGB);
    }

    /** The same pages for a printer, in their own size. Drawn as pictures first, so that hatching and signs come out as in the PDF. */
    Pageable paper() {
        return new PDFPageable(pdf, Orientation.AUTO, false, PRINTER_DPI);
    }

    /** Waits for a page that is being drawn. */
    @Override
    public synchronized void close() {
        closed = true;
        try {
            pdf.close();
        } catch (IOException alreadyGone) {
            throw new java.io.UncheckedIOException(alreadyGone);
        }
    }

    private static Map<String, Place> places(PDDocument pdf) throws IOException {
        Map<String, Place> places = new TreeMap<>();
        PDDocumentNameDictionary names = pdf.getDocumentCatalog().getNames();
        PDDestinationNameTreeNode tree = names == null ? null : names.getDests();
        Map<String, PDPageDestination> found = tree == null ? null : tree.getNames();
        if (found != null) {
            for (Map.Entry<String, PDPageDestination> entry : found.entrySet()) {
                if (entry.getValue() instanceof PDPageFitRectangleDestination rectangle) {
                    places.put(entry.getKey(), place(pdf, rectangle));
                }
            }
        }
        return Map.copyOf(places);
    }

    private static Place place(PDDocument pdf, PDPageFitRectangleDestination rectangle) {
        int page = rectangle.retrievePageNumber();
        double paper = pdf.getPage(page).getMediaBox().getHeight();
        return new Place(page, new Rectangle2D.Double(rectangle.getLeft(), paper - rectangle.getTop(),
                rectangle.getRight() - rectangle.getLeft(), rectangle.getTop() - rectangle.getBottom()));
    }
}

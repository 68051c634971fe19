/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDestinationNameTreeNode;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitRectangleDestination;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/**
 * The pages of a card as pictures, for a view that has no browser.
 *
 * @param pictures one for each page
 * @param places   where each step stands, by its name: {@code SeeIt}, and in a routine {@code MakeSafe/SwitchOff}
 * @param printed  where each number stands, such as {@code 7b}; a short routine is printed at each step that performs it
 */
public record CardPages(List<BufferedImage> pictures, Map<String, Place> places, Map<String, Place> printed) {
    /** Names of places by their number on the card begin so; no step can. */
    private static final String NUMBERED = "step-";
    private static final double POINTS_PER_INCH = 72;

    /**
     * Where a step stands. One that runs over several pages has its first part here.
     *
     * @param page from 0
     * @param area in pixels of the page's picture, from its upper left corner
     */
    public record Place(int page, Rectangle2D area) {
    }

    /**
     * @param card a PDF made by the export {@code card-pdf}
     * @param dpi  pixels per inch; 96 is life size on many screens
     * @throws IOException if the bytes are no PDF
     */
    public static CardPages render(byte[] card, int dpi) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(card)) {
            PDFRenderer renderer = new PDFRenderer(pdf);
            List<BufferedImage> pictures = new ArrayList<>();
            for (int page = 0; page < pdf.getNumberOfPages(); page++) {
                pictures.add(renderer.renderImageWithDPI(page, dpi, ImageType.RGB));
            }
            Map<String, Place> all = places(pdf, dpi / POINTS_PER_INCH);
            Map<String, Place> places = new TreeMap<>();
            Map<String, Place> printed = new TreeMap<>();
            all.forEach((name, place) -> (name.startsWith(NUMBERED) ? printed : places)
                    .put(name.startsWith(NUMBERED) ? name.substring(NUMBERED.length()) : name, place));
            return new CardPages(List.copyOf(pictures), places, printed);
        }
    }

    /** One page alone, for a view that shows the first before all are drawn. @param page from 0 */
    public static BufferedImage page(byte[] card, int page, int dpi) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(card)) {
            return new PDFRenderer(pdf).renderImageWithDPI(page, dpi, ImageType.RGB);
        }
    }

    private static Map<String, Place> places(PDDocument pdf, double scale) throws IOException {
        Map<String, Place> places = new TreeMap<>();
        PDDocumentNameDictionary names = pdf.getDocumentCatalog().getNames();
        PDDestinationNameTreeNode tree = names == null ? null : names.getDests();
        Map<String, PDPageDestination> found = tree == null ? null : tree.getNames();
        if (found != null) {
            for (Map.Entry<String, PDPageDestination> entry : found.entrySet()) {
                if (entry.getValue() instanceof PDPageFitRectangleDestination rectangle) {
                    places.put(entry.getKey(), place(pdf, rectangle, scale));
                }
            }
        }
        return places;
    }

    private static Place place(PDDocument pdf, PDPageFitRectangleDestination rectangle, double scale) {
        int page = rectangle.retrievePageNumber();
        double paper = pdf.getPage(page).getMediaBox().getHeight();
        return new Place(page, new Rectangle2D.Double(rectangle.getLeft() * scale, (paper - rectangle.getTop()) * scale,
                (rectangle.getRight() - rectangle.getLeft()) * scale,
                (rectangle.getTop() - rectangle.getBottom()) * scale));
    }
}

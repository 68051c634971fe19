/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import com.openhtmltopdf.pdfboxout.PagePosition;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.Box;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.PDDestinationNameTreeNode;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitRectangleDestination;

/** Gives parts of a page names in its PDF, each with the rectangle it stands in (ISO 32000-1, 12.3.2.3). */
final class PdfPlaces {
    /** The page margins of the style sheet, in points. */
    private static final float MARGIN_TOP = 22 * 72 / 25.4f;
    private static final float MARGIN_BOTTOM = 20 * 72 / 25.4f;
    private static final float ROUNDING = 0.5f;

    private PdfPlaces() {
    }

    /** The ids of places that no page can hold. */
    static List<String> longerThanAPage(PDDocument pdf, PdfBoxRenderer renderer, Map<String, String> places) {
        float room = pdf.getPage(0).getMediaBox().getHeight() - MARGIN_TOP - MARGIN_BOTTOM;
        Map<String, PagePosition<Box>> found = positions(renderer);
        return places.values().stream().filter(id -> found.containsKey(id) && found.get(id).getHeight() > room).toList();
    }

    private static Map<String, PagePosition<Box>> positions(PdfBoxRenderer renderer) {
        Map<String, PagePosition<Box>> found = new HashMap<>();
        renderer.findPagePositionsByID(Pattern.compile("")).forEach(position -> found.put(position.getId(), position));
        return found;
    }

    /** @param places ids in the page by name */
    static void name(PDDocument pdf, PdfBoxRenderer renderer, Map<String, String> places) throws IOException {
        Map<String, PagePosition<Box>> found = positions(renderer);
        Map<String, PDPageDestination> names = new TreeMap<>();
        places.forEach((name, id) -> {
            PagePosition<Box> position = found.get(id);
            if (position != null) {
                names.put(name, rectangle(pdf, position));
            }
        });
        if (!names.isEmpty()) {
            PDDestinationNameTreeNode tree = new PDDestinationNameTreeNode();
            tree.setNames(names);
            PDDocumentNameDictionary dictionary = new PDDocumentNameDictionary(pdf.getDocumentCatalog());
            dictionary.setDests(tree);
            pdf.getDocumentCatalog().setNames(dictionary);
        }
    }

    /** A part that runs over several pages is measured from its last one; its name leads to the first. */
    private static PDPageDestination rectangle(PDDocument pdf, PagePosition<Box> position) {
        int page = position.getPageNo();
        float paper = pdf.getPage(page).getMediaBox().getHeight();
        float room = paper - MARGIN_TOP - MARGIN_BOTTOM;
        float top = position.getY() + position.getHeight();
        float bottom = position.getY();
        while (top > paper - MARGIN_TOP + ROUNDING && page > 0) {
            page--;
            top -= room;
            bottom = MARGIN_BOTTOM;
        }
        PDPageFitRectangleDestination destination = new PDPageFitRectangleDestination();
        destination.setPage(pdf.getPage(page));
        destination.setLeft(Math.round(position.getX()));
        destination.setRight(Math.round(position.getX() + position.getWidth()));
        destination.setTop(Math.round(top));
        destination.setBottom(Math.round(bottom));
        return destination;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.io.IOException;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.pdmodel.PDDestinationNameTreeNode;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNameTreeNode;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitRectangleDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;

/** Gives each place of a sheet the rectangle it stands in (ISO 32000-1, 12.3.2.3), from where it begins and ends. */
final class PdfPlaces {
    private static final double POINTS = 72 / 25.4;
    /** Where they stand in the array of a destination (ISO 32000-1, table 151). */
    private static final int LEFT = 2;
    private static final int BOTTOM = 3;
    private static final int RIGHT = 4;
    private static final int TOP = 5;

    private PdfPlaces() {
    }

    /** @return the page of each, from 0 */
    static Map<String, Integer> measure(PDDocument pdf, PrintDocument sheet) throws IOException {
        PDDocumentNameDictionary names = pdf.getDocumentCatalog().getNames();
        PDDestinationNameTreeNode tree = names == null ? null : names.getDests();
        if (tree == null) {
            return Map.of();
        }
        Map<COSDictionary, Integer> numbers = new IdentityHashMap<>();
        pdf.getPages().forEach(page -> numbers.put(page.getCOSObject(), numbers.size()));
        Map<String, Integer> pages = new HashMap<>();
        Map<String, PDPageDestination> points = new HashMap<>();
        collect(tree, points);
        Map<String, PDPageDestination> areas = new TreeMap<>();
        sheet.places().forEach((name, id) -> {
            if (points.get(id) instanceof PDPageXYZDestination from && points.get(PrintDocument.end(id)) instanceof PDPageXYZDestination to) {
                areas.put(name, area(from, to, sheet.paper()));
                pages.put(name, numbers.get(from.getPage().getCOSObject()));
            }
        });
        PDDestinationNameTreeNode measured = new PDDestinationNameTreeNode();
        measured.setNames(areas);
        names.setDests(measured);
        return pages;
    }

    private static void collect(PDNameTreeNode<PDPageDestination> node,
            Map<String, PDPageDestination> into) throws IOException {
        Map<String, PDPageDestination> own = node.getNames();
        if (own != null) {
            into.putAll(own);
        }
        if (node.getKids() != null) {
            for (PDNameTreeNode<PDPageDestination> kid : node.getKids()) {
                collect(kid, into);
            }
        }
    }

    /** A place that goes on in the next column or page is shown to the end of its first one. */
    private static PDPageDestination area(PDPageXYZDestination from, PDPageXYZDestination to, Paper paper) {
        PDPage page = from.getPage();
        boolean whole = page.equals(to.getPage()) && to.getTop() < from.getTop() && Math.abs(to.getLeft() - from.getLeft()) < paper.column() * POINTS / 2;
        PDPageFitRectangleDestination area = new PDPageFitRectangleDestination();
        area.setPage(page);
        // A whole number that is also the length of some stream would be saved as a reference to that, which readers of a destination do not follow.
        COSArray numbers = area.getCOSObject();
        numbers.set(LEFT, new COSFloat(from.getLeft()));
        numbers.set(BOTTOM, new COSFloat(whole ? to.getTop() : Math.round(paper.margin() * POINTS)));
        numbers.set(RIGHT, new COSFloat(Math.round(from.getLeft() + paper.column() * POINTS)));
        numbers.set(TOP, new COSFloat(from.getTop()));
        return area;
    }
}

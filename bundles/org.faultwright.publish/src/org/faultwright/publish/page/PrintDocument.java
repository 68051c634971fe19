/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** A document for print being built: running lines, bookmarks, and one flow of columns from page to page. */
public final class PrintDocument {
    /** The colour of words about a page that are left out on that page itself. */
    public static final String ELSEWHERE = ArrowPages.COLOUR;
    private static final String HEAD = "7mm";
    private static final String FOOT = "6mm";
    private static final String ARTIFACT = "artifact";

    private final Paper paper;
    private final String title;
    private final String description;
    private final Fo root = Fo.root();
    private final Fo bookmarks;
    private final Fo destinations = Fo.of("none");
    private final Fo sequence;
    private final Map<String, String> places = new TreeMap<>();
    private final Fo flow;

    /**
     * @param columns of the flow on each page
     * @param right   stands opposite the title at the head of every page
     * @param foot    stands opposite the page number
     */
    public PrintDocument(Paper paper, int columns, String title, String description, String right, String foot) {
        this.paper = paper;
        this.title = title;
        this.description = description;
        root.set("font-family", PrintFonts.FAMILY, "font-size", "9pt", "line-height", "10.6pt", "color", "#16242c",
                "xml:lang", "en", "hyphenate", "false", "font-selection-strategy", "auto");
        Fo page = root.add("layout-master-set").add("simple-page-master", "master-name", "page", "page-width",
                mm(paper.width()), "page-height", mm(paper.height()), "margin-left", mm(paper.margin()), "margin-right",
                mm(paper.margin()), "margin-top", mm(paper.top()), "margin-bottom", mm(paper.bottom()));
        page.add("region-body", "margin-top", HEAD, "margin-bottom", FOOT, "column-count", String.valueOf(columns),
                "column-gap", mm(paper.gap()));
        page.add("region-before", "extent", HEAD);
        page.add("region-after", "extent", FOOT, "display-align", "after");
        bookmarks = Fo.of("bookmark-tree");
        sequence = Fo.of("page-sequence", "master-reference", "page", "id", "all");
        running(sequence.add("static-content", "flow-name", "xsl-region-before", "role", ARTIFACT), title, right);
        Fo last = sequence.add("static-content", "flow-name", "xsl-region-after", "role", ARTIFACT).add("block",
                "font-size", "7pt", "line-height", "9pt", "text-align-last", "justify", "border-top", "0.4pt solid #7a868d",
                "padding-top", "0.6mm");
        last.text(foot).add("leader");
        last.text("Page ").add("page-number");
        last.text(" of ").add("page-number-citation-last", "ref-id", "all");
        flow = sequence.add("flow", "flow-name", "xsl-region-body");
    }

    private static void running(Fo before, String left, String right) {
        Fo line = before.add("block", "font-size", "8pt", "line-height", "10pt", "text-align-last", "justify",
                "border-bottom", "0.4pt solid #7a868d", "padding-bottom", "0.6mm");
        line.say("inline", left, "font-weight", "bold");
        line.add("leader");
        line.text(right);
    }

    public Paper paper() {
        return paper;
    }

    public Fo flow() {
        return flow;
    }

    String title() {
        return title;
    }

    String description() {
        return description;
    }

    /** Adds an entry to the outline of the file. */
    public void bookmark(String id, String words) {
        bookmarks.add("bookmark", "internal-destination", id).say("bookmark-title", words);
    }

    /** Makes a place findable in the file by a name: its beginning and end must be in the sheet under {@code id} and {@link #end}. */
    public void place(String name, String id) {
        if (!places.containsValue(id)) {
            destinations.add("fox:destination", "internal-destination", id);
            destinations.add("fox:destination", "internal-destination", end(id));
        }
        places.put(name, id);
    }

    /** Ids by the names that a reader of the file finds them under. */
    Map<String, String> places() {
        return places;
    }

    /** The id of the end of a place. */
    public static String end(String id) {
        return "end-" + id;
    }

    /** The whole document. */
    Fo document() {
        destinations.moveTo(root);
        if (!bookmarks.isEmpty()) {
            root.put(bookmarks);
        }
        return root.put(sequence);
    }

    public static String mm(double length) {
        return String.format(Locale.ROOT, "%.2fmm", length);
    }
}

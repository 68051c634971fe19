/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * Tells each cell of a table what its column is called. Where a window is too narrow for columns (WCAG 2.2, 1.4.10: 320 CSS pixels), the
 * style sheet sets the cells below one another, each behind that word.
 */
public final class ColumnLabels {
    private ColumnLabels() {
    }

    /** In every table of the page that has headings. */
    public static void add(Page page) {
        NodeList tables = page.document().getElementsByTagName("table");
        for (int i = 0; i < tables.getLength(); i++) {
            Element table = (Element) tables.item(i);
            List<String> columns = parts(table, "thead").stream().flatMap(row -> children(row).stream()).map(Element::getTextContent).toList();
            if (!columns.isEmpty()) {
                parts(table, "tbody").forEach(row -> label(children(row), columns));
            }
        }
    }

    private static void label(List<Element> cells, List<String> columns) {
        for (int i = 0; i < cells.size() && i < columns.size(); i++) {
            if (cells.get(i).getTagName().equals("td")) {
                cells.get(i).setAttribute("data-label", columns.get(i));
            }
        }
    }

    private static List<Element> parts(Element table, String name) {
        return children(table).stream().filter(part -> part.getTagName().equals(name)).flatMap(part -> children(part).stream()).toList();
    }

    private static List<Element> children(Element of) {
        List<Element> children = new ArrayList<>();
        for (Node child = of.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.List;
import org.w3c.dom.Element;
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
            List<String> columns = Elements.rows(table, "thead").stream().flatMap(row -> Elements.in(row).stream()).map(Element::getTextContent).toList();
            if (!columns.isEmpty()) {
                Elements.rows(table, "tbody").forEach(row -> label(Elements.in(row), columns));
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
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The elements of a page. */
final class Elements {
    private Elements() {
    }

    /** Those right inside another, in their order. */
    static List<Element> in(Element of) {
        List<Element> children = new ArrayList<>();
        for (Node child = of.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }

    /** The rows of a part of a table, such as {@code tbody}. */
    static List<Element> rows(Element table, String part) {
        return in(table).stream().filter(child -> child.getTagName().equals(part)).flatMap(child -> in(child).stream()).toList();
    }
}

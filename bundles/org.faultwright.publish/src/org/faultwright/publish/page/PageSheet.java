/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Sets a page of our own, a report, on paper: its elements become formatting objects with what the style sheet says of them. */
public final class PageSheet {
    private static final Set<String> BLOCKS = Set.of("body", "main", "header", "section", "article", "div", "p", "h1", "h2", "h3", "h4", "ul",
            "ol", "li", "nav", "footer");
    private static final Set<String> HEADINGS = Set.of("h1", "h2", "h3", "h4");
    private static final Set<String> LEFT_OUT = Set.of("script", "style", "input", "label", "button");
    /** What CSS and XSL call by the same name and mean by it the same. */
    private static final Set<String> SHARED = Set.of("font-size", "font-weight", "color", "background-color", "border", "border-top",
            "border-bottom", "border-left", "border-right", "border-color", "border-bottom-color", "padding", "padding-top",
            "padding-bottom", "padding-left", "padding-right", "margin", "margin-top", "margin-bottom", "margin-left", "margin-right",
            "text-align", "line-height", "text-transform");
    private static final double WHOLE = 100;

    private final Styles styles;
    private final Element body;

    private PageSheet(Page page, String style) {
        this.styles = new Styles(style);
        this.body = page.body().node();
    }

    /** @param style the style sheet, one of ours */
    public static PrintDocument of(Page page, String style) {
        return new PageSheet(page, style).sheet(page);
    }

    private PrintDocument sheet(Page page) {
        String description = meta(page.head().node(), "description");
        PrintDocument sheet = new PrintDocument(Paper.A4, 1, page.title(), description, running("right"), running("foot"));
        Fo flow = sheet.flow();
        blocks(body, flow);
        if (flow.isEmpty()) {
            flow.add("block");
        }
        return sheet;
    }

    private static String meta(Element head, String name) {
        for (Node child = head.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element meta && meta.getAttribute("name").equals(name)) {
                return meta.getAttribute("content");
            }
        }
        return "";
    }

    /** The words that stand on every page are kept at the head of the body. */
    private String running(String style) {
        return find(body, element -> element.getAttribute("class").equals(style)).map(Element::getTextContent).orElse("");
    }

    private static Optional<Element> find(Element in, Predicate<Element> wanted) {
        for (Element child : Elements.in(in)) {
            Optional<Element> found = wanted.test(child) ? Optional.of(child) : find(child, wanted);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private static boolean isBlock(Node node) {
        return node instanceof Element element && (BLOCKS.contains(element.getTagName()) || element.getTagName().equals("table"));
    }

    /** What stands between two blocks becomes one of its own. */
    private void blocks(Element of, Fo into) {
        Fo line = null;
        for (Node child = of.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (isBlock(child)) {
                line = null;
                block((Element) child, into);
            } else {
                line = line == null ? into.add("block") : line;
                inline(child, line);
            }
        }
    }

    private void block(Element element, Fo into) {
        String style = element.getAttribute("class");
        if (style.startsWith("run")) {
            return;
        }
        if (element.getTagName().equals("table")) {
            table(element, into);
            return;
        }
        Fo block = styled(into.add("block"), element);
        String name = element.getTagName();
        if (HEADINGS.contains(name) || name.equals("p")) {
            block.set("role", name.toUpperCase(Locale.ROOT));
        }
        if (HEADINGS.contains(name)) {
            block.set("keep-with-next.within-column", "always");
        }
        identify(block, element);
        boolean holdsBlocks = Elements.in(element).stream().anyMatch(PageSheet::isBlock);
        if (holdsBlocks) {
            blocks(element, block);
        } else {
            inlines(element, block);
        }
    }

    private static void identify(Fo object, Element element) {
        if (!element.getAttribute("id").isEmpty()) {
            object.set("id", element.getAttribute("id"));
        }
    }

    private void inlines(Element element, Fo into) {
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            inline(child, into);
        }
    }

    private void inline(Node node, Fo into) {
        if (!(node instanceof Element element)) {
            into.text(node.getNodeValue());
            return;
        }
        if (LEFT_OUT.contains(element.getTagName())) {
            return;
        }
        if (element.getTagName().equals("a") && element.getAttribute("href").startsWith("#")) {
            Fo link = styled(into.add("basic-link", "internal-destination", element.getAttribute("href").substring(1)), element);
            link.spoken(element.getAttribute("title").isEmpty() ? element.getTextContent() : element.getAttribute("title"));
            inlines(element, link);
        } else {
            inlines(element, styled(into.add("inline"), element));
        }
    }

    private Fo styled(Fo object, Element element) {
        Map<String, String> says = styles.of(element);
        says.forEach((property, value) -> {
            if (SHARED.contains(property)) {
                object.set(property, value.equals("none") ? "0pt none #000000" : value.equals("0") ? "0pt" : value);
            } else if (property.equals("page-break-inside") && value.equals("avoid")) {
                object.set("keep-together.within-column", "always");
            } else if (property.equals("page-break-after") && value.equals("avoid")) {
                object.set("keep-with-next.within-column", "always");
            } else if (property.equals("page-break-before") && value.equals("always")) {
                object.set("break-before", "page");
            }
        });
        return object;
    }

    private void table(Element element, Fo into) {
        List<Element> head = rows(element, "thead");
        List<Element> rows = rows(element, "tbody");
        Optional<Element> first = head.isEmpty() ? rows.stream().findFirst() : Optional.of(head.get(0));
        if (first.isEmpty() || rows.isEmpty()) {
            return;
        }
        Fo table = styled(into.add("table"), element).set("table-layout", "fixed", "width", "100%");
        widths(first.get()).forEach(width -> table.add("table-column", "column-width", "proportional-column-width(" + width + ")"));
        if (!head.isEmpty()) {
            Fo header = table.add("table-header");
            head.forEach(row -> row(row, header));
        }
        Fo body = table.add("table-body");
        rows.forEach(row -> row(row, body));
    }

    private static List<Element> rows(Element table, String part) {
        return Elements.rows(table, part).stream().filter(row -> !Elements.in(row).isEmpty()).toList();
    }

    /** As parts of a hundred: what the style says, and the rest in equal shares. */
    private List<Double> widths(Element row) {
        List<Double> said = Elements.in(row).stream().map(cell -> styles.of(cell).getOrDefault("width", "")).map(width -> width.endsWith("%")
                ? Double.parseDouble(width.substring(0, width.length() - 1)) : 0).toList();
        double rest = Math.max(1, WHOLE - said.stream().mapToDouble(Double::doubleValue).sum());
        long open = said.stream().filter(width -> width == 0).count();
        return said.stream().map(width -> width == 0 ? rest / open : width).toList();
    }

    private void row(Element element, Fo into) {
        Fo row = styled(into.add("table-row"), element).set("keep-together.within-column", "always");
        for (Element cell : Elements.in(element)) {
            Fo box = styled(row.add("table-cell"), cell).set("start-indent", "0pt", "end-indent", "0pt");
            Optional.ofNullable(styles.of(cell).get("height")).ifPresent(height -> box.set("height", height));
            if (!cell.getAttribute("colspan").isEmpty()) {
                box.set("number-columns-spanned", cell.getAttribute("colspan"));
            }
            identify(box, cell);
            blocks(cell, box);
            if (box.isEmpty()) {
                box.add("block");
            }
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Map;
import java.util.Set;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

/** Writes a page as one self-contained HTML file that fetches nothing and runs at most one script of ours. */
public final class HtmlText {
    private static final Set<String> VOID = Set.of("meta", "br", "hr", "col", "input", "img");
    private static final Set<String> OWN_LINE = Set.of("html", "head", "meta", "title", "style", "body", "div",
            "section", "article", "header", "footer", "main", "nav", "h1", "h2", "h3", "h4", "p", "ul", "ol", "li",
            "table", "caption", "thead", "tbody", "tr", "td", "th");

    private HtmlText() {
    }

    /** UTF-8 with line feeds; nothing in it runs. @param style the style sheet, one of ours */
    public static byte[] of(Page page, String style) {
        return of(page, style, "");
    }

    /** UTF-8 with line feeds. @param script one of ours, and the only one that the page lets run; empty for none */
    public static byte[] of(Page page, String style, String script) {
        return of(page, style, script, Map.of(), page.document().getElementsByTagName("img").getLength() > 0);
    }

    /**
     * UTF-8 with line feeds.
     *
     * @param script   one of ours, and the only one that the page lets run; empty for none
     * @param data     JSON for the script to read, by the id of the element that holds it; none of it can run
     * @param pictures whether pictures may be shown that stand in the page itself
     */
    public static byte[] of(Page page, String style, String script, Map<String, String> data, boolean pictures) {
        String sheet = "\n" + style.strip() + "\n";
        String code = "\n" + script.strip() + "\n";
        String runs = script.isEmpty() ? "" : "script-src 'sha256-" + sha256(code) + "'; ";
        page.head().add("meta").set("http-equiv", "Content-Security-Policy").set("content",
                "default-src 'none'; " + (pictures ? "img-src data:; " : "") + runs + "style-src 'sha256-" + sha256(sheet) + "'; base-uri 'none'; form-action 'none'");
        StringBuilder html = new StringBuilder("<!DOCTYPE html>\n");
        write(page.document().getDocumentElement(), html, sheet);
        StringBuilder end = new StringBuilder();
        data.forEach((id, json) -> end.append("\n<script type=\"application/json\" id=\"").append(id).append("\">").append(inert(json)).append("</script>"));
        if (!script.isEmpty()) {
            end.append("\n<script>").append(code).append("</script>\n");
        }
        return html.insert(html.lastIndexOf("</body>"), end).append('\n').toString().getBytes(StandardCharsets.UTF_8);
    }

    /** JSON in which no word can end the element that holds it, nor begin a comment or another one. */
    private static String inert(String json) {
        return json.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029");
    }

    private static void write(Node node, StringBuilder html, String sheet) {
        if (node instanceof Element run && run.getTagName().equals("span") && run.getAttributes().getLength() == 0) {
            // Only the print needs runs of words to be elements.
            children(run, html, sheet);
        } else if (node instanceof Element element) {
            String name = element.getTagName();
            if (OWN_LINE.contains(name) && html.charAt(html.length() - 1) != '\n') {
                html.append('\n');
            }
            html.append('<').append(name);
            attributes(element, html);
            html.append('>');
            if (!VOID.contains(name)) {
                children(element, html, sheet);
                if (name.equals("head")) {
                    html.append("\n<style>").append(sheet).append("</style>\n");
                }
                html.append("</").append(name).append('>');
            }
        } else {
            escape(node.getNodeValue(), html);
        }
    }

    private static void children(Element element, StringBuilder html, String sheet) {
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            write(child, html, sheet);
        }
    }

    private static void attributes(Element element, StringBuilder html) {
        NamedNodeMap attributes = element.getAttributes();
        for (int i = 0; i < attributes.getLength(); i++) {
            html.append(' ').append(attributes.item(i).getNodeName()).append("=\"");
            escape(attributes.item(i).getNodeValue(), html);
            html.append('"');
        }
    }

    static String escaped(String text) {
        StringBuilder escaped = new StringBuilder(text.length() + 8);
        escape(text, escaped);
        return escaped.toString();
    }

    private static void escape(String text, StringBuilder html) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> html.append("&amp;");
                case '<' -> html.append("&lt;");
                case '>' -> html.append("&gt;");
                case '"' -> html.append("&quot;");
                case '\'' -> html.append("&#39;");
                default -> html.append(c);
            }
        }
    }

    private static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.Locale;
import org.commonmark.node.Document;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.node.Text;
import org.commonmark.renderer.html.AttributeProvider;
import org.commonmark.renderer.html.HtmlRenderer;
import org.faultwright.analysis.checking.RulePage;

/** The page of a rule as one HTML file that needs nothing beside it: no script, no picture, no network. */
final class RulePageHtml {
    private static final String STYLE = ":root { color-scheme: light dark } body { max-width: 44rem; margin: 2rem auto; padding: 0 1rem; "
            + "font: 1rem/1.5 sans-serif } pre { padding: .75rem; overflow-x: auto; border: 1px solid } code, pre { font-family: monospace }";
    /** What is wider than the page is scrolled by the keyboard too. */
    private static final AttributeProvider BY_KEYBOARD = (node, tag, attributes) -> {
        if (tag.equals("pre")) {
            attributes.put("tabindex", "0");
        }
    };
    /** Markup within the words is shown as words, and no address but those of the web is a link. */
    private static final HtmlRenderer HTML = HtmlRenderer.builder().escapeHtml(true).sanitizeUrls(true).attributeProviderFactory(context -> BY_KEYBOARD).build();

    private RulePageHtml() {
    }

    /** The same for the same page, whatever the machine. */
    static String of(RulePage page) {
        Node body = Markdown.read("# " + Markdown.plain(page.header().id()) + "\n\n" + page.header().summary() + "\n\n"
                + page.header().group().title() + ", " + page.header().severity().name().toLowerCase(Locale.ROOT) + "\n\n" + String.join("\n\n", page.prose()));
        example(body, "Instead of", page.bad());
        example(body, "write", page.good());
        body.appendChild(paragraph("Local codes, the maker's instructions and licensed practice come first."));
        return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                + "<title>" + title(page) + "</title>\n<style>" + STYLE + "</style>\n</head>\n<body>\n<main>\n" + HTML.render(body) + "</main>\n</body>\n</html>\n";
    }

    private static String title(RulePage page) {
        Document words = new Document();
        words.appendChild(new Text(page.header().id()));
        return HTML.render(words);
    }

    private static void example(Node body, String before, String text) {
        FencedCodeBlock code = new FencedCodeBlock();
        code.setLiteral(text);
        body.appendChild(paragraph(before));
        body.appendChild(code);
    }

    private static Node paragraph(String words) {
        Paragraph paragraph = new Paragraph();
        paragraph.appendChild(new Text(words));
        return paragraph;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.Locale;
import java.util.regex.Pattern;
import org.faultwright.analysis.checking.RulePage;

/** The page of a rule as one HTML file that needs nothing beside it: no script, no picture, no network. */
final class RulePageHtml {
    private static final Pattern CODE = Pattern.compile("`([^`]+)`");
    private static final String STYLE = ":root { color-scheme: light dark } body { max-width: 44rem; margin: 2rem auto; padding: 0 1rem; "
            + "font: 1rem/1.5 sans-serif } pre { padding: .75rem; overflow-x: auto; border: 1px solid } code, pre { font-family: monospace }";

    private RulePageHtml() {
    }

    /** The same for the same page, whatever the machine. */
    static String of(RulePage page) {
        StringBuilder html = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.append("<title>").append(text(page.header().id())).append("</title>\n<style>").append(STYLE).append("</style>\n</head>\n<body>\n<main>\n");
        html.append("<h1>").append(text(page.header().id())).append("</h1>\n");
        paragraph(html, page.header().summary());
        paragraph(html, page.header().group().title() + ", " + page.header().severity().name().toLowerCase(Locale.ROOT));
        page.prose().forEach(prose -> paragraph(html, prose));
        example(html, "Instead of", page.bad());
        example(html, "write", page.good());
        paragraph(html, "Local codes, the maker's instructions and licensed practice come first.");
        return html.append("</main>\n</body>\n</html>\n").toString();
    }

    /** Pages are written in words and code alone; a test holds them to it. */
    private static void paragraph(StringBuilder html, String words) {
        html.append("<p>").append(CODE.matcher(text(words)).replaceAll("<code>$1</code>")).append("</p>\n");
    }

    private static void example(StringBuilder html, String before, String text) {
        html.append("<p>").append(before).append("</p>\n<pre tabindex=\"0\"><code>").append(text(text)).append("</code></pre>\n");
    }

    private static String text(String words) {
        return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}

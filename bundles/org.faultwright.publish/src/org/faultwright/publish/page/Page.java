/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;

/** An HTML page as a tree of elements, made for the screen or for paper. */
public final class Page {
    private final Document document;
    private final Medium medium;
    private final String title;
    private final Tag head;
    private final Tag body;

    public Page(Medium medium, String title, String description) {
        this.medium = medium;
        this.title = PlainText.line(title);
        this.document = empty();
        document.appendChild(document.createElement("html"));
        Tag html = new Tag(document.getDocumentElement());
        html.set("lang", "en");
        head = html.add("head");
        head.add("meta").set("charset", "UTF-8");
        head.say("title", "", this.title);
        meta("description", description);
        if (medium == Medium.PAPER) {
            // The two names under which the PDF's own record of title and subject is filled.
            meta("title", this.title);
            meta("subject", description);
        } else {
            meta("viewport", "width=device-width, initial-scale=1");
            meta("referrer", "no-referrer");
        }
        body = html.add("body", medium == Medium.PAPER ? "paper" : "screen");
    }

    private void meta(String name, String content) {
        head.add("meta").set("name", name).set("content", PlainText.line(content));
    }

    private static Document empty() {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().newDocument();
        } catch (ParserConfigurationException impossible) {
            throw new IllegalStateException("every Java platform can make an empty document", impossible);
        }
    }

    public String title() {
        return title;
    }

    public Tag head() {
        return head;
    }

    public Tag body() {
        return body;
    }

    Document document() {
        return document;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.function.Consumer;
import org.w3c.dom.Element;

/**
 * One element of a page being built. Words of an author enter a page only through {@link #text} and
 * {@link #say}, as text nodes: they can become neither markup nor style, script or address.
 */
public final class Tag {
    private final Element element;

    Tag(Element element) {
        this.element = element;
    }

    /** Adds an element. @param style names of classes in the style sheet, separated by spaces; may be empty */
    public Tag add(String name, String style) {
        Element child = element.getOwnerDocument().createElement(name);
        if (!style.isEmpty()) {
            child.setAttribute("class", style);
        }
        element.appendChild(child);
        return new Tag(child);
    }

    /** Adds an element without a class. */
    public Tag add(String name) {
        return add(name, "");
    }

    /** Adds an element and fills it. @return this one */
    public Tag with(String name, String style, Consumer<Tag> fill) {
        fill.accept(add(name, style));
        return this;
    }

    /** Adds an element that holds only words. @return this one */
    public Tag say(String name, String style, String words) {
        add(name, style).verbatim(PlainText.line(words));
        return this;
    }

    /** Adds words; control characters and their like are taken out. */
    public Tag text(String words) {
        return run(PlainText.line(words));
    }

    /** Adds a space between words that are marked up apart. */
    public Tag space() {
        return run(" ");
    }

    /**
     * Each run of words has an element of its own. Else the print would first set all the words that stand
     * directly in a paragraph and then those in its elements, and be read aloud in that order.
     */
    private Tag run(String words) {
        Element span = element.getOwnerDocument().createElement("span");
        span.appendChild(element.getOwnerDocument().createTextNode(words));
        element.appendChild(span);
        return this;
    }

    /** Makes it a place that links lead to. @param id letters, digits and hyphens only */
    public Tag id(String id) {
        element.setAttribute("id", plain(id));
        // Without this the element is not found by its id in a document that has no document type.
        element.setIdAttribute("id", true);
        return this;
    }

    /** Adds a link inside the page. @param spoken what a reader who cannot see it hears */
    public Tag link(String id, String style, String spoken) {
        Tag link = add("a", style);
        link.element.setAttribute("href", "#" + plain(id));
        link.element.setAttribute("title", PlainText.line(spoken));
        return link;
    }

    /** Adds a link to a file beside the page. @param fileName as {@link org.faultwright.publish.PublishedFiles} allows it */
    public Tag file(String fileName) {
        if (!fileName.matches("[A-Za-z0-9_-]+(\\.[a-z0-9]+)+")) {
            throw new IllegalArgumentException("not a plain file name: " + fileName);
        }
        Tag link = add("a");
        link.element.setAttribute("href", fileName);
        return link;
    }

    /** Adds a picture. @param address with the picture in it: nothing is fetched. @param words for whoever cannot see it */
    public Tag picture(String address, String words) {
        if (!address.matches("data:image/(png|jpeg);base64,[A-Za-z0-9+/=]++")) {
            throw new IllegalArgumentException("not a picture in itself");
        }
        Tag picture = add("img");
        picture.element.setAttribute("src", address);
        picture.element.setAttribute("alt", PlainText.line(words));
        return picture;
    }

    /** Sets an attribute whose value is ours, never an author's. */
    public Tag set(String attribute, String value) {
        element.setAttribute(attribute, value);
        return this;
    }

    /** Adds a text node as it stands. */
    void verbatim(String text) {
        element.appendChild(element.getOwnerDocument().createTextNode(text));
    }

    Element node() {
        return element;
    }

    private static String plain(String id) {
        if (!id.matches("[A-Za-z0-9-]+")) {
            throw new IllegalArgumentException("not a plain id: " + id);
        }
        return id;
    }
}

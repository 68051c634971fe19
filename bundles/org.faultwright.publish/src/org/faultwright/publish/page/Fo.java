/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.xml.sax.ContentHandler;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.AttributesImpl;

/**
 * One formatting object (XSL 1.1) of a sheet being built. Words of an author enter a sheet only through {@link #text}, as
 * characters of one line: they can become neither markup nor a property or an address.
 */
public final class Fo {
    private static final String FORMAT = "http://www.w3.org/1999/XSL/Format";
    private static final String EXTENSION = "http://xmlgraphics.apache.org/fop/extensions";
    private static final String EXTENDED = "fox:";
    private static final int LONGEST_WHOLE = 40;

    private final String name;
    private final AttributesImpl properties = new AttributesImpl();
    /** Objects and words in their order. */
    private final List<Object> content = new ArrayList<>();

    private Fo(String name) {
        this.name = name;
    }

    /** The root of a sheet. */
    static Fo root() {
        return new Fo("root");
    }

    /** An object without a parent. @param properties names and values in turn, ours and never an author's */
    public static Fo of(String name, String... properties) {
        return new Fo(name).set(properties);
    }

    /** Adds an object. @param properties names and values in turn, ours and never an author's */
    public Fo add(String child, String... properties) {
        Fo added = of(child, properties);
        content.add(added);
        return added;
    }

    /** Adds an object made elsewhere. @return this one */
    public Fo put(Fo child) {
        content.add(child);
        return this;
    }

    /** Adds an object that holds only words. @return this one */
    public Fo say(String child, String words, String... properties) {
        add(child, properties).text(words);
        return this;
    }

    /** Adds words, on one line and without control characters; what the font lacks has a stand-in. @return this one */
    public Fo text(String words) {
        boolean before = !words.isEmpty() && words.charAt(0) == ' ';
        boolean after = words.length() > 1 && words.endsWith(" ");
        String line = PrintFonts.printable(LineBreaks.kept(PlainText.line(words)));
        return verbatim((before ? " " : "") + line + (after ? " " : ""));
    }

    /** Adds words between which no line ends, unless they are so many that a line may not hold them. @return this one */
    public Fo whole(String words) {
        return words.length() > LONGEST_WHOLE ? text(words) : verbatim(PrintFonts.printable(PlainText.line(words)).replace(' ', '\u00A0'));
    }

    /** Adds characters of our own as they stand. @return this one */
    public Fo verbatim(String characters) {
        content.add(characters);
        return this;
    }

    /** Sets properties, names and values in turn. @return this one */
    public Fo set(String... namesAndValues) {
        for (int i = 0; i < namesAndValues.length; i += 2) {
            String property = namesAndValues[i];
            boolean extended = property.startsWith(EXTENDED);
            String local = extended ? property.substring(EXTENDED.length()) : property;
            properties.addAttribute(extended ? EXTENSION : "", local, property, "CDATA", namesAndValues[i + 1]);
        }
        return this;
    }

    /** Sets what is said aloud instead of what is shown. @return this one */
    public Fo spoken(String words) {
        return set("fox:alt-text", PrintFonts.printable(PlainText.line(words)));
    }

    /** Puts what this one holds into another. */
    void moveTo(Fo other) {
        other.content.addAll(content);
        content.clear();
    }

    /** The object at the end; absent where words are. */
    public Optional<Fo> last() {
        return content.isEmpty() || !(content.get(content.size() - 1) instanceof Fo fo) ? Optional.empty() : Optional.of(fo);
    }

    /** @return the value of a property of ours, or nothing */
    public Optional<String> get(String property) {
        return Optional.ofNullable(properties.getValue(property));
    }

    public boolean isEmpty() {
        return content.isEmpty();
    }

    void write(ContentHandler handler) throws SAXException {
        boolean extended = name.startsWith(EXTENDED);
        String space = extended ? EXTENSION : FORMAT;
        String local = extended ? name.substring(EXTENDED.length()) : name;
        String qualified = extended ? name : "fo:" + name;
        handler.startElement(space, local, qualified, properties);
        for (Object part : content) {
            if (part instanceof Fo child) {
                child.write(handler);
            } else {
                char[] characters = ((String) part).toCharArray();
                handler.characters(characters, 0, characters.length);
            }
        }
        handler.endElement(space, local, qualified);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class HostileTest {
    private static final Publication HOSTILE = Hostile.publication();

    @Test
    void should_have_a_text_whose_words_were_really_read() {
        assertEquals(List.of(), HOSTILE.procedure().problems());
        assertTrue(HOSTILE.procedure().title().startsWith("</title>"));
        assertTrue(HOSTILE.procedure().title().length() > 400);
    }

    /** Every page we write is well-formed once its void elements are closed, so that a parser can tell what is in it. */
    private static Document parsed(byte[] html) throws Exception {
        String text = new String(html, StandardCharsets.UTF_8).replace("<!DOCTYPE html>\n", "")
                .replaceAll("<(input|meta|br|hr|col)\\b([^>]*)>", "<$1$2/>")
                .replaceAll("(?s)<script>(.*?)</script>", "<script><![CDATA[$1]]></script>");
        return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static void assertHarmless(byte[] html) throws Exception {
        Document document = parsed(html);
        NodeList all = document.getElementsByTagName("*");
        Set<String> names = new TreeSet<>();
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            names.add(element.getTagName());
            for (int a = 0; a < element.getAttributes().getLength(); a++) {
                String attribute = element.getAttributes().item(a).getNodeName();
                String value = element.getAttributes().item(a).getNodeValue();
                assertTrue(Set.of("lang", "charset", "name", "content", "http-equiv", "class", "id", "scope", "href", "title",
                        "aria-hidden", "hidden", "for", "type", "autocomplete", "role", "data-label").contains(attribute), attribute);
                assertTrue(!attribute.equals("href") || value.matches("#[A-Za-z0-9-]+|[A-Za-z0-9_-]+(\\.[a-z0-9]+)+"), value);
                // what a column is called: words of ours
                assertTrue(!attribute.equals("data-label") || value.matches("[A-Za-z0-9 ,.-]+"), value);
                assertTrue(!attribute.equals("class") || value.matches("[a-z ]+"), value);
            }
        }
        assertTrue(names.containsAll(Set.of("html", "head", "title", "style", "body", "main", "h1")), names.toString());
        // the index runs one script of ours, and its page allows no other
        assertEquals(names.contains("input") ? 1 : 0, document.getElementsByTagName("script").getLength());
        for (String never : List.of("img", "iframe", "object", "link", "form", "svg", "base")) {
            assertFalse(names.contains(never), never);
        }
        assertEquals(1, document.getElementsByTagName("style").getLength());
        assertFalse(document.getElementsByTagName("style").item(0).getTextContent().contains("display: none"));
        String text = document.getDocumentElement().getTextContent();
        assertTrue(text.contains("<script>alert(1)</script>"), "the words themselves are shown");
        assertTrue(text.chars().noneMatch(c -> c < ' ' && c != '\n' || c == '\u202E' || c == '\u2028'));
    }

    @Test
    void should_show_hostile_words_in_a_card_as_words() throws Exception {
        assertHarmless(Samples.publish("card-html", HOSTILE).bytes());
    }

    @ParameterizedTest
    @ValueSource(strings = { "index-html", "quality-html" })
    void should_show_hostile_words_in_a_page_of_a_folder_as_words(String export) throws Exception {
        FolderExport page = (FolderExport) Exports.named(export).orElseThrow();
        assertHarmless(page.publish(new ProcedureFolder(Hostile.WORDS, List.of(HOSTILE), Set.of("Hostile.html"))).bytes());
    }

    @Test
    void should_let_no_page_run_or_fetch_anything() {
        String html = Samples.string("card-html", HOSTILE);
        assertTrue(html.contains("<meta content=\"default-src &#39;none&#39;; style-src &#39;sha256-"), html);
        assertTrue(html.contains("form-action &#39;none&#39;\" http-equiv=\"Content-Security-Policy\">"), html);
        assertFalse(html.contains("unsafe"));
    }

    @Test
    void should_print_no_script_file_or_address_into_a_pdf() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(Samples.publish("card-pdf", HOSTILE).bytes())) {
            List<String> kinds = new ArrayList<>();
            for (COSObject object : pdf.getDocument().getObjectsByType(COSName.ANNOT)) {
                COSBase action = ((COSDictionary) object.getObject()).getDictionaryObject(COSName.A);
                kinds.add(((COSDictionary) action).getNameAsString(COSName.S));
            }
            assertTrue(kinds.size() > 5);
            assertTrue(kinds.stream().allMatch("GoTo"::equals), kinds.toString());
            assertEquals(null, pdf.getDocumentCatalog().getOpenAction());
            assertEquals(null, pdf.getDocumentCatalog().getNames().getJavaScript());
            assertEquals(null, pdf.getDocumentCatalog().getNames().getEmbeddedFiles());
        }
    }

    @Test
    void should_carry_hostile_words_in_a_tree_as_they_were_written() {
        String json = Samples.string("tree-json", HOSTILE);
        assertEquals(HOSTILE.procedure().title(), JsonParser.parseString(json).getAsJsonObject().get("title").getAsString());
        assertEquals("Hostile.tree.json", Samples.publish("tree-json", HOSTILE).fileName());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import java.util.Map;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/** Prints a sheet as PDF/A-2a (ISO 19005-2) and PDF/UA-1 (ISO 14289-1). */
public final class PdfPrint {
    private static final String PRODUCER = "Faultwright";
    private static final int LONG_IN_HEXADECIMAL = 15;

    private PdfPrint() {
    }

    /**
     * @param stamp what makes the file's identity and date: never the clock
     * @param draft whether DRAFT goes across every page
     */
    public static byte[] of(PrintDocument sheet, PdfStamp stamp, boolean draft) {
        return printed(sheet, stamp, draft).bytes();
    }

    /** @param pages on which page each place of the sheet begins, from 0 @param count how many pages there are */
    public record Printed(byte[] bytes, Map<String, Integer> pages, int count) {
    }

    /** The same with where the places of the sheet have come to stand. */
    public static Printed printed(PrintDocument sheet, PdfStamp stamp, boolean draft) {
        try (PDDocument pdf = Loader.loadPDF(Typesetter.set(sheet, Typesetter.Use.KEPT))) {
            Map<String, Integer> pages = PdfPlaces.measure(pdf, sheet);
            PdfLinks.describe(pdf);
            if (draft) {
                Watermark.across(pdf);
            }
            record(pdf, sheet, stamp);
            // The typesetter's own identity is made from the clock.
            pdf.getDocument().getTrailer().removeItem(COSName.ID);
            pdf.setDocumentId(Long.parseLong(stamp.content().substring(0, LONG_IN_HEXADECIMAL), 16));
            pdf.setVersion(1.7f);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return new Printed(bytes.toByteArray(), pages, pdf.getNumberOfPages());
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
    }

    /** The same pages and places for a screen, in a third of the time: no file to keep, with no tags for who hears it. The caller closes it. */
    public static PDDocument toLookAt(PrintDocument sheet, boolean draft) {
        try {
            PDDocument pdf = Loader.loadPDF(Typesetter.set(sheet, Typesetter.Use.LOOKED_AT));
            PdfPlaces.measure(pdf, sheet);
            if (draft) {
                Watermark.across(pdf);
            }
            return pdf;
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
    }

    /** The two records of a file must agree (ISO 19005-2, 6.6.3 names the pairs). */
    private static void record(PDDocument pdf, PrintDocument sheet, PdfStamp stamp) throws IOException {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(sheet.title());
        information.setSubject(sheet.description());
        information.setProducer(PRODUCER);
        stamp.dated().ifPresent(date -> {
            GregorianCalendar day = GregorianCalendar.from(date.atStartOfDay(ZoneOffset.UTC));
            day.setTimeZone(TimeZone.getTimeZone(ZoneOffset.UTC));
            information.setCreationDate(day);
        });
        pdf.setDocumentInformation(information);
        String date = stamp.dated().map(day -> "<xmp:CreateDate>" + day + "T00:00:00Z</xmp:CreateDate>").orElse("");
        String packet = PACKET.formatted(HtmlText.escaped(sheet.title()), HtmlText.escaped(sheet.description()), PRODUCER, date);
        pdf.getDocumentCatalog().setMetadata(new PDMetadata(pdf,
                new ByteArrayInputStream(packet.getBytes(StandardCharsets.UTF_8))));
    }

    /** With the description of the PDF/UA schema that ISO 19005-2, 6.6.2.3, asks for. */
    private static final String PACKET = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
             xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
             xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
            <dc:description><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:description>
            <pdf:Producer>%s</pdf:Producer>%s
            <pdfaid:part>2</pdfaid:part><pdfaid:conformance>A</pdfaid:conformance><pdfuaid:part>1</pdfuaid:part>
            </rdf:Description>
            <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
             xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
            <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
            <pdfaSchema:schema>PDF/UA Universal Accessibility Schema</pdfaSchema:schema>
            <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
            <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
            <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
            <pdfaProperty:name>part</pdfaProperty:name><pdfaProperty:valueType>Integer</pdfaProperty:valueType>
            <pdfaProperty:category>internal</pdfaProperty:category>
            <pdfaProperty:description>Indicates, which part of ISO 14289 standard is followed</pdfaProperty:description>
            </rdf:li></rdf:Seq></pdfaSchema:property></rdf:li></rdf:Bag></pdfaExtension:schemas>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="r"?>
            """;
}

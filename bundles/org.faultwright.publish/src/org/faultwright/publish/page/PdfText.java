/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.faultwright.publish.PlainText;
import org.w3c.dom.Node;

/** Writes a page as PDF/A-2a (ISO 19005-2) and PDF/UA-1 (ISO 14289-1), A4. */
public final class PdfText {
    static {
        // Its remarks are about our own markup and would reach a user's console.
        XRLog.setLoggingEnabled(false);
    }

    private PdfText() {
    }

    /**
     * @param style  the style sheet, one of ours
     * @param stamp  what makes the file's identity and date: never the clock
     * @param places ids in the page, by the names that a reader of the file finds them under
     * @param draft  whether DRAFT goes across every page
     */
    public static byte[] of(Page page, String style, PdfStamp stamp, Map<String, String> places, boolean draft) {
        page.head().add("style").verbatim(style);
        if (keepToFont(page.body().node())) {
            page.body().say("p", "small", PlainText.STAND_IN + " stands for a character that the font of this print lacks.");
        }
        return print(page, stamp, places, draft);
    }

    private static byte[] print(Page page, PdfStamp stamp, Map<String, String> places, boolean draft) {
        try (PDDocument pdf = new PDDocument(); PdfBoxRenderer renderer = builder(page, pdf).buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            List<String> tooLong = PdfPlaces.longerThanAPage(pdf, renderer, places);
            if (tooLong.stream().filter(page::startsOnItsOwnPage).count() > 0) {
                return print(page, stamp, places, draft);
            }
            PdfPlaces.name(pdf, renderer, places);
            PdfLinks.describe(pdf);
            if (draft) {
                Watermark.across(pdf);
            }
            stamp.press(pdf);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return bytes.toByteArray();
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
    }

    private static PdfRendererBuilder builder(Page page, PDDocument pdf) throws IOException {
        return new PdfRendererBuilder()
                .withW3cDocument(page.document(), null)
                .usePDDocument(pdf)
                .withProducer("Faultwright")
                .usePdfUaAccessibility(true)
                .usePdfAConformance(PdfAConformance.PDFA_2_A)
                .useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData())
                .useReplacementText(String.valueOf(PlainText.STAND_IN))
                .useUnicodeLineBreaker(new LineBreaks())
                // A card is made of what it holds: nothing is fetched from anywhere. A picture is its own address.
                .useExternalResourceAccessControl((address, type) -> address.startsWith("data:image/"),
                        ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                .useFont(PrintFonts.regular(pdf), PrintFonts.FAMILY, 400, PdfRendererBuilder.FontStyle.NORMAL, true)
                .useFont(PrintFonts.bold(pdf), PrintFonts.FAMILY, 700, PdfRendererBuilder.FontStyle.NORMAL, true);
    }

    /** Puts a stand-in for every character without a glyph. @return whether there was one */
    private static boolean keepToFont(Node node) {
        boolean replaced = false;
        if (node.getNodeType() == Node.TEXT_NODE) {
            String printable = PrintFonts.printable(node.getNodeValue());
            replaced = !printable.equals(node.getNodeValue());
            node.setNodeValue(printable);
        }
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            replaced |= keepToFont(child);
        }
        return replaced;
    }
}

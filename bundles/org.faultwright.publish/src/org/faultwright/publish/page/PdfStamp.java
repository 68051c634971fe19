/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import java.util.Optional;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * What a PDF's identity and date are made from, so that the same content gives the same bytes.
 *
 * @param content hexadecimal digits that stand for the content
 * @param dated   the day its revision is dated; absent leaves the date out of the file
 */
public record PdfStamp(String content, Optional<LocalDate> dated) {
    private static final int LONG_IN_HEXADECIMAL = 15;

    void press(PDDocument pdf) throws IOException {
        pdf.setDocumentId(Long.parseLong(content.substring(0, LONG_IN_HEXADECIMAL), 16));
        PDDocumentInformation information = pdf.getDocumentInformation();
        PDMetadata metadata = pdf.getDocumentCatalog().getMetadata();
        String xmp = new String(metadata.toByteArray(), StandardCharsets.UTF_8);
        // The two records of the date must agree (ISO 19005-2, 6.6.3 names the pairs).
        if (dated.isPresent()) {
            GregorianCalendar day = GregorianCalendar.from(dated.get().atStartOfDay(ZoneOffset.UTC));
            day.setTimeZone(TimeZone.getTimeZone(ZoneOffset.UTC));
            information.setCreationDate(day);
            xmp = xmp.replaceAll("(<xmp:CreateDate>)[^<]*", "$1" + dated.get() + "T00:00:00Z");
        } else {
            information.getCOSObject().removeItem(COSName.CREATION_DATE);
            xmp = xmp.replaceAll("\\s*<xmp:CreateDate>[^<]*</xmp:CreateDate>", "");
        }
        PDMetadata pressed = new PDMetadata(pdf, new ByteArrayInputStream(xmp.getBytes(StandardCharsets.UTF_8)));
        pdf.getDocumentCatalog().setMetadata(pressed);
    }
}

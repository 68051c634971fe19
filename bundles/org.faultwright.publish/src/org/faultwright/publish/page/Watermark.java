/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.PathIterator;
import java.io.IOException;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;

/** Draws DRAFT across every page, as outlines that a reader of the file's text does not meet (ISO 32000-1, 14.8.2.2). */
final class Watermark {
    private static final String WORD = "DRAFT";
    private static final float SHARE_OF_DIAGONAL = 0.72f;

    private Watermark() {
    }

    static void across(PDDocument pdf) throws IOException {
        GeneralPath word = outline();
        PDExtendedGraphicsState faint = new PDExtendedGraphicsState();
        faint.setNonStrokingAlphaConstant(0.1f);
        for (PDPage page : pdf.getPages()) {
            try (PDPageContentStream content = new PDPageContentStream(pdf, page, AppendMode.APPEND, true, true)) {
                content.beginMarkedContent(COSName.ARTIFACT, PDPropertyList.create(artifact()));
                content.setGraphicsStateParameters(faint);
                content.setNonStrokingColor(0.75f, 0.05f, 0.1f);
                draw(content, placed(word, page.getMediaBox()));
                content.fill();
                content.endMarkedContent();
            }
        }
    }

    private static COSDictionary artifact() {
        COSDictionary artifact = new COSDictionary();
        artifact.setItem(COSName.TYPE, COSName.getPDFName("Pagination"));
        artifact.setItem(COSName.SUBTYPE, COSName.getPDFName("Watermark"));
        return artifact;
    }

    private static GeneralPath outline() throws IOException {
        TrueTypeFont font = PrintFonts.bold();
        GeneralPath word = new GeneralPath();
        float pen = 0;
        for (char letter : WORD.toCharArray()) {
            String glyph = String.valueOf(letter);
            word.append(AffineTransform.getTranslateInstance(pen, 0).createTransformedShape(font.getPath(glyph)), false);
            pen += font.getWidth(glyph);
        }
        return word;
    }

    private static PathIterator placed(GeneralPath word, PDRectangle paper) {
        double scale = Math.hypot(paper.getWidth(), paper.getHeight()) * SHARE_OF_DIAGONAL / word.getBounds2D().getWidth();
        AffineTransform place = new AffineTransform();
        place.translate(paper.getWidth() / 2, paper.getHeight() / 2);
        place.rotate(Math.atan2(paper.getHeight(), paper.getWidth()));
        place.scale(scale, scale);
        place.translate(-word.getBounds2D().getCenterX(), -word.getBounds2D().getCenterY());
        return word.getPathIterator(place);
    }

    private static void draw(PDPageContentStream content, PathIterator path) throws IOException {
        float[] p = new float[6];
        float x = 0;
        float y = 0;
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> content.moveTo(x = p[0], y = p[1]);
                case PathIterator.SEG_LINETO -> content.lineTo(x = p[0], y = p[1]);
                case PathIterator.SEG_QUADTO -> {
                    // A quadratic curve as the cubic one that PDF knows.
                    content.curveTo(x + (p[0] - x) * 2 / 3, y + (p[1] - y) * 2 / 3, p[2] + (p[0] - p[2]) * 2 / 3,
                            p[3] + (p[1] - p[3]) * 2 / 3, p[2], p[3]);
                    x = p[2];
                    y = p[3];
                }
                case PathIterator.SEG_CUBICTO -> {
                    content.curveTo(p[0], p[1], p[2], p[3], p[4], p[5]);
                    x = p[4];
                    y = p[5];
                }
                default -> content.closePath();
            }
        }
    }
}

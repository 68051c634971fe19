/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.ArrayDeque;
import java.util.Deque;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDObjectReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;

/** Says at each link where it leads, for readers who hear the page (ISO 14289-1, 7.18.5). */
final class PdfLinks {
    private PdfLinks() {
    }

    static void describe(PDDocument pdf) {
        Deque<PDStructureNode> nodes = new ArrayDeque<>();
        nodes.add(pdf.getDocumentCatalog().getStructureTreeRoot());
        while (!nodes.isEmpty()) {
            PDStructureNode node = nodes.remove();
            for (Object kid : node.getKids()) {
                if (kid instanceof PDStructureElement element) {
                    nodes.add(element);
                } else if (kid instanceof PDObjectReference reference && node instanceof PDStructureElement link
                        && reference.getReferencedObject() instanceof PDAnnotation annotation) {
                    annotation.setContents(link.getAlternateDescription());
                }
            }
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.exports;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.publish.Export;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.LibraryExport;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.bench.BenchPage;
import org.faultwright.publish.card.CardHtml;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.publish.card.ChartPdf;
import org.faultwright.publish.chart.ChartSvg;
import org.faultwright.publish.index.IndexHtml;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.quality.QualityHtml;
import org.faultwright.publish.quality.QualityJson;
import org.faultwright.publish.quality.QualityPdf;
import org.faultwright.publish.text.PublishedText;
import org.faultwright.publish.tree.TreeJson;

/**
 * Every export there is, in the order of a listing; the index comes last, since it links to all the others. The command line and the dialog offer what stands here; what makes the file is a class of its own,
 * or a function beside it.
 */
public final class Exports {
    private static final List<Export> ALL = List.of(new CardPdf(), new CardPdf(Paper.A5), new CardPdf(Paper.A4_ACROSS), new CardPdf(Paper.LETTER),
            new CardHtml(), new BenchPage(), new ChartPdf(), new TreeJson(), new ChartSvg(), ProcedureExport.of("procedure-text", "Text as published", PublishedText::of),
            LibraryExport.of("library-text", "Text of the libraries used", PublishedText::of),
            new QualityHtml(), new QualityPdf(),
            FolderExport.of("quality-json", "Quality report, JSON", QualityJson::of), new IndexHtml());

    private Exports() {
    }

    public static List<Export> all() {
        return ALL;
    }

    public static Optional<Export> named(String name) {
        return ALL.stream().filter(export -> export.name().equals(name)).findFirst();
    }

    /** For a message: {@code card-pdf, card-html, …}. */
    public static String names() {
        return ALL.stream().map(Export::name).collect(Collectors.joining(", "));
    }
}

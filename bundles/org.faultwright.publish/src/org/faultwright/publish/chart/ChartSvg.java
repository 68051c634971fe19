/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.publish.Caution;
import org.faultwright.publish.FileName;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.page.SvgText;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;

/**
 * The steps as a picture with the numbers of the card: what follows what, from top to bottom. A conclusion has round ends and a routine
 * double sides, after the symbols "terminator" and "predefined process" of ISO 5807.
 */
public final class ChartSvg implements ProcedureExport {
    private static final int MARGIN = 24;
    private static final int HEAD = 98;
    private static final int CAUTION_LINES = 2;
    private static final int LEAST_WIDTH = 700;
    private static final String INK = "fill=\"#16242c\"";
    private static final String BESIDE = "fill=\"#3f4f58\"";
    private static final String EDGE = "stroke=\"#0b4a57\"";
    private static final String THIN = "stroke=\"#8fa3ab\"";

    @Override
    public String name() {
        return "chart-svg";
    }

    @Override
    public String title() {
        return "Chart of the steps, SVG";
    }

    @Override
    public PublishedFiles publish(Publication publication) {
        CardPlan plan = TypesetPlan.of(publication);
        Chart chart = chart(plan);
        int width = Math.max(LEAST_WIDTH, chart.width() + 2 * MARGIN);
        SvgText svg = new SvgText(width, HEAD + chart.height() + MARGIN, publication.title(), "Chart of the steps of "
                + publication.procedure().name().text() + ", " + publication.revision() + ". " + Caution.SENTENCES);
        head(svg, publication, width);
        chart.headings().forEach(heading -> svg.text(MARGIN + heading.x(), HEAD + heading.y(), 15, "font-weight=\"bold\" fill=\"#0b4a57\"",
                width - 2 * MARGIN, heading.words()));
        chart.boxes().stream().filter(ChartBox::open).forEach(box -> box(svg, box));
        chart.arrows().forEach(arrow -> svg.arrow(arrow.points().stream().map(point -> new int[] {MARGIN + point.x(), HEAD + point.y()})
                .toList(), arrow.otherwise()));
        chart.boxes().stream().filter(box -> !box.open()).forEach(box -> box(svg, box));
        return new PublishedFiles(FileName.of(publication.procedure(), ".svg"), "image/svg+xml", svg.bytes());
    }

    /** The procedure and the routines that are printed apart one under another; one that is printed in the box of a step stands in it. */
    private static Chart chart(CardPlan plan) {
        Map<String, String> numbers = new HashMap<>();
        Set<String> open = new HashSet<>();
        List<ChartMaker.Part> parts = new ArrayList<>();
        for (CardSection section : plan.sections()) {
            String path = section.isRoutine() ? section.graph().name().text() + "/" : "";
            String title = section.graph().title().isBlank() ? section.graph().name().text() : section.graph().title();
            parts.add(new ChartMaker.Part(section.isRoutine() ? "Routine " + section.letter() + ": " + title : "Steps", path, section.graph()));
            for (PlacedStep placed : section.steps()) {
                String key = path + placed.step().name().text();
                numbers.put(key, placed.label());
                List<PlacedStep> inside = plan.inside(placed);
                if (!inside.isEmpty()) {
                    open.add(key);
                }
                for (PlacedStep inner : inside) {
                    numbers.putIfAbsent(key + "/" + inner.step().name().text(), inner.label());
                    inner.run().caller().filter(within -> within.step() != placed.step())
                            .ifPresent(within -> numbers.putIfAbsent(key + "/" + within.step().name().text(), inner.label()));
                }
            }
        }
        return ChartMaker.of(parts, plan.scope(), open::contains,
                (key, step) -> Optional.ofNullable(numbers.get(key)).orElseGet(() -> plan.label(step)), () -> false);
    }

    private static void head(SvgText svg, Publication publication, int width) {
        int room = width - 2 * MARGIN;
        svg.text(MARGIN, MARGIN + 14, 22, "font-weight=\"bold\" " + INK, room, publication.title());
        svg.text(MARGIN, MARGIN + 34, 12, BESIDE, room, (publication.hasErrors()
                ? "DRAFT WITH OPEN ERRORS \u00B7 " : "") + publication.revision() + " \u00B7 digest " + publication.shortDigest());
        int line = MARGIN + 50;
        for (String words : TextMetrics.lines(Caution.SENTENCES, TextMetrics.WORDS, false, room, CAUTION_LINES)) {
            svg.text(MARGIN, line, TextMetrics.WORDS, BESIDE, width, words);
            line += ChartBox.SMALL_LINE + 1;
        }
    }

    private static void box(SvgText svg, ChartBox box) {
        int x = MARGIN + box.x();
        int y = HEAD + box.y();
        boolean end = box.isConclusion();
        svg.box(x, y, box.width(), box.height(), end ? 16 : 3, box.open() ? "fill=\"#f5f8f9\" " + EDGE
                : end ? "fill=\"#eef4ea\" stroke=\"#3c6e1f\" stroke-width=\"1.6\"" : "fill=\"#ffffff\" " + EDGE);
        int inset = end ? 14 : 8;
        if (box.routine().isPresent()) {
            inset = 12;
            svg.line(x + 5, y, x + 5, box.cells().isEmpty() ? y + box.height() : HEAD + box.cellTop(), EDGE);
            svg.line(x + box.width() - 5, y, x + box.width() - 5, box.cells().isEmpty() ? y + box.height() : HEAD + box.cellTop(), EDGE);
        }
        int number = TextMetrics.width(box.number(), TextMetrics.TITLE) + (box.number().isEmpty() ? 0 : 8);
        svg.text(x + inset, y + 15, TextMetrics.TITLE, "font-weight=\"bold\" class=\"number\" fill=\"" + (end ? "#3c6e1f" : "#0b4a57") + "\"", 80, box.number());
        svg.text(x + inset + number, y + 15, TextMetrics.WORDS, BESIDE, box.width() - number - 2 * inset,
                box.step().keyword() + (box.begins() ? ", begins" : ""));
        int line = y + ChartBox.HEAD + 12;
        for (String words : box.title()) {
            svg.text(x + inset, line, TextMetrics.TITLE, "font-weight=\"bold\" " + INK, box.width(), words);
            line += ChartBox.TITLE_LINE;
        }
        line -= 1;
        for (String words : box.small()) {
            svg.text(x + inset, line, TextMetrics.WORDS, BESIDE, box.width(), words);
            line += ChartBox.SMALL_LINE;
        }
        cells(svg, box, x);
    }

    private static void cells(SvgText svg, ChartBox box, int x) {
        int top = HEAD + box.cellTop();
        if (!box.cells().isEmpty()) {
            svg.line(x, top, x + box.width(), top, THIN);
        }
        for (ChartBox.Cell cell : box.cells()) {
            if (cell.x() > 0) {
                svg.line(x + cell.x(), top, x + cell.x(), top + box.cellHeight(), THIN);
            }
            int line = top + 13;
            for (String words : cell.lines()) {
                svg.text(x + cell.x() + cell.width() / 2, line, TextMetrics.WORDS, "text-anchor=\"middle\" " + INK, cell.width() + 20, words);
                line += ChartBox.SMALL_LINE;
            }
        }
    }
}

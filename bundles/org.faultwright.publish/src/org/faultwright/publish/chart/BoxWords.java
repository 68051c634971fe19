/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.page.PlainText;

/** What stands in the box of a step, and how large that makes it. */
final class BoxWords {
    private static final int WIDTH = 214;
    private static final int CONCLUSION_WIDTH = 190;
    private static final int CELL = 46;
    private static final int WIDEST_CELL = 104;
    private static final int TITLE_LINES = 3;
    private static final int BESIDE = 8;

    private BoxWords() {
    }

    /** @param led whether a result leads to it @param inside what stands in the box of an opened routine */
    static ChartBox box(String key, Step step, StepGraph graph, boolean begins, boolean led, Optional<Routine> routine, Optional<Chart> inside,
            String number) {
        List<List<String>> words = step.outcomes().stream().map(outcome -> words(outcome, graph)).toList();
        int[] widths = words.stream().mapToInt(BoxWords::width).toArray();
        int sum = 0;
        for (int width : widths) {
            sum += width;
        }
        int body = inside.map(chart -> chart.height() + 2 * ChartBox.PADDING).orElse(0);
        int room = step instanceof Step.Conclude ? CONCLUSION_WIDTH : WIDTH;
        int width = Math.max(Math.max(room, sum), inside.map(chart -> chart.width() + 4 * ChartBox.PADDING).orElse(0));
        List<ChartBox.Cell> cells = new ArrayList<>();
        int x = 0;
        for (int i = 0; i < widths.length; i++) {
            int wide = i == widths.length - 1 ? width - x : widths[i] + (width - sum) / widths.length;
            cells.add(new ChartBox.Cell(step.outcomes().get(i), x, wide, words.get(i)));
            x += wide;
        }
        int most = words.stream().mapToInt(List::size).max().orElse(0);
        int cellHeight = cells.isEmpty() ? 0 : most * ChartBox.SMALL_LINE + 7;
        int beside = step instanceof Step.Conclude ? 14 : routine.isPresent() ? 14 : BESIDE;
        List<String> title = TextMetrics.lines(step.title().isBlank() ? step.name().text() : step.title(), TextMetrics.TITLE, true,
                width - 2 * beside, TITLE_LINES);
        List<String> small = new ArrayList<>(small(step, routine, inside.isPresent(), width - 2 * beside));
        if (!led && !begins) {
            small.add("nothing leads here");
        }
        int height = ChartBox.HEAD + title.size() * ChartBox.TITLE_LINE + small.size() * ChartBox.SMALL_LINE + 2 * ChartBox.PADDING
                + body + cellHeight;
        return new ChartBox(key, step, begins, routine, inside.isPresent(), number, title, List.copyOf(small), List.copyOf(cells), 0, 0, width, height, body,
                cellHeight);
    }

    private static List<String> words(Outcome outcome, StepGraph graph) {
        List<String> words = new ArrayList<>(TextMetrics.lines(PlainText.phrase(outcome.key()), TextMetrics.WORDS, false, WIDEST_CELL - BESIDE, 2));
        outcome.repeat().ifPresent(repeat -> words.add("at most " + repeat.atMost() + "\u00D7"));
        String without = outcome.target().map(name -> unmarked(name, graph)).orElse("\u2192 ?");
        if (!without.isEmpty()) {
            words.addAll(TextMetrics.lines(without, TextMetrics.WORDS, false, WIDEST_CELL - BESIDE, 1));
        }
        outcome.repeat().map(repeat -> unmarked(repeat.otherwise(), graph)).filter(other -> !other.isEmpty())
                .ifPresent(other -> words.addAll(TextMetrics.lines("then " + other, TextMetrics.WORDS, false, WIDEST_CELL - BESIDE, 1)));
        return words;
    }

    /** Where a result leads that has no arrow: back to what performs the routine, or to a name that there is not. */
    private static String unmarked(Name name, StepGraph graph) {
        return graph.step(name).isPresent() ? "" : graph.isExit(name) ? "\u21A9 " + PlainText.phrase(name.text()) : "\u2192 ? " + name.text();
    }

    private static int width(List<String> lines) {
        return Math.max(CELL, lines.stream().mapToInt(line -> TextMetrics.width(line, TextMetrics.WORDS)).max().orElse(0) + BESIDE);
    }

    private static List<String> small(Step step, Optional<Routine> routine, boolean open, int room) {
        if (step instanceof Step.Conclude end) {
            String finds = end.findsNothing().isPresent() ? "finds nothing"
                    : end.finds().isEmpty() ? "" : "finds " + end.finds().stream().map(Name::text).collect(Collectors.joining(", "));
            String refers = end.refersTo().map(to -> "refers to " + to.value()).orElse("");
            String words = finds.isEmpty() || refers.isEmpty() ? finds + refers : finds + ", " + refers;
            return TextMetrics.lines(words, TextMetrics.WORDS, false, room, 2);
        }
        if (step instanceof Step.Perform perform) {
            String name = perform.routine().map(Name::text).orElse("?");
            return TextMetrics.lines(routine.isEmpty() ? "routine " + name + ": not found"
                    : open ? "routine " + name : "routine " + name + ", " + counted(routine.get().steps().size()), TextMetrics.WORDS, false, room, 1);
        }
        return List.of();
    }

    private static String counted(int steps) {
        return steps == 1 ? "1 step" : steps + " steps";
    }
}

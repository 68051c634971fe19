/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.procedure.Step;
import org.faultwright.publish.chart.Chart;
import org.faultwright.publish.chart.ChartArrow;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.publish.chart.TextMetrics;
import org.faultwright.publish.page.PlainText;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/**
 * Draws a chart in its own units. A conclusion has round ends and a routine double sides, after the symbols "terminator" and "predefined
 * process" of ISO 5807; the step in hand has a thick edge and says so; the steps of a path are numbered.
 */
final class ChartPainter {
    private static final int ROUND = 32;
    private static final int SIDE = 5;
    private static final int TAG = 15;
    private static final String ELLIPSIS = "\u2026";

    private final Font title;
    private final Font words;
    private final Map<String, List<String>> fitted = new HashMap<>();
    private boolean times = true;
    private Optional<ArrowWords> figures = Optional.empty();

    ChartPainter(Control control) {
        FontData data = control.getFont().getFontData()[0];
        int dots = control.getDisplay().getDPI().y;
        title = new Font(control.getDisplay(), new FontData(data.getName(), points(TextMetrics.TITLE, dots), SWT.BOLD));
        words = new Font(control.getDisplay(), new FontData(data.getName(), points(TextMetrics.WORDS, dots), SWT.NORMAL));
    }

    private static int points(int size, int dots) {
        return Math.max(1, Math.round(size * 72f / dots));
    }

    void dispose() {
        title.dispose();
        words.dispose();
    }

    void tellTimes(boolean told) {
        times = told;
    }

    Optional<ArrowWords> figures() {
        return figures;
    }

    void tellFigures(Optional<ArrowWords> told) {
        figures = told;
    }

    /** Before another chart is drawn. */
    void forget() {
        fitted.clear();
    }

    /** Where a routine is opened and folded. */
    static Rectangle openArea(ChartBox box) {
        return new Rectangle(box.x() + box.width() - SIDE - 44, box.y(), 44 + SIDE, ChartBox.HEAD);
    }

    /** @param seen what of the chart is seen @param cell the chosen result of the step in hand; none when negative */
    void paint(GC gc, Chart chart, Rectangle seen, String inHand, int cell, PathInChart path) {
        gc.setFont(title);
        gc.setForeground(Palette.now().of(Use.DESK_WORDS));
        chart.headings().forEach(heading -> gc.drawText(heading.words(), heading.x(), heading.y() - 14, true));
        List<ChartBox> boxes = chart.boxes().stream().filter(box -> seen.intersects(box.x() - TAG, box.y() - TAG, box.width() + 2 * TAG,
                box.height() + 2 * TAG)).toList();
        boxes.stream().filter(ChartBox::open).forEach(box -> box(gc, box, box.key().equals(inHand), cell));
        for (ChartArrow arrow : chart.arrows()) {
            if (!path.arrows().contains(arrow)) {
                arrow(gc, arrow, seen, false);
            }
        }
        path.arrows().forEach(arrow -> arrow(gc, arrow, seen, true));
        boxes.stream().filter(box -> !box.open()).forEach(box -> box(gc, box, box.key().equals(inHand), cell));
        boxes.forEach(box -> numbers(gc, box, path));
        figures.ifPresent(told -> boxes.forEach(box -> chart.from(box.key()).forEach(arrow -> figures(gc, told.of(box, arrow), arrow))));
    }

    /** Where the arrow begins, right of it: there is room under a box. */
    private void figures(GC gc, List<String> lines, ChartArrow arrow) {
        gc.setFont(words);
        gc.setBackground(Palette.now().of(Use.DESK));
        gc.setForeground(Palette.now().of(Use.DESK_WORDS));
        int y = arrow.points().get(0).y() + 2;
        for (String line : lines) {
            gc.drawText(line, arrow.points().get(0).x() + 3, y, false);
            y += ChartBox.SMALL_LINE - 1;
        }
    }

    private static void arrow(GC gc, ChartArrow arrow, Rectangle seen, boolean lit) {
        int[] corners = new int[arrow.points().size() * 2];
        int least = Integer.MAX_VALUE;
        int most = Integer.MIN_VALUE;
        for (int i = 0; i < arrow.points().size(); i++) {
            corners[2 * i] = arrow.points().get(i).x();
            corners[2 * i + 1] = arrow.points().get(i).y();
            least = Math.min(least, corners[2 * i + 1]);
            most = Math.max(most, corners[2 * i + 1]);
        }
        if (most < seen.y || least > seen.y + seen.height) {
            return;
        }
        gc.setForeground(Palette.now().of(lit ? Use.QUANTITY : Use.HEADING));
        gc.setBackground(Palette.now().of(lit ? Use.QUANTITY : Use.HEADING));
        gc.setLineWidth(lit ? 4 : 1);
        gc.setLineStyle(arrow.otherwise() ? SWT.LINE_DASH : SWT.LINE_SOLID);
        int x = corners[corners.length - 2];
        int y = corners[corners.length - 1];
        corners[corners.length - 1] -= 5;
        gc.drawPolyline(corners);
        gc.setLineStyle(SWT.LINE_SOLID);
        int wide = lit ? 6 : 4;
        gc.fillPolygon(new int[] {x, y, x - wide, y - 8, x + wide, y - 8});
        gc.setLineWidth(1);
    }

    private void box(GC gc, ChartBox box, boolean inHand, int cell) {
        Palette palette = Palette.now();
        int round = box.isConclusion() ? ROUND : 5;
        gc.setBackground(palette.of(box.open() ? Use.WINDOW : Use.PAPER));
        gc.fillRoundRectangle(box.x(), box.y(), box.width(), box.height(), round, round);
        if (inHand && cell >= 0 && cell < box.cells().size()) {
            gc.setBackground(palette.of(Use.DESK));
            gc.fillRectangle(box.x() + box.cells().get(cell).x(), box.cellTop(), box.cells().get(cell).width(), box.cellHeight());
        }
        gc.setForeground(palette.of(inHand ? Use.QUANTITY : Use.HEADING));
        gc.setLineWidth(inHand ? 4 : box.isConclusion() ? 2 : 1);
        gc.drawRoundRectangle(box.x(), box.y(), box.width(), box.height(), round, round);
        gc.setLineWidth(1);
        boolean routine = box.step() instanceof Step.Perform;
        gc.setForeground(palette.of(Use.HEADING));
        if (routine) {
            gc.drawLine(box.x() + SIDE, box.y(), box.x() + SIDE, box.cellTop());
            gc.drawLine(box.x() + box.width() - SIDE, box.y(), box.x() + box.width() - SIDE, box.cellTop());
        }
        int inset = box.isConclusion() ? 14 : routine ? SIDE + 7 : 8;
        head(gc, box, inHand, inset);
        int room = box.width() - 2 * inset;
        int y = box.y() + ChartBox.HEAD;
        gc.setFont(title);
        gc.setForeground(palette.of(Use.NAME));
        String said = box.step().title().isBlank() ? box.step().name().text() : box.step().title();
        for (String line : fitted(gc, box.key(), said, room, box.title().size())) {
            gc.drawText(line, box.x() + inset, y, true);
            y += ChartBox.TITLE_LINE;
        }
        gc.setFont(words);
        gc.setForeground(palette.of(Use.TEXT));
        for (String line : box.small()) {
            gc.drawText(fitted(gc, "small", line, room, 1).get(0), box.x() + inset, y, true);
            y += ChartBox.SMALL_LINE;
        }
        cells(gc, box);
    }

    private void head(GC gc, ChartBox box, boolean inHand, int inset) {
        Palette palette = Palette.now();
        gc.setFont(words);
        int right = box.x() + box.width() - inset;
        if (box.routine().isPresent()) {
            String word = box.open() ? "fold" : "open";
            gc.setForeground(palette.of(Use.LINK));
            Point size = gc.textExtent(word);
            right -= size.x;
            gc.drawText(word, right, box.y() + 3, true);
            gc.drawLine(right, box.y() + 2 + size.y, right + size.x, box.y() + 2 + size.y);
            right -= 8;
        }
        String time = times ? box.step().frame().time().flatMap(written -> TimeText.seconds(written.value())).map(TimeText::written).orElse("") : "";
        if (!time.isEmpty()) {
            gc.setForeground(palette.of(Use.QUANTITY));
            right -= gc.textExtent(time).x;
            gc.drawText(time, right, box.y() + 3, true);
            right -= 8;
        }
        gc.setForeground(palette.of(inHand ? Use.QUANTITY : Use.BESIDE));
        String kind = (box.begins() ? "begins: " : "") + box.step().keyword() + (inHand ? ", in hand" : "");
        gc.drawText(fitted(gc, "head", kind, right - box.x() - inset, 1).get(0), box.x() + inset, box.y() + 3, true);
    }

    private void cells(GC gc, ChartBox box) {
        Palette palette = Palette.now();
        if (box.cells().isEmpty()) {
            return;
        }
        gc.setForeground(palette.of(Use.PAGE_EDGE));
        gc.drawLine(box.x() + 1, box.cellTop(), box.x() + box.width() - 1, box.cellTop());
        for (ChartBox.Cell cell : box.cells()) {
            int x = box.x() + cell.x();
            if (cell.x() > 0) {
                gc.setForeground(palette.of(Use.PAGE_EDGE));
                gc.drawLine(x, box.cellTop(), x, box.y() + box.height() - 1);
            }
            gc.setForeground(palette.of(Use.NAME));
            int y = box.cellTop() + 2;
            for (String line : cell.lines()) {
                String shown = fitted(gc, "cell", line, cell.width() - 4, 1).get(0);
                gc.drawText(shown, x + (cell.width() - gc.textExtent(shown).x) / 2, y, true);
                y += ChartBox.SMALL_LINE;
            }
        }
    }

    /** Which places on the path a step has. */
    private void numbers(GC gc, ChartBox box, PathInChart path) {
        StringBuilder places = new StringBuilder();
        for (int i = 0; i < path.boxes().size(); i++) {
            if (path.boxes().get(i).equals(box.key())) {
                places.append(places.isEmpty() ? "" : ", ").append(i + 1);
            }
        }
        if (places.isEmpty()) {
            return;
        }
        gc.setFont(title);
        Point size = gc.textExtent(places.toString());
        int width = Math.max(TAG, size.x + 8);
        gc.setBackground(Palette.now().of(Use.QUANTITY));
        int x = box.x() + 4 - width; // outside, so that the first word can be read
        gc.fillRoundRectangle(x, box.y() - TAG / 2, width, TAG + 2, 8, 8);
        gc.setForeground(Palette.now().of(Use.PAPER));
        gc.drawText(places.toString(), x + (width - size.x) / 2, box.y() - TAG / 2 + (TAG + 2 - size.y) / 2, true);
    }

    /** Words broken at spaces into lines of the font at hand; the last is cut where there are more. */
    private List<String> fitted(GC gc, String kind, String said, int room, int most) {
        return fitted.computeIfAbsent(kind + '\n' + room + '\n' + most + '\n' + said, any -> broken(gc, PlainText.line(said), room, most));
    }

    private static List<String> broken(GC gc, String said, int whole, int most) {
        // letters that are drawn smaller than they were measured are a little wider
        int room = whole - whole / 16;
        List<String> lines = new ArrayList<>();
        String left = said;
        while (!left.isEmpty() && lines.size() < most) {
            int fits = fits(gc, left, room);
            if (fits == left.length()) {
                lines.add(left);
                return lines;
            }
            if (lines.size() == most - 1) {
                lines.add(left.substring(0, fits(gc, left, room - gc.textExtent(ELLIPSIS).x)).strip() + ELLIPSIS);
                return lines;
            }
            int gap = left.lastIndexOf(' ', fits);
            int end = gap > 0 ? gap : Math.max(1, fits);
            lines.add(left.substring(0, end));
            left = left.substring(end).strip();
        }
        return lines.isEmpty() ? List.of("") : lines;
    }

    /** How many characters from the beginning fit. */
    private static int fits(GC gc, String said, int room) {
        int low = 0;
        int high = said.length();
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (gc.textExtent(said.substring(0, middle)).x <= room) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }
}

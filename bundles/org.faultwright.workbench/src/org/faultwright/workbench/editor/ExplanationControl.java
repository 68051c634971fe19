/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.node.Node;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.text.AbstractInformationControl;
import org.eclipse.jface.text.IInformationControlCreator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.language.server.Markdown;

/** Shows what is said of the words under the pointer: paragraphs, and tables with their columns under one another. */
final class ExplanationControl extends AbstractInformationControl {
    private static final int MARGIN = 8;
    private static final int BETWEEN_COLUMNS = 14;
    /** In average characters. */
    private static final int WIDEST_CELL = 44;
    private static final int WIDEST_LINE = 100;
    /** In characters; nobody reads more of it beside a pointer. */
    private static final int LONGEST = 8_000;

    private final boolean kept;
    private ScrolledComposite scroll;
    private Composite body;

    ExplanationControl(Shell parent) {
        super(parent, "F2 to keep");
        kept = false;
        create();
    }

    private ExplanationControl(Shell parent, boolean resizable) {
        super(parent, resizable);
        kept = resizable;
        create();
    }

    @Override
    protected void createContent(Composite parent) {
        scroll = new ScrolledComposite(parent, SWT.V_SCROLL | SWT.H_SCROLL);
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        body = new Composite(scroll, SWT.NONE);
        GridLayoutFactory.fillDefaults().margins(MARGIN, MARGIN).spacing(0, 4).applyTo(body);
        scroll.setContent(body);
        paint(scroll);
        paint(body);
    }

    private static void paint(Control control) {
        Display display = control.getDisplay();
        control.setBackground(display.getSystemColor(SWT.COLOR_LIST_BACKGROUND));
        control.setForeground(display.getSystemColor(SWT.COLOR_LIST_FOREGROUND));
    }

    @Override
    public void setInformation(String markdown) {
        for (Control old : body.getChildren()) {
            old.dispose();
        }
        String shown = markdown.length() > LONGEST ? markdown.substring(0, LONGEST) + "\u2026" : markdown;
        for (Node block = Markdown.read(shown).getFirstChild(); block != null; block = block.getNext()) {
            if (block instanceof TableBlock table) {
                table(ExplanationWords.rows(table));
            } else {
                paragraph(ExplanationWords.of(block));
            }
        }
        body.layout(true, true);
        scroll.setMinSize(body.computeSize(SWT.DEFAULT, SWT.DEFAULT));
    }

    private void paragraph(ExplanationWords words) {
        StyledText text = new StyledText(body, SWT.WRAP | SWT.MULTI | SWT.READ_ONLY);
        paint(text);
        text.setCaret(null);
        text.setText(words.words());
        text.setStyleRanges(words.bold().stream().map(bold -> new StyleRange(bold.start(), bold.length(), null, null, SWT.BOLD)).toArray(StyleRange[]::new));
        GridDataFactory.fillDefaults().grab(true, false).hint(Math.min(room(), capped(text, WIDEST_LINE)), SWT.DEFAULT).applyTo(text);
    }

    /** Rows with as many columns as anything stands in; a line between the heading and the rest. */
    private void table(List<List<String>> rows) {
        int columns = rows.stream().mapToInt(List::size).max().orElse(1);
        Composite table = new Composite(body, SWT.NONE);
        paint(table);
        GridLayoutFactory.fillDefaults().numColumns(columns).spacing(BETWEEN_COLUMNS, 3).applyTo(table);
        int[] widths = new int[columns];
        List<Label> cells = new ArrayList<>();
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < columns; column++) {
                Label cell = new Label(table, SWT.WRAP);
                paint(cell);
                cell.setText(column < rows.get(row).size() ? rows.get(row).get(column).replace("&", "&&") : "");
                widths[column] = Math.max(widths[column], capped(cell, WIDEST_CELL));
                cells.add(cell);
            }
            if (row == 0) {
                Label line = new Label(table, SWT.SEPARATOR | SWT.HORIZONTAL);
                GridDataFactory.fillDefaults().span(columns, 1).applyTo(line);
            }
        }
        int widest = widest(widths, room() - BETWEEN_COLUMNS * (columns - 1));
        cells.forEach(cell -> GridDataFactory.fillDefaults().hint(Math.min(widest, capped(cell, WIDEST_CELL)), SWT.DEFAULT).applyTo(cell));
    }

    /** How wide everything in here may be, so that nothing is looked for beyond the edge. */
    private int room() {
        return computeSizeConstraints(0, 0).x - computeTrim().width - scroll.getVerticalBar().getSize().x - 2 * MARGIN - 2;
    }

    /** How wide a column may be at most, so that all of them find room beside one another: narrow ones keep their width, and the wide ones share the rest. */
    static int widest(int[] widths, int room) {
        int[] sorted = Arrays.stream(widths).sorted().toArray();
        int left = room;
        for (int i = 0; i < sorted.length; i++) {
            int share = left / (sorted.length - i);
            if (sorted[i] > share) {
                return Math.max(1, share);
            }
            left -= sorted[i];
        }
        return sorted[sorted.length - 1];
    }

    /** The window system may draw letters larger than their points say, so they are measured. */
    private static int capped(Control control, int characters) {
        GC gc = new GC(control);
        try {
            gc.setFont(control.getFont());
            int widest = (int) (characters * gc.getFontMetrics().getAverageCharacterWidth());
            return Math.min(widest, control.computeSize(SWT.DEFAULT, SWT.DEFAULT).x);
        } finally {
            gc.dispose();
        }
    }

    @Override
    public boolean hasContents() {
        return body.getChildren().length > 0;
    }

    @Override
    public Point computeSizeHint() {
        Rectangle trim = computeTrim();
        Point size = body.computeSize(SWT.DEFAULT, SWT.DEFAULT);
        Point most = computeSizeConstraints(0, 0);
        int bar = size.y + trim.height > most.y ? scroll.getVerticalBar().getSize().x : 0;
        return new Point(Math.min(size.x + trim.width + bar + 2, most.x), Math.min(size.y + trim.height + 2, most.y));
    }

    /** As large as its words need, within nearly all of the screen: in large letters a table takes that much. */
    @Override
    public Point computeSizeConstraints(int widthInChars, int heightInChars) {
        Rectangle screen = getShell().getMonitor().getClientArea();
        return new Point(screen.width * 19 / 20, screen.height * 19 / 20);
    }

    @Override
    public IInformationControlCreator getInformationPresenterControlCreator() {
        return parent -> new ExplanationControl(parent, true);
    }

    @Override
    public void setFocus() {
        super.setFocus();
        if (kept) {
            scroll.setFocus();
        }
    }

    @Override
    public void setBackgroundColor(Color background) {
        // the colours of the text that it lies on
    }

    @Override
    public void setForegroundColor(Color foreground) {
        // as above
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleControlAdapter;
import org.eclipse.swt.accessibility.AccessibleControlEvent;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.graphics.TextLayout;
import org.eclipse.swt.graphics.Transform;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.ScrollBar;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Step;
import org.faultwright.publish.chart.Chart;
import org.faultwright.publish.chart.ChartArrow;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.publish.page.PlainText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/** Shows a chart in any size; it is walked by keys and chosen from by the mouse. */
final class ChartCanvas extends Canvas {
    private static final double STEP_OF_SIZE = 1.2;
    private static final double SMALLEST = 0.02;
    /** How wide a letter is in pixels where the window system makes nothing larger. */
    private static final double USUAL_LETTERS = 7;
    private static final double LARGEST = 3;
    /** Smaller words are not read: a chart that is larger than its room begins at this size. */
    private static final double STILL_READ = 0.7;
    /** In pixels, around the chart; what is drawn so near to an edge of the room scrolls. */
    static final int MARGIN = 14;
    private static final int MILLISECONDS_BETWEEN_SCROLLS = 40;

    private final ChartPainter painter;
    private final ChartActs acts;
    private final Deque<String> come = new ArrayDeque<>();
    private Chart chart;
    private PathInChart path = PathInChart.NONE;
    private List<PathStep> toLight = List.of();
    private String inHand = "";
    private int cell;
    private String words = "";
    private String notice = "";
    private String next = "";
    private Optional<ArrowDrag> drag = Optional.empty();
    private boolean goesOn;
    private double size = 1;
    private boolean sized;
    private int left;
    private int top;

    ChartCanvas(Composite parent, ChartActs acts) {
        super(parent, SWT.V_SCROLL | SWT.H_SCROLL | SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        this.acts = acts;
        painter = new ChartPainter(this);
        addPaintListener(event -> paint(event.gc));
        addListener(SWT.Resize, event -> resized());
        addListener(SWT.MouseDown, this::press);
        addListener(SWT.MouseDoubleClick, event -> boxAt(event).ifPresent(acts::goTo));
        addListener(SWT.MouseMove, this::move);
        addListener(SWT.MouseUp, this::release);
        addListener(SWT.MouseVerticalWheel, this::wheel);
        addListener(SWT.KeyDown, this::key);
        addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        addListener(SWT.FocusIn, event -> redraw());
        addListener(SWT.FocusOut, event -> redraw());
        addListener(SWT.Dispose, event -> painter.dispose());
        getVerticalBar().addListener(SWT.Selection, event -> scrolledTo(left, getVerticalBar().getSelection()));
        getHorizontalBar().addListener(SWT.Selection, event -> scrolledTo(getHorizontalBar().getSelection(), top));
        tellReaders();
    }

    /** By the key for menus and on a step, that of the step; where the mouse points at no step, that of the whole chart. */
    void setMenus(Menu ofTheStep, Menu ofTheChart) {
        setMenu(ofTheStep);
        addListener(SWT.MenuDetect, event -> {
            Point at = toControl(event.x, event.y);
            setToolTipText(null); // it would lie over the menu
            setMenu(event.detail == SWT.MENU_MOUSE && boxAt(at.x, at.y).isEmpty() ? ofTheChart : ofTheStep);
        });
    }

    Optional<Chart> chart() {
        return Optional.ofNullable(chart);
    }

    Optional<ChartBox> inHand() {
        return chart().flatMap(one -> one.box(inHand));
    }

    List<String> lit() {
        return path.boxes();
    }

    String said() {
        return words;
    }

    /** The chosen result of the step in hand, counted from 0. */
    int cell() {
        return cell;
    }

    String notice() {
        return notice;
    }

    /** Says what came of something that was asked for; it goes with the next thing that is done here. */
    void tell(String sentence) {
        notice = sentence;
        redraw();
        toldReaders();
    }

    /** Takes a step in hand as soon as it is drawn. */
    void takeNext(String key) {
        next = key;
    }

    /** Takes a step in hand as if it had been clicked. */
    void find(String key) {
        come.clear();
        walk(key);
    }

    Optional<ArrowWords> figures() {
        return painter.figures();
    }

    void tellFigures(Optional<ArrowWords> figures) {
        painter.tellFigures(figures);
        redraw();
    }

    /** Shows words instead of a chart. */
    void say(String instead) {
        words = instead;
        chart = null;
        sized = false;
        path = PathInChart.NONE;
        come.clear();
        inHand = "";
        fitBars();
        redraw();
        toldReaders();
    }

    /** Keeps the last chart, if there is one, and says why it is not a new one. */
    void waits(String why) {
        words = why;
        redraw();
        toldReaders();
    }

    void show(Chart made) {
        Optional<ChartBox> before = inHand();
        Point was = before.map(box -> new Point(screenX(box.x()), screenY(box.y()))).orElse(null);
        chart = made;
        words = "";
        path = PathInChart.of(toLight, made);
        painter.forget();
        drag = Optional.empty();
        if (!sized) {
            beginAt();
        }
        if (made.box(next).isPresent()) {
            take(next, 0);
            next = "";
        }
        if (inHand().isEmpty()) {
            made.boxes().stream().findFirst().ifPresent(first -> take(first.key(), 0));
        }
        Optional<ChartBox> now = inHand();
        if (was != null && now.isPresent()) {
            // what is looked at stays where it is while the chart grows around it
            left += screenX(now.get().x()) - was.x;
            top += screenY(now.get().y()) - was.y;
        }
        fitBars();
        redraw();
        toldReaders();
    }

    /** The step at the cursor of the text; where it is not drawn, the step that performs its routine. */
    void take(Step step, String routine) {
        if (chart == null || inHand().filter(box -> box.step() == step).isPresent()) {
            return;
        }
        chart.boxes().stream().filter(box -> box.step() == step).findFirst()
                .or(() -> chart.boxes().stream().filter(box -> !box.open() && box.routine().filter(one -> one.name().text().equals(routine)).isPresent())
                        .findFirst())
                .ifPresent(box -> take(box.key(), 0));
    }

    void light(List<PathStep> steps) {
        toLight = steps;
        path = chart == null ? PathInChart.NONE : PathInChart.of(steps, chart);
        redraw();
    }

    void tellTimes(boolean told) {
        painter.tellTimes(told);
        redraw();
    }

    void larger() {
        size(size * STEP_OF_SIZE);
    }

    void smaller() {
        size(size / STEP_OF_SIZE);
    }

    void fit() {
        if (chart != null) {
            Rectangle room = getClientArea();
            size(Math.min((room.width - 2 * MARGIN) / (double) Math.max(1, chart.width()),
                    (room.height - 2 * MARGIN) / (double) Math.max(1, chart.height())));
        }
    }

    /** The whole chart where it can be read then; else the first steps at a size that can be read. */
    private void beginAt() {
        Rectangle room = getClientArea();
        if (room.width <= 2 * MARGIN || room.height <= 2 * MARGIN) {
            return; // not laid out yet: the first resize comes back here
        }
        sized = true;
        double whole = Math.min((room.width - 2 * MARGIN) / (double) Math.max(1, chart.width()),
                (room.height - 2 * MARGIN) / (double) Math.max(1, chart.height()));
        double letters = letters();
        size = Math.min(letters, Math.max(whole, STILL_READ * letters));
        ChartBox first = chart.boxes().get(0);
        left = (int) ((first.x() + first.width() / 2) * size) + MARGIN - room.width / 2;
        top = 0;
        fitBars();
    }

    /** How much larger the letters of the window are than usual: who needs them large needs them so in here. */
    private double letters() {
        GC gc = new GC(this);
        try {
            return Math.max(1, gc.getFontMetrics().getAverageCharacterWidth() / USUAL_LETTERS);
        } finally {
            gc.dispose();
        }
    }

    private void resized() {
        if (chart != null && !sized) {
            beginAt();
        }
        fitBars();
    }

    private void size(double wanted) {
        Rectangle room = getClientArea();
        double now = Math.max(SMALLEST, Math.min(LARGEST, wanted));
        Optional<ChartBox> held = inHand();
        double x = held.map(box -> box.x() + box.width() / 2.0).orElse((left + room.width / 2.0) / size);
        double y = held.map(box -> box.y() + box.height() / 2.0).orElse((top + room.height / 2.0) / size);
        size = now;
        left = (int) (x * size) + MARGIN - room.width / 2;
        top = (int) (y * size) + MARGIN - room.height / 2;
        fitBars();
        redraw();
    }

    private void scrolledTo(int x, int y) {
        left = x;
        top = y;
        redraw();
    }

    private void fitBars() {
        Rectangle room = getClientArea();
        left = bar(getHorizontalBar(), left, chart == null ? 0 : (int) (chart.width() * size) + 2 * MARGIN, room.width);
        top = bar(getVerticalBar(), top, chart == null ? 0 : (int) (chart.height() * size) + 2 * MARGIN, room.height);
    }

    private static int bar(ScrollBar bar, int place, int all, int seen) {
        int kept = Math.max(0, Math.min(place, all - seen));
        bar.setValues(kept, 0, Math.max(1, Math.max(all, seen)), Math.max(1, seen), 40, Math.max(1, seen));
        bar.setVisible(all > seen);
        return kept;
    }

    /** Where the chart begins: in the middle where there is more room than it needs. */
    private int offsetX() {
        int all = (int) (chart.width() * size) + 2 * MARGIN;
        return MARGIN - left + Math.max(0, (getClientArea().width - all) / 2);
    }

    private int offsetY() {
        return MARGIN - top;
    }

    private int screenX(int x) {
        return chart == null ? 0 : (int) (x * size) + offsetX();
    }

    private int screenY(int y) {
        return (int) (y * size) + offsetY();
    }

    /** Where a box is drawn, in pixels of the canvas. */
    Rectangle area(ChartBox box) {
        return new Rectangle(screenX(box.x()), screenY(box.y()), (int) (box.width() * size), (int) (box.height() * size));
    }

    private void paint(GC gc) {
        Rectangle room = getClientArea();
        gc.setBackground(Palette.now().of(Use.DESK));
        gc.fillRectangle(room);
        gc.setAntialias(SWT.ON);
        gc.setTextAntialias(SWT.ON);
        if (chart != null) {
            Transform scaled = new Transform(gc.getDevice());
            scaled.translate(offsetX(), offsetY());
            scaled.scale((float) size, (float) size);
            gc.setTransform(scaled);
            Rectangle seen = new Rectangle((int) (-offsetX() / size), (int) (-offsetY() / size), (int) (room.width / size) + 2,
                    (int) (room.height / size) + 2);
            painter.paint(gc, chart, seen, inHand, isFocusControl() ? cell : -1, path);
            gc.setTransform(null);
            scaled.dispose();
        }
        drag.filter(ArrowDrag::moved).ifPresent(arrow -> arrow.paint(gc, boxAt(arrow.x(), arrow.y()).map(this::area).orElse(null)));
        if (!words.isEmpty() && chart == null) {
            gc.setFont(getFont());
            gc.setForeground(Palette.now().of(Use.DESK_WORDS));
            gc.drawText(words, Math.max(6, (room.width - gc.textExtent(words).x) / 2), room.height / 3 + 5, true);
        } else if (!words.isEmpty() || !notice.isEmpty()) {
            banner(gc, room, words.isEmpty() ? notice : words);
        }
    }

    /** Over the upper edge, in as many lines as it takes. */
    private void banner(GC gc, Rectangle room, String sentence) {
        TextLayout lines = new TextLayout(gc.getDevice());
        try {
            lines.setFont(getFont());
            lines.setText(sentence);
            lines.setWidth(Math.max(40, room.width - 16));
            lines.setAlignment(SWT.CENTER);
            int height = lines.getBounds().height + 10;
            gc.setBackground(Palette.now().of(Use.DESK));
            gc.fillRectangle(0, 0, room.width, height);
            gc.setForeground(Palette.now().of(Use.PAGE_EDGE));
            gc.drawLine(0, height, room.width, height);
            gc.setForeground(Palette.now().of(Use.DESK_WORDS));
            lines.draw(gc, 8, 5);
        } finally {
            lines.dispose();
        }
    }

    private Optional<ChartBox> boxAt(Event event) {
        return boxAt(event.x, event.y);
    }

    private Optional<ChartBox> boxAt(int x, int y) {
        return chart().flatMap(one -> one.at((int) ((x - offsetX()) / size), (int) ((y - offsetY()) / size)));
    }

    private void press(Event event) {
        setFocus();
        tell("");
        drag = Optional.empty();
        Optional<ChartBox> hit = boxAt(event);
        if (hit.isEmpty() || event.button == 2) {
            return;
        }
        ChartBox box = hit.get();
        int x = (int) ((event.x - offsetX()) / size);
        int y = (int) ((event.y - offsetY()) / size);
        come.clear();
        Optional<Integer> result = box.cellAt(x, y);
        take(box.key(), result.orElse(0));
        if (event.button == 1 && box.routine().isPresent() && ChartPainter.openArea(box).contains(x, y)) {
            acts.openOrFold(box);
            return;
        }
        acts.take(box);
        if (event.button == 1) {
            // taking it in hand may have scrolled
            drag = result.map(one -> ArrowDrag.begin(box, one, event.x, event.y));
        }
    }

    private void move(Event event) {
        if (drag.isEmpty()) {
            tellOf(boxAt(event));
            return;
        }
        drag = drag.map(arrow -> arrow.to(event.x, event.y));
        if (drag.get().moved()) {
            setToolTipText(null);
            redraw();
            goOnLater();
        }
    }

    private void goOnLater() {
        if (!goesOn) {
            goesOn = true;
            getDisplay().timerExec(MILLISECONDS_BETWEEN_SCROLLS, this::goOn);
        }
    }

    /** While something is held at an edge, the chart goes on below it: so a result is drawn to a step that was not seen. */
    private void goOn() {
        goesOn = false;
        if (isDisposed() || chart == null || drag.isEmpty()) {
            return;
        }
        ArrowDrag arrow = drag.get();
        Rectangle room = getClientArea();
        int oldLeft = left;
        int oldTop = top;
        left += towards(arrow.x(), room.width);
        top += towards(arrow.y(), room.height);
        fitBars();
        if (left != oldLeft || top != oldTop) {
            drag = Optional.of(arrow.scrolled(oldLeft - left, oldTop - top));
            redraw();
            goOnLater();
        }
    }

    /** How far to scroll while something is drawn to an edge. */
    private static int towards(int place, int room) {
        return place < MARGIN ? -MARGIN : place > room - MARGIN ? MARGIN : 0;
    }

    private void release(Event event) {
        Optional<ArrowDrag> drawn = drag.filter(ArrowDrag::moved);
        drag = Optional.empty();
        drawn.ifPresent(arrow -> {
            redraw();
            boxAt(event).ifPresent(to -> acts.turn(arrow.from(), arrow.cell(), to));
        });
    }

    private void wheel(Event event) {
        if ((event.stateMask & SWT.MOD1) != 0) {
            size(event.count > 0 ? size * STEP_OF_SIZE : size / STEP_OF_SIZE);
            event.doit = false;
        }
    }

    private void key(Event event) {
        Optional<ChartBox> box = inHand();
        if (box.isEmpty() || (event.stateMask & (SWT.MOD1 | SWT.MOD3)) != 0) {
            return;
        }
        if (!notice.isEmpty() && event.character != 0 || event.keyCode == SWT.ESC) {
            tell("");
        }
        int results = box.get().cells().size();
        switch (event.keyCode) {
            case SWT.ARROW_RIGHT -> choose(Math.min(cell + 1, results - 1));
            case SWT.ARROW_LEFT -> choose(Math.max(0, cell - 1));
            case SWT.ARROW_DOWN -> follow(box.get());
            case SWT.ARROW_UP -> back(box.get());
            case SWT.HOME -> walk(chart.boxes().get(0).key());
            case SWT.CR, SWT.KEYPAD_CR -> acts.goTo(box.get());
            case ' ' -> acts.openOrFold(box.get());
            case SWT.KEYPAD_ADD -> larger();
            case SWT.KEYPAD_SUBTRACT -> smaller();
            case SWT.ESC -> {
                drag = Optional.empty();
                redraw();
            }
            case SWT.DEL -> acts.takeOut(box.get());
            case SWT.INSERT -> {
                if ((event.stateMask & SWT.MOD2) != 0) {
                    acts.add(box.get());
                } else {
                    acts.insert(box.get(), cell);
                }
            }
            default -> {
                switch (event.character) {
                    case '+', '=' -> larger();
                    case '-' -> smaller();
                    case '0' -> fit();
                    case 'l', 'L' -> acts.lead(box.get(), cell);
                    default -> { }
                }
            }
        }
    }

    private void choose(int result) {
        cell = Math.max(0, result);
        redraw();
        toldReaders();
    }

    /** Goes along the arrow of the chosen result. */
    private void follow(ChartBox box) {
        chart.from(box.key()).stream().filter(arrow -> arrow.cell() == cell).min((a, b) -> Boolean.compare(a.otherwise(), b.otherwise()))
                .ifPresent(arrow -> {
                    come.push(box.key());
                    walk(arrow.to());
                });
    }

    /** Back the way that was come, or else along the first arrow that leads here. */
    private void back(ChartBox box) {
        while (!come.isEmpty()) {
            String last = come.pop();
            if (chart.box(last).isPresent()) {
                walk(last);
                return;
            }
        }
        chart.to(box.key()).stream().map(ChartArrow::from).filter(key -> !key.equals(box.key())).findFirst().ifPresent(this::walk);
    }

    private void walk(String key) {
        take(key, 0);
        inHand().ifPresent(acts::take);
    }

    private void take(String key, int result) {
        inHand = key;
        cell = result;
        reveal();
        redraw();
        toldReaders();
    }

    private void reveal() {
        inHand().ifPresent(box -> {
            Rectangle area = area(box);
            Rectangle room = getClientArea();
            left += beyond(area.x, area.width, room.width);
            top += beyond(area.y, area.height, room.height);
            fitBars();
        });
    }

    /** How far to scroll so that a stretch is seen, its beginning at any rate. */
    private static int beyond(int begin, int length, int room) {
        int margin = Math.min(MARGIN, room / 10);
        if (begin < margin || length > room - 2 * margin) {
            return begin - margin;
        }
        return Math.max(0, begin + length - (room - margin));
    }

    /** In a hint an ampersand would mark the next letter. */
    private void tellOf(Optional<ChartBox> under) {
        String hint = under.map(box -> box.step().name().text() + "\n" + PlainText.line(box.step().title()).replace("&", "&&")).orElse(null);
        if (!Objects.equals(hint, getToolTipText())) {
            setToolTipText(hint);
        }
    }

    /** In words: for who cannot see the chart. */
    private String told() {
        return inHand().map(box -> box.step().keyword() + " " + box.step().name().text() + ": " + PlainText.line(box.step().title())
                + box.cells().stream().map(one -> {
                    int index = box.cells().indexOf(one);
                    String leads = one.outcome().target().map(name -> " leads to " + name.text()).orElse(" leads nowhere");
                    return (index == cell ? "chosen: " : "") + PlainText.phrase(one.outcome().key()) + leads;
                }).collect(Collectors.joining("; ", box.cells().isEmpty() ? "" : ". Results: ", ""))).orElse("");
    }

    private void tellReaders() {
        AccessibleName.as(this, "Chart of the steps");
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getDescription(AccessibleEvent event) {
                event.result = !words.isEmpty() ? words : notice.isEmpty() ? told() : notice + " " + told();
            }
        });
        getAccessible().addAccessibleControlListener(new AccessibleControlAdapter() {
            @Override
            public void getRole(AccessibleControlEvent event) {
                event.detail = ACC.ROLE_CANVAS;
            }

            @Override
            public void getValue(AccessibleControlEvent event) {
                event.result = told();
            }
        });
    }

    private void toldReaders() {
        getAccessible().sendEvent(ACC.EVENT_VALUE_CHANGED, null);
        getAccessible().sendEvent(ACC.EVENT_DESCRIPTION_CHANGED, null);
    }
}

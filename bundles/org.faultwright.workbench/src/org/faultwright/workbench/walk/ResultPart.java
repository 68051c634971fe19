/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Text;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.workbench.look.AccessibleName;

/** How the result of a step is given: a reading or a table of them, a button for each result, or the way into a routine. */
final class ResultPart {
    private static final String TYPE_ONE = "Type the reading";
    private static final String TYPE_ALL = "Type all readings";
    private static final int LONGEST_READING = 30;
    private static final int WIDTH_OF_A_READING = 110;

    private final WalkInHand walk;
    private final WalkState stand;
    private final Walk here;
    private final Step step;
    private final WalkWords words;
    private final WalkPage page;
    private Optional<Control> first = Optional.empty();

    ResultPart(WalkInHand walk, WalkState stand, WalkWords words, WalkPage page) {
        this.walk = walk;
        this.stand = stand;
        this.here = stand.walk();
        this.step = here.step();
        this.words = words;
        this.page = page;
    }

    /** What the keyboard should be on. */
    Optional<Control> first() {
        return first;
    }

    void fill(Composite in) {
        if (here.canEnter()) {
            first(WalkControls.button(in, "Begin the routine", () -> page.answer(WalkAnswer.begun(here.label()))));
        } else if (stand.computed().isPresent()) {
            computed(in, stand.computed().get());
        } else if (!stand.rows().isEmpty() && stand.rows().stream().allMatch(Optional::isPresent)) {
            table(in);
        } else if (step instanceof Step.Measure && stand.entry().isPresent()) {
            single(in, stand.entry().get());
        } else {
            choices(in);
        }
    }

    private void first(Control control) {
        first = first.or(() -> Optional.of(control));
    }

    private void answer(String result, List<WalkAnswer.Reading> readings) {
        page.answer(WalkAnswer.read(here.label(), result, readings));
    }

    // ---- results to choose

    private void choices(Composite in) {
        if (step.outcomes().isEmpty()) {
            WalkControls.strong(in, "This step leads nowhere: the text has an error here.");
            return;
        }
        Composite rows = WalkControls.rows(in, 2);
        for (Outcome outcome : step.outcomes()) {
            Button button = WalkControls.button(rows, words.label(step, outcome), () -> page.answer(WalkAnswer.chosen(here.label(), outcome.key())));
            GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
            first(button);
            String more = words.explained(here, outcome, stand.entry());
            ((GridData) WalkControls.beside(rows, more).getLayoutData()).verticalAlignment = SWT.CENTER;
            if (!more.isEmpty()) {
                AccessibleName.as(button, words.label(step, outcome) + ", " + more);
            }
        }
    }

    /** An instrument may tell the result without a number. */
    private void without(Composite in) {
        Composite hidden = new Composite(in, SWT.NONE);
        Link link = WalkControls.link(in, "<a>Without a number</a>", text -> {
            GridData data = (GridData) hidden.getLayoutData();
            data.exclude = !data.exclude;
            hidden.setVisible(!data.exclude);
            page.grown();
        });
        link.moveAbove(hidden);
        GridLayoutFactory.fillDefaults().applyTo(hidden);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(hidden);
        hidden.setVisible(false);
        choices(hidden);
    }

    // ---- one reading

    private void single(Composite in, ReadingEntry entry) {
        Text box = field(in, "Reading", entry.unit().symbol(), 0, entry.overload().isPresent());
        Label verdict = verdict(in, box);
        Bands bands = new Bands(in, entry);
        Button go = WalkControls.button(in, TYPE_ONE, () -> typed(box, entry).filter(value -> judged(entry, value).outcome().isPresent())
                .ifPresent(value -> answer(judged(entry, value).outcome().get().key(), List.of(value))));
        Runnable changed = () -> {
            walk.type(0, box.getText());
            TypedReading typed = TypedReading.of(box.getText(), entry);
            Optional<WalkAnswer.Reading> value = typed instanceof TypedReading.Value one ? Optional.of(one.reading()) : Optional.empty();
            Optional<ReadingEntry.Judged> judged = value.map(reading -> judged(entry, reading));
            Optional<Outcome> outcome = judged.flatMap(ReadingEntry.Judged::outcome);
            verdict.setText(WalkControls.escaped(typed instanceof TypedReading.Wrong wrong ? wrong.sentence()
                    : value.map(reading -> words.verdict(step, reading, outcome, judged.get().doubtful())).orElse("")));
            verdict.setFont(judged.filter(ReadingEntry.Judged::doubtful).isPresent() ? WalkControls.bold() : null);
            bands.show(outcome);
            ready(go, outcome, TYPE_ONE);
            page.grown();
        };
        listen(box, go, changed);
        without(in);
        changed.run();
    }

    private Optional<WalkAnswer.Reading> typed(Text box, ReadingEntry entry) {
        return TypedReading.of(box.getText(), entry) instanceof TypedReading.Value value ? Optional.of(value.reading()) : Optional.empty();
    }

    private ReadingEntry.Judged judged(ReadingEntry entry, WalkAnswer.Reading reading) {
        return reading.base().map(base -> entry.judge(step, base)).orElseGet(() -> new ReadingEntry.Judged(entry.overload(), false));
    }

    /** Beside the box where there is room, since a low window ends below it. */
    private Label verdict(Composite in, Text box) {
        Label verdict = WalkControls.words(page.isWide() ? box.getParent() : in, "");
        ((GridData) verdict.getLayoutData()).verticalAlignment = SWT.CENTER;
        return verdict;
    }

    private Text field(Composite in, String asked, String symbol, int row, boolean overload) {
        Composite line = WalkControls.rows(in, (overload ? 4 : 3) + (page.isWide() ? 1 : 0));
        WalkControls.narrow(line, asked);
        Text box = WalkControls.text(line, asked + (symbol.isEmpty() ? "" : ", in " + symbol), LONGEST_READING);
        box.setText(walk.typed(row));
        box.setSelection(box.getText().length());
        GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.CENTER).hint(WIDTH_OF_A_READING, SWT.DEFAULT).applyTo(box);
        WalkControls.narrow(line, symbol);
        for (Control label : line.getChildren()) {
            ((GridData) label.getLayoutData()).verticalAlignment = SWT.CENTER;
        }
        if (overload) {
            Button above = WalkControls.button(line, "OL", () -> box.setText("OL"));
            above.setToolTipText("What the meter shows above its range");
            AccessibleName.as(above, "OL: above the range");
        }
        first(box);
        return box;
    }

    private static void listen(Text box, Button go, Runnable changed) {
        box.addListener(SWT.Modify, event -> changed.run());
        box.addListener(SWT.DefaultSelection, event -> {
            if (go.isEnabled()) {
                go.notifyListeners(SWT.Selection, new Event());
            }
        });
    }

    private void ready(Button go, Optional<Outcome> outcome, String otherwise) {
        go.setText(WalkControls.escaped(outcome.map(one -> words.label(step, one) + ": go on").orElse(otherwise)));
        go.setEnabled(outcome.isPresent() && !page.isWaiting());
    }

    /** The results with the readings that each takes in; the one that is met stands out. */
    private final class Bands {
        private final List<Label> labels = new ArrayList<>();

        Bands(Composite in, ReadingEntry entry) {
            Composite rows = WalkControls.rows(in, 2);
            for (Outcome outcome : step.outcomes()) {
                Label label = WalkControls.narrow(rows, words.label(step, outcome));
                labels.add(label);
                WalkControls.beside(rows, words.explained(here, outcome, Optional.of(entry)));
            }
            boolean told = step.outcomes().stream().anyMatch(outcome -> outcome.key().equals(Step.DOUBTFUL));
            if (!told && !entry.doubtful().isEmpty()) {
                WalkControls.narrow(rows, "     Doubtful");
                WalkControls.beside(rows, String.join(" or ", entry.doubtful().stream().map(zone -> WalkWords.range(zone, entry)).toList())
                        + ": the instrument cannot decide there");
            }
            show(Optional.empty());
        }

        void show(Optional<Outcome> met) {
            for (int i = 0; i < labels.size(); i++) {
                Outcome outcome = step.outcomes().get(i);
                boolean lit = met.filter(one -> one == outcome).isPresent();
                labels.get(i).setFont(lit ? WalkControls.bold() : null);
                labels.get(i).setText(WalkControls.escaped((lit ? "\u25b6 " : "     ") + words.label(step, outcome)));
            }
        }
    }

    // ---- a table

    private void table(Composite in) {
        Step.Measure table = (Step.Measure) step;
        List<Text> boxes = new ArrayList<>();
        List<Label> told = new ArrayList<>();
        for (int i = 0; i < stand.rows().size(); i++) {
            Step.Measure row = table.readings().get(i);
            String asked = words.point(table.rows().get(i).point()) + ", limit " + row.expects().map(expects -> expects.limit().value().spelling()).orElse("");
            boxes.add(field(in, asked, stand.rows().get(i).get().unit().symbol(), i, true));
            told.add(verdict(in, boxes.get(i)));
        }
        Label sum = WalkControls.words(in, "");
        Button go = WalkControls.button(in, TYPE_ALL, () -> readings(boxes).ifPresent(readings -> outcome(readings)
                .ifPresent(outcome -> answer(outcome.key(), readings))));
        Runnable changed = () -> {
            for (int i = 0; i < boxes.size(); i++) {
                walk.type(i, boxes.get(i).getText());
                told.get(i).setText(WalkControls.escaped(told(table.readings().get(i), TypedReading.of(boxes.get(i).getText(), stand.rows().get(i).get()))));
            }
            Optional<Outcome> outcome = readings(boxes).flatMap(this::outcome);
            sum.setText(WalkControls.escaped(outcome.map(one -> words.label(step, one) + ".").orElse(readings(boxes).isPresent() ? "No result takes these in." : "")));
            ready(go, outcome, TYPE_ALL);
            page.grown();
        };
        boxes.forEach(box -> listen(box, go, changed));
        without(in);
        changed.run();
    }

    private String told(Step.Measure row, TypedReading typed) {
        if (typed instanceof TypedReading.Value value) {
            return ReadingEntry.isWithin(stand.procedure(), row, value.reading().base()) ? "\u2713 within" : "\u2717 outside";
        }
        return typed instanceof TypedReading.Wrong wrong ? wrong.sentence() : "";
    }

    /** All of them, or none. */
    private Optional<List<WalkAnswer.Reading>> readings(List<Text> boxes) {
        List<WalkAnswer.Reading> readings = IntStream.range(0, boxes.size()).mapToObj(i -> TypedReading.of(boxes.get(i).getText(), stand.rows().get(i).get()))
                .filter(TypedReading.Value.class::isInstance).map(value -> ((TypedReading.Value) value).reading()).toList();
        return readings.size() == boxes.size() ? Optional.of(readings) : Optional.empty();
    }

    private Optional<Outcome> outcome(List<WalkAnswer.Reading> readings) {
        return ReadingEntry.judgeTable(stand.procedure(), (Step.Measure) step, readings.stream().<Optional<Exact>>map(WalkAnswer.Reading::base).toList());
    }

    // ---- a value that is computed

    private void computed(Composite in, WalkAnswer.Reading value) {
        ReadingEntry.Judged judged = judged(stand.entry().orElseThrow(), value);
        WalkControls.strong(in, words.verdict(step, value, judged.outcome(), judged.doubtful()));
        new Bands(in, stand.entry().orElseThrow()).show(judged.outcome());
        judged.outcome().ifPresent(outcome -> first(WalkControls.button(in, words.label(step, outcome) + ": go on",
                () -> answer(outcome.key(), List.of(value)))));
        without(in);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.faultwright.analysis.examples.WalkedExample;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.ScrolledPage;

/** Draws a walk, one step at a time, in the order and with the words of the bench page. */
final class WalkPage {
    /** What a press does. */
    interface Presses {
        void begin();

        void goOn();

        void back();

        void beginAnew();

        void answer(WalkAnswer answer);

        void takeBack(int kept);

        void acknowledge(Note note);

        void keep(String title);
    }

    /** From this width on the aside stands beside the step. */
    private static final int WIDE = 760;
    private static final int ASIDE = 270;
    private static final int LONGEST_NAME = 200;
    private static final String CAUTION = "Local codes, the maker's instructions and licensed practice come first.";

    private final Presses presses;
    private final DeliberatePress press;
    private final Composite whole;
    private final Composite bar;
    private final Button back;
    private final Label times;
    private final ScrolledPage page;
    private Optional<Control> first = Optional.empty();
    private Optional<Control> toSee = Optional.empty();
    private Runnable drawing = () -> { };
    private boolean waiting;
    private boolean wasWide;
    private boolean wasWritten;
    private List<Object> beginning = List.of();

    WalkPage(Composite parent, Presses presses) {
        this.presses = presses;
        whole = new Composite(parent, SWT.NONE);
        press = new DeliberatePress(whole);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(whole);
        bar = new Composite(whole, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(3).margins(12, 4).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(bar);
        back = WalkControls.button(bar, "\u2190 Back", presses::back);
        WalkControls.button(bar, "Begin anew", presses::beginAnew);
        times = WalkControls.words(bar, "");
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).grab(true, false).hint(60, SWT.DEFAULT).applyTo(times);
        bar.setVisible(false);
        Composite rest = new Composite(whole, SWT.NONE);
        rest.setLayout(new FillLayout());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(rest);
        page = new ScrolledPage(rest);
        whole.addListener(SWT.Resize, event -> {
            if (isWide() != wasWide) {
                drawing.run();
            }
        });
    }

    boolean isDisposed() {
        return whole.isDisposed();
    }

    Composite control() {
        return whole;
    }

    /** Whether the text cannot be read at present. */
    boolean isWaiting() {
        return waiting;
    }

    /** Whether a press that comes now was not meant for what is shown. */
    boolean isOldPress() {
        return press.isOld();
    }

    void later(Runnable what) {
        page.later(what);
    }

    void grown() {
        if (wasWritten) {
            page.grown();
        }
    }

    void setFocus() {
        first.filter(control -> !control.isDisposed() && control.isEnabled()).ifPresentOrElse(Control::setFocus, page::setFocus);
    }

    void answer(WalkAnswer answer) {
        presses.answer(answer);
    }

    boolean isWide() {
        return whole.getClientArea().width >= WIDE;
    }

    private void write(boolean withBar, Consumer<Composite> content) {
        drawing = () -> write(withBar, content);
        boolean inside = isInside(whole.getDisplay().getFocusControl());
        whole.setRedraw(false);
        try {
            first = Optional.empty();
            toSee = Optional.empty();
            beginning = List.of();
            wasWritten = false;
            wasWide = isWide();
            ((GridData) bar.getLayoutData()).exclude = !withBar;
            bar.setVisible(withBar);
            whole.layout(true, true);
            page.write(content);
            wasWritten = true;
            press.drawn();
        } finally {
            whole.setRedraw(true);
        }
        if (inside) {
            setFocus();
        }
        toSee.ifPresent(page::reveal);
    }

    private boolean isInside(Control control) {
        for (Control one = control; one != null && !one.isDisposed(); one = one.getParent()) {
            if (one == whole) {
                return true;
            }
        }
        return false;
    }

    // ---- before the first step

    void say(String sentence) {
        waiting = false;
        write(false, body -> WalkControls.words(body, sentence));
    }

    /** Is drawn anew only where it says something else now: it stands there while the text is written. */
    void begin(Procedure procedure, WalkInHand walk) {
        waiting = false;
        List<Object> words = List.of(procedure.title(), procedure.name().text(), procedure.complaints().stream().map(Written::value).toList(),
                procedure.first().isEmpty(), walk.earlier());
        if (words.equals(beginning)) {
            return;
        }
        write(false, body -> {
            WalkControls.heading(body, PlainText.line(procedure.title().isBlank() ? procedure.name().text() : procedure.title()));
            if (!procedure.complaints().isEmpty()) {
                WalkControls.words(body, "Complaints such as " + procedure.complaints().stream().map(Written::value).map(PlainText::line)
                        .map(one -> "\u201c" + one + "\u201d").collect(Collectors.joining(", ")));
            }
            WalkControls.strong(body, CAUTION + " " + Caution.TRAINED);
            if (procedure.first().isEmpty()) {
                WalkControls.words(body, "This procedure has no step to begin at.");
                return;
            }
            WalkControls.words(body, "Walk it here, step by step, before anyone stands at a bench with it. Nothing is switched or measured: you say what each step shows.");
            Composite row = WalkControls.rows(body, 2);
            first = Optional.of(WalkControls.button(row, "Begin", presses::begin));
            if (walk.earlier() > 0) {
                WalkControls.button(row, "Go on with the walk before", presses::goOn);
            }
        });
        beginning = words;
    }

    // ---- a step

    /** @param errors how many errors the text has */
    void show(WalkInHand walk, boolean unreadable, int errors) {
        WalkState stand = walk.stand().orElseThrow();
        waiting = unreadable;
        times.setText(stand.walk().isEnd() ? WalkWords.soFar(stand.walk()) : WalkWords.soFar(stand.walk()) + " \u00b7 " + WalkWords.toGo(stand.toGo()));
        write(true, body -> {
            Composite main = body;
            Composite aside = body;
            if (isWide()) {
                GridLayout columns = (GridLayout) body.getLayout();
                columns.numColumns = 2;
                columns.horizontalSpacing = 24;
                main = WalkControls.rows(body, 1);
                aside = WalkControls.rows(body, 1);
                GridDataFactory.fillDefaults().align(SWT.FILL, SWT.BEGINNING).hint(ASIDE, SWT.DEFAULT).applyTo(aside);
                GridDataFactory.fillDefaults().align(SWT.FILL, SWT.BEGINNING).grab(true, false).hint(ASIDE, SWT.DEFAULT).applyTo(main);
            }
            told(main, stand, unreadable, errors);
            if (stand.walk().isLost()) {
                lost(main, stand.walk());
            } else if (stand.walk().isEnd()) {
                ending(main, walk, stand);
            } else {
                step(main, walk, stand);
            }
            aside(aside, stand);
        });
    }

    private static void told(Composite main, WalkState stand, boolean unreadable, int errors) {
        if (unreadable) {
            WalkControls.strong(WalkControls.marked(main, Palette.Use.WARNING), "The walk waits until the text can be read.");
        } else if (errors > 0) {
            WalkControls.words(WalkControls.marked(main, Palette.Use.ERROR), errors == 1 ? "The text has an error. The walk follows what it says now."
                    : "The text has " + errors + " errors. The walk follows what it says now.");
        }
        stand.stopped().filter(words -> !unreadable).ifPresent(words -> WalkControls.strong(WalkControls.marked(main, Palette.Use.WARNING), words));
    }

    private void step(Composite main, WalkInHand walk, WalkState stand) {
        Walk here = stand.walk();
        WalkWords words = new WalkWords(stand.procedure().scope());
        routines(main, here, stand);
        WalkControls.heading(main, WalkWords.title(here.step()));
        WalkControls.beside(main, WalkWords.facts(here.step()));
        List<Note> unread = walk.unread();
        if (!unread.isEmpty()) {
            here.due().forEach(note -> note(main, note, unread.contains(note)));
            WalkControls.words(main, unread.size() == 1 ? "Read the note first; then the step is shown." : "Read the " + unread.size()
                    + " notes first; then the step is shown.");
            return;
        }
        lines(main, words.lines(here));
        ResultPart results = new ResultPart(walk, stand, words, this);
        Composite work = WalkControls.rows(main, 1);
        ((GridLayout) work.getLayout()).marginTop = 6;
        results.fill(work);
        first = results.first();
        if (waiting) {
            disable(work);
        }
    }

    private static void disable(Composite in) {
        for (Control child : in.getChildren()) {
            if (child instanceof Composite inner) {
                disable(inner);
            } else if (child instanceof Button) {
                child.setEnabled(false);
            }
        }
    }

    private void routines(Composite main, Walk here, WalkState stand) {
        if (here.callers().isEmpty()) {
            return;
        }
        StringBuilder words = new StringBuilder("In the routine of ");
        for (int i = 0; i < here.callers().size(); i++) {
            words.append(i > 0 ? " \u203a " : "").append("<a href=\"").append(i).append("\">")
                    .append(ScrolledPage.plain(WalkWords.title(here.callers().get(i)))).append("</a>");
        }
        WalkControls.link(main, words.toString(), depth -> presses.takeBack(stand.answersBefore(Integer.parseInt(depth))))
                .setToolTipText("Back to where this routine was begun");
    }

    private static void lines(Composite main, List<WalkWords.Line> lines) {
        if (lines.isEmpty()) {
            return;
        }
        Composite rows = WalkControls.rows(main, 2);
        for (WalkWords.Line line : lines) {
            WalkControls.narrow(rows, line.key()).setForeground(Palette.now().of(Palette.Use.BESIDE));
            Label words = WalkControls.words(rows, line.words());
            words.setFont(line.strong() ? WalkControls.bold() : null);
        }
    }

    private void note(Composite main, Note note, boolean unread) {
        Composite box = note(main, note);
        if (unread) {
            Button read = WalkControls.button(box, "I have read this", () -> presses.acknowledge(note));
            AccessibleName.as(read, "I have read this: " + PlainText.line(note.hazard()));
            first = first.or(() -> Optional.of(read));
        } else {
            WalkControls.beside(box, "\u2713 Read");
        }
    }

    private static Composite note(Composite main, Note note) {
        Composite box = WalkControls.marked(main, note.word() == SignalWord.DANGER || note.word() == SignalWord.WARNING ? Palette.Use.ERROR : Palette.Use.WARNING);
        WalkControls.strong(box, (note.word() == SignalWord.NOTICE ? "" : "\u26a0 ") + note.word().name());
        WalkControls.strong(box, PlainText.line(note.hazard()));
        WalkControls.words(box, PlainText.line(note.consequence()));
        WalkControls.words(box, PlainText.line(note.avoid()));
        return box;
    }

    // ---- the end

    private void lost(Composite main, Walk here) {
        WalkControls.heading(main, "The way leads nowhere here");
        WalkControls.words(main, "The text does not say what follows \u201c" + here.step().name() + "\u201d. Go back, or write it.");
        first = Optional.of(back);
    }

    private void ending(Composite main, WalkInHand walk, WalkState stand) {
        Walk here = stand.walk();
        Step.Conclude end = (Step.Conclude) here.step();
        WalkWords words = new WalkWords(stand.procedure().scope());
        WalkControls.heading(main, WalkWords.title(end));
        WalkControls.beside(main, "Conclude \u00b7 " + end.name());
        end.frame().notes().stream().flatMap(name -> stand.procedure().scope().note(name).stream()).distinct().forEach(note -> note(main, note));
        Composite rows = WalkControls.rows(main, 2);
        String found = end.finds().stream().map(name -> words.fault(name, stand.procedure())).collect(Collectors.joining("; "));
        line(rows, Wording.found(end), found.isEmpty() && end.findsNothing().isPresent() ? "no fault" : found);
        line(rows, "Refer to", end.refersTo().map(Written::value).map(PlainText::line).orElse(""));
        line(rows, "Hint", end.frame().hint().map(Written::value).map(PlainText::line).orElse(""));
        line(rows, "For the customer", end.report().map(Written::value).map(PlainText::line).orElse(""));
        checklist(main, here, words);
        keeping(main, walk, stand, end);
    }

    private static void line(Composite rows, String key, String words) {
        if (words.isEmpty()) {
            return;
        }
        WalkControls.narrow(rows, key).setForeground(Palette.now().of(Palette.Use.BESIDE));
        WalkControls.words(rows, words).setFont(key.startsWith("Found") || key.equals("Refer to") ? WalkControls.bold() : null);
    }

    /** What must be so when the unit leaves, and where the walk leaves it otherwise. */
    private static void checklist(Composite main, Walk here, WalkWords words) {
        List<Condition> ends = here.procedure().scope().conditions().stream().filter(one -> one.ends().isPresent()).toList();
        if (ends.isEmpty()) {
            return;
        }
        title(main, "Before the unit leaves the bench");
        WalkControls.words(main, "Check that each is so:");
        for (Condition condition : ends) {
            Name wanted = condition.ends().get();
            String left = here.setUp().getOrDefault(condition.name().text(), wanted.text());
            Label label = WalkControls.words(main, "\u2610 " + words.setting(condition.name(), wanted.text())
                    + (left.equals(wanted.text()) ? "" : ": this walk leaves it \u201c" + left + "\u201d"));
            label.setFont(left.equals(wanted.text()) ? null : WalkControls.bold());
        }
    }

    private void keeping(Composite main, WalkInHand walk, WalkState stand, Step.Conclude end) {
        title(main, "Example");
        // not the button below: whoever presses Enter from step to step has not asked for an example
        first = Optional.of(back);
        if (walk.kept().isPresent()) {
            WalkControls.strong(main, "Kept as the example \u201c" + walk.kept().get() + "\u201d at the end of the text.");
            toSee = Optional.of(WalkControls.words(main, "\u201cUndo\u201d in the text takes it out again."));
            return;
        }
        WalkControls.words(main, "An example is checked with the text from then on: it must always end here.");
        Composite row = WalkControls.rows(main, 2);
        Label named = WalkControls.narrow(row, "Its name");
        ((GridData) named.getLayoutData()).verticalAlignment = SWT.CENTER;
        Text name = WalkControls.text(row, "Name of the example", LONGEST_NAME);
        name.setText(walk.typed(0).isEmpty() ? WalkedExample.title(stand.procedure(), end) : walk.typed(0));
        GridDataFactory.fillDefaults().grab(true, false).hint(120, SWT.DEFAULT).applyTo(name);
        name.addListener(SWT.Modify, event -> walk.type(0, name.getText()));
        Button keep = WalkControls.button(main, "Keep as an example", () -> presses.keep(name.getText()));
        keep.setEnabled(!waiting);
        name.addListener(SWT.DefaultSelection, event -> keep.notifyListeners(SWT.Selection, new Event()));
        walk.told().ifPresent(sentence -> {
            first = Optional.of(name);
            toSee = Optional.of(WalkControls.strong(main, sentence));
        });
    }

    private static Label title(Composite in, String words) {
        Label label = WalkControls.strong(in, words);
        label.setForeground(Palette.now().of(Palette.Use.HEADING));
        ((GridData) label.getLayoutData()).verticalIndent = 8;
        return label;
    }

    // ---- beside the step: what it still can be, and what was done

    private void aside(Composite in, WalkState stand) {
        suspects(in, stand);
        done(in, stand);
    }

    private static void suspects(Composite in, WalkState stand) {
        int faults = stand.procedure().faults().size();
        int left = stand.suspects().size();
        boolean noneWasFound = stand.walk().step() instanceof Step.Conclude end && end.finds().isEmpty();
        if (faults == 0 || left == 0 && noneWasFound) {
            return;
        }
        title(in, "What it still can be" + (left > 0 ? ": " + left + " of " + faults : ""));
        if (left == 0) {
            WalkControls.words(in, "No fault of the table explains these results. Look for a slip in what was read, or for something new.");
            return;
        }
        Composite rows = WalkControls.rows(in, 3);
        stand.suspects().forEach(one -> {
            WalkControls.gauge(rows, one.share());
            Label share = WalkControls.narrow(rows, WalkWords.percent(one.share()));
            ((GridData) share.getLayoutData()).horizontalAlignment = SWT.END;
            WalkControls.words(rows, PlainText.line(one.fault().title().isBlank() ? one.fault().name().text() : one.fault().title()));
        });
    }

    private void done(Composite in, WalkState stand) {
        List<WalkState.GivenAnswer> passed = stand.passed();
        long results = passed.stream().filter(one -> one.answer().result().isPresent()).count();
        title(in, results == 0 ? "Nothing done yet" : results == 1 ? "Done so far: 1 step" : "Done so far: " + results + " steps");
        WalkWords words = new WalkWords(stand.procedure().scope());
        for (int i = 0; i < passed.size(); i++) {
            WalkState.GivenAnswer one = passed.get(i);
            int kept = i;
            one.answer().result().ifPresent(key -> WalkControls.link(in, ScrolledPage.plain(WalkWords.title(one.before().step()) + " \u2192 "
                    + words.label(one.before().step(), key) + readings(one)) + "   <a>Correct</a>", text -> presses.takeBack(kept))
                    .setToolTipText("Takes this result back, and everything after it"));
        }
    }

    private static String readings(WalkState.GivenAnswer passed) {
        List<WalkAnswer.Reading> readings = passed.answer().readings();
        return readings.isEmpty() ? "" : readings.stream().map(WalkAnswer.Reading::words).collect(Collectors.joining(", ", " (", ")"))
                + (passed.doubtful() ? ", doubtful" : "");
    }
}

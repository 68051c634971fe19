/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.ui.IActionBars;
import org.eclipse.ui.actions.ActionFactory;
import org.eclipse.ui.part.ViewPart;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.time.ArrowStudy;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.chart.Chart;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.publish.chart.ChartMaker;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.findings.ChosenFinding;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.look.ScrolledPage;

/**
 * The steps of the text in front as a picture. It follows the text while it is written, the cursor in it, and the finding that is looked
 * at; the step that is chosen here is selected in the text. It is laid out away from the window's thread.
 */
public final class ChartView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.chart";

    static final String WAITS = "The chart waits until the text can be read.";
    private static final int MILLISECONDS_AFTER_A_CHANGE = 250;
    /** More are no picture for a person, and take seconds. */
    private static final int MOST_STEPS = 3_000;

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private final Runnable finding = this::light;
    private final Job making = new LayoutJob();
    private final Set<String> open = new HashSet<>();
    private volatile ChartRequest wanted;
    private LiveText asked;
    private LiveText drawn;
    private int caret = -1;
    private boolean likelihood;
    private ChartCanvas canvas;
    private ChartChanges changes;

    /** What is to be laid out, with the keys of the routines that are open. @param likelihood whether the arrows are reckoned too */
    private record ChartRequest(LiveText live, Set<String> open, boolean likelihood) {
    }

    @Override
    public void createPartControl(Composite parent) {
        canvas = new ChartCanvas(parent, new Acting());
        changes = new ChartChanges(canvas);
        making.setSystem(true);
        IAction times = action("Times", "Say how long each step takes", IAction.AS_CHECK_BOX, canvas::tellTimes);
        times.setChecked(true);
        List<IAction> ofTheChart = List.of(action("Larger", "Draw the chart larger (+)", IAction.AS_PUSH_BUTTON, on -> canvas.larger()),
                action("Smaller", "Draw the chart smaller (-)", IAction.AS_PUSH_BUTTON, on -> canvas.smaller()),
                action("All of it", "Show the whole chart (0)", IAction.AS_PUSH_BUTTON, on -> canvas.fit()),
                action("Find\u2026", "Find a step by its name or words (Ctrl+F)", IAction.AS_PUSH_BUTTON, on -> find()), times,
                action("Likelihood", "Say at each arrow how many units of a hundred come this way, and how long after the beginning", IAction.AS_CHECK_BOX,
                        this::tellLikelihood));
        ofTheChart.forEach(this::tool);
        menus(ofTheChart);
        ActiveText.get().addView(this, following);
        ChosenFinding.get().addListener(finding);
    }

    private static IAction action(String words, String hint, int style, Consumer<Boolean> does) {
        Action action = new Action(words, style) {
            @Override
            public void run() {
                does.accept(isChecked());
            }
        };
        action.setToolTipText(hint);
        return action;
    }

    private void tool(IAction action) {
        ActionContributionItem button = new ActionContributionItem(action);
        button.setMode(ActionContributionItem.MODE_FORCE_TEXT);
        if (getViewSite().getActionBars().getToolBarManager().getItems().length > 0) {
            getViewSite().getActionBars().getToolBarManager().add(new Separator());
        }
        getViewSite().getActionBars().getToolBarManager().add(button);
    }

    /** What can be done with the step and the result in hand: with the right button on a step, by a tool, and by a key; beside the steps, with the chart. */
    private void menus(List<IAction> ofTheChart) {
        Acting acts = new Acting();
        IAction takeOut = inHand("Take out the step (Delete)", acts::takeOut);
        List<IAction> entries = List.of(inHand("Lead the result to\u2026 (L)", box -> acts.lead(box, canvas.cell())),
                inHand("Lead it, once its bound is used up, to\u2026", box -> changes.lead(box, canvas.cell(), true)),
                inHand("Insert a step on its arrow\u2026 (Insert)", box -> acts.insert(box, canvas.cell())),
                inHand("Add a step\u2026 (Shift+Insert)", acts::add), takeOut);
        List<IAction> ways = List.of(inHand("Go to the text (Enter)", acts::goTo), inHand("Open or fold the routine (Space)", acts::openOrFold));
        MenuManager menu = new MenuManager();
        entries.forEach(menu::add);
        menu.add(new Separator());
        ways.forEach(menu::add);
        Menu ofTheStep = menu.createContextMenu(canvas);
        MenuManager chart = new MenuManager();
        ofTheChart.forEach(chart::add);
        canvas.setMenus(ofTheStep, chart.createContextMenu(canvas));
        tool(new MenuTool("Change", "What can be done with the step and the result in hand", ofTheStep));
        IActionBars bars = getViewSite().getActionBars();
        bars.setGlobalActionHandler(ActionFactory.DELETE.getId(), takeOut);
        bars.setGlobalActionHandler(ActionFactory.FIND.getId(), action("Find", "", IAction.AS_PUSH_BUTTON, on -> find()));
        bars.setGlobalActionHandler(ActionFactory.UNDO.getId(), ofTheText("Undo", ITextEditorActionConstants.UNDO));
        bars.setGlobalActionHandler(ActionFactory.REDO.getId(), ofTheText("Redo", ITextEditorActionConstants.REDO));
    }

    private IAction inHand(String words, Consumer<ChartBox> does) {
        return action(words, words, IAction.AS_PUSH_BUTTON, on -> canvas.inHand().ifPresent(does));
    }

    /** What is changed here is changed in the text, and taken back there. */
    private static IAction ofTheText(String words, String id) {
        return action(words, words, IAction.AS_PUSH_BUTTON, on -> ActiveText.get().editor().map(editor -> editor.getAction(id)).ifPresent(IAction::run));
    }

    private void find() {
        List<StepChooser.Choice> choices = canvas.chart().map(chart -> chart.boxes().stream().map(box -> ChartChanges.choice(box.key(), box.step())).toList())
                .orElse(List.of());
        if (!choices.isEmpty()) {
            new StepChooser(canvas.getShell(), "Find a step", "Which step?", choices).ask().ifPresent(step -> canvas.find(step.key()));
        }
    }

    void tellLikelihood(boolean told) {
        likelihood = told;
        if (!told) {
            canvas.tellFigures(Optional.empty());
        } else if (asked != null) {
            layOut(0);
        }
    }

    /** The chart shown; absent while there is none. */
    public Optional<Chart> chart() {
        return canvas.chart();
    }

    /** The key of the step in hand; absent when there is none. */
    public Optional<String> inHand() {
        return canvas.inHand().map(ChartBox::key);
    }

    /** The keys of the steps on the path of the chosen finding, in its order. */
    public List<String> lit() {
        return canvas.lit();
    }

    /** What is said over the chart or in its place; empty when nothing is. */
    public String said() {
        return canvas.said();
    }

    /** What it is drawn on, for whoever works it by keys and mouse. */
    ChartCanvas canvas() {
        return canvas;
    }

    private void follow(Optional<ActiveText.Place> place) {
        if (canvas.isDisposed()) {
            return;
        }
        LiveText live = place.map(ActiveText.Place::live).orElse(null);
        if (live == null) {
            forget(ActiveText.get().editor().isPresent() ? "Reading the procedure\u2026" : "Open a procedure to see its chart.");
            return;
        }
        if (live != asked) {
            boolean other = asked == null || !asked.file().equals(live.file());
            asked = live;
            if (other) {
                open.clear();
                drawn = null;
                changes.drawn(null);
                canvas.tellFigures(Optional.empty()); // they are those of another text
                canvas.say("Laying out the chart\u2026");
            }
            layOut(other ? 0 : MILLISECONDS_AFTER_A_CHANGE);
        }
        if (place.get().offset() != caret) {
            caret = place.get().offset();
            inHandAtCaret();
        }
    }

    private void forget(String words) {
        asked = null;
        drawn = null;
        changes.drawn(null);
        wanted = null;
        making.cancel();
        canvas.say(words);
    }

    private void layOut(int delay) {
        Document document = asked.text().document();
        making.cancel();
        if (!document.problems().isEmpty()) {
            wanted = null;
            canvas.waits(WAITS);
            return;
        }
        int steps = document.graphs().stream().mapToInt(graph -> graph.steps().size()).sum();
        if (steps == 0 || steps > MOST_STEPS) {
            wanted = null;
            drawn = null;
            changes.drawn(null);
            canvas.say(steps == 0 ? "There is no step to draw yet." : "The chart shows up to " + MOST_STEPS + " steps; this text has " + steps + ".");
            return;
        }
        wanted = new ChartRequest(asked, Set.copyOf(open), likelihood);
        making.schedule(delay);
    }

    private void openOrFold(ChartBox box) {
        if (asked != null && box.routine().isPresent()) {
            if (!open.remove(box.key())) {
                open.add(box.key());
            }
            layOut(0);
        }
    }

    private void inHandAtCaret() {
        if (drawn == null) {
            return;
        }
        for (StepGraph graph : drawn.text().document().graphs()) {
            Optional<Step> step = graph.stepAt(caret);
            if (step.isPresent()) {
                canvas.take(step.get(), graph.name().text());
                return;
            }
        }
    }

    /** Selects a step in the text without leaving the chart; a step of another file is left for Enter. */
    private void select(ChartBox box) {
        now(box).ifPresent(name -> ActiveText.get().editor().ifPresent(editor -> editor.selectAndReveal(name.offset(), name.length())));
    }

    private void goToText(ChartBox box) {
        if (!isOfTheText(box.step().name().at())) {
            Editors.show(box.step().name().at());
            return;
        }
        now(box).ifPresent(name -> ActiveText.get().editor().ifPresent(text -> {
            text.getSite().getPage().activate(text);
            text.selectAndReveal(name.offset(), name.length());
        }));
    }

    /** Where a step of the text in front stands by now: the text may have changed since it was drawn. Absent where it is gone or of another file. */
    private Optional<SourceRange> now(ChartBox box) {
        if (asked == null || !isOfTheText(box.step().name().at())) {
            return Optional.empty();
        }
        Optional<StepGraph> of = drawn.text().document().graphs().stream().filter(graph -> graph.steps().contains(box.step())).findFirst();
        return of.flatMap(graph -> asked.text().document().graphs().stream().filter(one -> one.name().text().equals(graph.name().text())).findFirst())
                .flatMap(graph -> graph.step(box.step().name())).map(step -> step.name().at());
    }

    private void light() {
        if (canvas.isDisposed()) {
            return;
        }
        canvas.light(ChosenFinding.get().finding().filter(found -> isOfTheText(found.at())).map(Finding::path).orElse(List.of()));
    }

    private boolean isOfTheText(SourceRange at) {
        return drawn != null && at.source().name().equals(drawn.text().source().name());
    }

    private static Chart chart(ChartRequest of, IProgressMonitor monitor) {
        Document document = of.live().text().document();
        List<ChartMaker.Part> parts = document instanceof Procedure procedure ? List.of(new ChartMaker.Part("", "", procedure))
                : document.graphs().stream().map(ChartView::routine).toList();
        return ChartMaker.of(parts, document.scope(), of.open()::contains, (key, step) -> "", monitor::isCanceled);
    }

    private static ChartMaker.Part routine(StepGraph graph) {
        return new ChartMaker.Part("Routine " + graph.name().text() + (graph.title().isBlank() ? "" : ": " + graph.title()),
                graph.name().text() + "/", graph);
    }

    private final class LayoutJob extends Job {
        LayoutJob() {
            super("Laying out the chart");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            ChartRequest of = wanted;
            if (of == null) {
                return Status.OK_STATUS;
            }
            try {
                Chart chart = chart(of, monitor);
                ScrolledPage.later(canvas, () -> {
                    if (of == wanted) {
                        drawn = of.live();
                        changes.drawn(drawn);
                        canvas.show(chart);
                        inHandAtCaret();
                        light();
                    }
                });
                if (of.likelihood() && of.live().text().document() instanceof Procedure procedure) {
                    ArrowStudy study = ArrowStudy.of(procedure);
                    ScrolledPage.later(canvas, () -> reckoned(of, study));
                }
            } catch (CancellationException overtaken) {
                return Status.CANCEL_STATUS;
            } catch (RuntimeException failed) {
                ILog.of(ChartView.class).error("The chart of " + of.live().file().getName() + " could not be laid out.", failed);
                ScrolledPage.later(canvas, () -> canvas.waits("This chart cannot be laid out from the text as it is now. It comes back with the next change."));
            }
            return Status.OK_STATUS;
        }
    }

    private void reckoned(ChartRequest of, ArrowStudy study) {
        if (of == wanted && likelihood) {
            canvas.tellFigures(Optional.of(new ArrowWords(study)));
            if (study.isEmpty()) {
                canvas.tell("How often an arrow is taken follows from the faults and their cases; none is written yet.");
            }
        }
    }

    /** Passes on what is asked of the canvas. */
    private final class Acting implements ChartActs {
        @Override
        public void take(ChartBox box) {
            select(box);
        }

        @Override
        public void goTo(ChartBox box) {
            goToText(box);
        }

        @Override
        public void openOrFold(ChartBox box) {
            ChartView.this.openOrFold(box);
        }

        @Override
        public void turn(ChartBox from, int cell, ChartBox to) {
            changes.turn(from, cell, false, to);
        }

        @Override
        public void lead(ChartBox from, int cell) {
            changes.lead(from, cell, false);
        }

        @Override
        public void insert(ChartBox from, int cell) {
            changes.insert(from, cell);
        }

        @Override
        public void add(ChartBox behind) {
            changes.add(behind);
        }

        @Override
        public void takeOut(ChartBox box) {
            changes.takeOut(box);
        }
    }

    @Override
    public void setFocus() {
        canvas.setFocus();
    }

    @Override
    public void dispose() {
        making.cancel();
        changes.stop();
        ActiveText.get().removeView(this);
        ChosenFinding.get().removeListener(finding);
        super.dispose();
    }
}

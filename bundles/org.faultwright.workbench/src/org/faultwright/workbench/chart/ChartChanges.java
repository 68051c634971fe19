/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.steps.NewStep;
import org.faultwright.analysis.steps.StepChange;
import org.faultwright.analysis.steps.StepEdits;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.workbench.editor.FixApplication;
import org.faultwright.workbench.editor.LostProtection;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.ScrolledPage;

/**
 * Changes the steps of the text that is drawn. Each change is tried away from the window's thread: the changed text is read, held against
 * what was asked for, and checked in full; then it is one change of the text in the editor. What takes protection away is asked about first.
 */
final class ChartChanges {
    static final String CHANGED = "The text has changed since the chart was drawn; do it again once it is drawn anew.";
    static final String OTHER = "Nothing was changed: another text has come to the front meanwhile.";
    static final String QUESTION = "This takes protection away";
    private static final int MOST_TOLD = 6;

    private final ChartCanvas canvas;
    private final TrialJob trying = new TrialJob();
    private LiveText drawn;

    /** @param take the key of the step that is in hand after the change; empty to leave it */
    private record ChangeRequest(LiveText live, StepChange.Offered offered, String take) {
    }

    /** @param harm what it takes away, in words */
    private record TriedChange(ChangeRequest asked, List<Finding> added, List<String> harm) {
    }

    ChartChanges(ChartCanvas canvas) {
        this.canvas = canvas;
        trying.setSystem(true);
    }

    /** From now on the chart shows this text; null while it shows none. */
    void drawn(LiveText now) {
        drawn = now;
    }

    void stop() {
        trying.cancel();
    }

    void turn(ChartBox from, int cell, boolean otherwise, ChartBox to) {
        inGraph(from, graph -> {
            if (graph.steps().stream().noneMatch(step -> step == to.step())) {
                canvas.tell("\"" + to.step().name() + "\" stands in another part of the chart; a result leads to a step of the same procedure or routine.");
                return;
            }
            change(graph, edits -> edits.turn(from.step(), cell, otherwise, to.step().name().text()), "");
        });
    }

    /** Asks where a result is to lead. */
    void lead(ChartBox from, int cell, boolean otherwise) {
        if (cell >= from.cells().size()) {
            canvas.tell("\"" + from.step().name() + "\" has no result that could lead on.");
            return;
        }
        Outcome outcome = from.cells().get(cell).outcome();
        inGraph(from, graph -> {
            List<StepChooser.Choice> choices = Stream.of(graph.writtenSteps().stream().map(step -> choice(step.name().text(), step)),
                    graph.leadsToFaults().stream().map(fault -> new StepChooser.Choice(fault.name().text(), fault.name().text(), "found: " + fault.title())),
                    graph.exits().stream().map(exit -> new StepChooser.Choice(exit.text(), exit.text(), "the way out"))).flatMap(one -> one).toList();
            String which = otherwise ? "\", once its bound is used up, lead?" : "\" lead?";
            new StepChooser(canvas.getShell(), "Lead the result", "To which step shall \"" + outcome.key() + "\" of \"" + from.step().name() + which,
                    choices).ask().ifPresent(to -> change(graph, edits -> edits.turn(from.step(), cell, otherwise, to.key()), ""));
        });
    }

    static StepChooser.Choice choice(String key, Step step) {
        return new StepChooser.Choice(key, step.name().text(), step.title());
    }

    void insert(ChartBox from, int cell) {
        inGraph(from, graph -> ask("Insert a step", graph)
                .ifPresent(step -> change(graph, edits -> edits.insert(from.step(), cell, false, step), key(from, step.name()))));
    }

    void add(ChartBox behind) {
        inGraph(behind, graph -> ask("Add a step", graph).ifPresent(step -> change(graph, edits -> edits.add(behind.step(), step), key(behind, step.name()))));
    }

    void takeOut(ChartBox box) {
        inGraph(box, graph -> change(graph, edits -> edits.takeOut(box.step()), box.step().outcomes().stream().flatMap(one -> one.target().stream())
                .findFirst().map(Name::text).map(name -> key(box, name)).orElse("")));
    }

    /** Of a step beside another one: within the same opened routine, where that is in one. */
    private static String key(ChartBox beside, String name) {
        return beside.key().substring(0, beside.key().lastIndexOf('/') + 1) + name;
    }

    private Optional<NewStep> ask(String title, StepGraph graph) {
        Set<String> taken = Stream.concat(graph.writtenSteps().stream().map(Step::name), graph.exits().stream()).map(Name::text).collect(Collectors.toSet());
        return new NewStepDialog(canvas.getShell(), title, taken, drawn.text().document().scope()).ask();
    }

    /** The graph of the text in front that holds the step; of another text nothing is changed from here. */
    private void inGraph(ChartBox box, Consumer<StepGraph> does) {
        Optional<StepGraph> graph = drawn == null ? Optional.empty()
                : drawn.text().document().graphs().stream().filter(one -> one.steps().stream().anyMatch(step -> step == box.step())).findFirst();
        if (graph.isEmpty()) {
            canvas.tell("\"" + box.step().name() + "\" stands in another text: go there with Enter, and change it in the chart of that text.");
        } else {
            does.accept(graph.get());
        }
    }

    private void change(StepGraph graph, Function<StepEdits, StepChange> what, String take) {
        if (drawn == null || !drawn.isCurrent()) {
            canvas.tell(CHANGED);
            return;
        }
        StepChange change = what.apply(new StepEdits(drawn.text().document(), graph));
        if (change instanceof StepChange.Refused refused) {
            canvas.tell(refused.sentence());
        } else if (change instanceof StepChange.Offered offered) {
            canvas.tell("Trying the change\u2026");
            trying.asked = new ChangeRequest(drawn, offered, take);
            trying.cancel();
            trying.schedule();
        }
    }

    private final class TrialJob extends Job {
        private volatile ChangeRequest asked;

        TrialJob() {
            super("Trying a change of the steps");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            ChangeRequest now = asked;
            try {
                SourceText before = now.live().text().source();
                Document after = LiveTexts.get().services().document(new SourceText(before.name(), now.offered().fix().applied()));
                if (!now.offered().holds(after)) {
                    ScrolledPage.later(canvas, () -> canvas.tell("This change cannot be written without changing something else; make it in the text."));
                    return Status.OK_STATUS;
                }
                List<Finding> added = LiveTexts.get().services().added(now.offered().fix());
                TriedChange tried = new TriedChange(now, added, LostProtection.of(now.live().text().document(), after, added));
                ScrolledPage.later(canvas, () -> finish(tried));
            } catch (RuntimeException failed) {
                ILog.of(ChartChanges.class).error("\"" + now.offered().fix().title() + "\" could not be tried.", failed);
                ScrolledPage.later(canvas, () -> canvas.tell("This change could not be tried; make it in the text."));
            }
            return Status.OK_STATUS;
        }
    }

    private void finish(TriedChange tried) {
        ChangeRequest asked = tried.asked();
        if (asked != trying.asked) {
            return;
        }
        if (drawn == null || drawn.document() != asked.live().document()) {
            canvas.tell(OTHER);
            return;
        }
        if (!tried.harm().isEmpty() && !isWanted(tried)) {
            canvas.tell("Nothing was changed.");
            return;
        }
        if (!FixApplication.apply(asked.offered().fix(), asked.live().document())) {
            canvas.tell(CHANGED);
            return;
        }
        if (!asked.take().isEmpty()) {
            canvas.takeNext(asked.take());
        }
        int place = place(asked.offered().fix());
        ActiveText.get().editor().ifPresent(editor -> editor.selectAndReveal(place, 0));
        canvas.tell("Done: " + asked.offered().fix().title() + ". " + (tried.added().isEmpty() ? "Nothing new is found in it." : "New in the findings: "
                + Severity.counted(tried.added()) + "."));
    }

    /** Where the arrow or step that was asked for stands by now: its edit is the last one of the list, wherever it is in the text. */
    private static int place(Fix fix) {
        Fix.Edit own = fix.edits().get(fix.edits().size() - 1);
        int shifted = fix.edits().stream().filter(edit -> edit.at().offset() < own.at().offset())
                .mapToInt(edit -> edit.replacement().length() - edit.at().length()).sum();
        return own.at().offset() + shifted + own.replacement().length() - own.replacement().stripLeading().length();
    }

    private boolean isWanted(TriedChange tried) {
        List<String> told = tried.harm().stream().limit(MOST_TOLD).map(line -> "\u2022 " + line).collect(Collectors.toCollection(ArrayList::new));
        if (tried.harm().size() > MOST_TOLD) {
            told.add("\u2026 and " + (tried.harm().size() - MOST_TOLD) + " more");
        }
        return MessageDialog.open(MessageDialog.WARNING, canvas.getShell(), QUESTION, tried.asked().offered().fix().title() + "?\n\n"
                + String.join("\n", told), SWT.NONE, "Leave it as it is", "Change it") == 1;
    }
}

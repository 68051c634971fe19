/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.usedby;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Link;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.faults.ExampleRun;
import org.faultwright.language.server.Touched;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;

/** What a change at the cursor reaches: the ways to the step, the examples through it, the faults that name it. */
public final class UsedByView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.usedby";

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private final Job asking = new Asking();
    private volatile Optional<ActiveText.Place> place = Optional.empty();
    private ScrolledComposite scroll;
    private Composite body;

    @Override
    public void createPartControl(Composite parent) {
        scroll = new ScrolledComposite(parent, SWT.V_SCROLL);
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        scroll.addListener(SWT.Resize, event -> fit());
        asking.setSystem(true);
        ActiveText.get().addListener(following);
    }

    private void follow(Optional<ActiveText.Place> now) {
        place = now;
        asking.schedule(120);
    }

    private final class Asking extends Job {
        Asking() {
            super("What it touches");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            Optional<Touched> touched = place.flatMap(there -> Touched.at(there.live().text(), there.offset()));
            if (!scroll.isDisposed()) {
                scroll.getDisplay().asyncExec(() -> show(touched));
            }
            return Status.OK_STATUS;
        }
    }

    private void show(Optional<Touched> touched) {
        if (scroll.isDisposed()) {
            return;
        }
        if (body != null) {
            body.dispose();
        }
        body = new Composite(scroll, SWT.NONE);
        GridLayoutFactory.swtDefaults().margins(12, 8).spacing(4, 6).applyTo(body);
        touched.ifPresentOrElse(this::fill, () -> line("Put the cursor in a step to see what a change of it reaches.", List.of()));
        scroll.setContent(body);
        fit();
    }

    private void fill(Touched touched) {
        line(linked(List.of(touched.step().name())) + "  " + plain(touched.step().title()),
                List.of(touched.step().name().at()));
        named("Reached by", touched.comesFrom().stream().map(step -> step.name()).toList(), "nothing; it is the beginning, or no way leads here");
        if (!touched.way().isEmpty()) {
            String way = touched.way().stream().map(step -> plain(step.toString())).collect(Collectors.joining(" \u203a "));
            line("Shortest way: " + way, List.of());
        }
        examples(touched.examples());
        named("Faults that say what it shows", touched.faults().stream().map(fault -> fault.name()).toList(), "none");
    }

    private void examples(List<ExampleRun> runs) {
        if (runs.isEmpty()) {
            line("Examples through it: none", List.of());
            return;
        }
        StringBuilder words = new StringBuilder("Examples through it: ");
        for (int i = 0; i < runs.size(); i++) {
            words.append(i > 0 ? ", " : "").append("<a href=\"").append(i).append("\">")
                    .append(plain(runs.get(i).example().title().text())).append("</a>")
                    .append(runs.get(i).passes() ? "" : " (fails)");
        }
        line(words.toString(), runs.stream().map(run -> run.example().title().at()).toList());
    }

    private void named(String what, List<Name> names, String none) {
        line(what + ": " + (names.isEmpty() ? none : linked(names)), names.stream().map(Name::at).toList());
    }

    private static String linked(List<Name> names) {
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < names.size(); i++) {
            words.append(i > 0 ? ", " : "").append("<a href=\"").append(i).append("\">").append(plain(names.get(i).text()))
                    .append("</a>");
        }
        return words.toString();
    }

    private static String plain(String words) {
        return words.replace("&", "&&").replace("<", "\u2039");
    }

    private void line(String words, List<SourceRange> targets) {
        Link link = new Link(body, SWT.WRAP);
        link.setText(words);
        link.addListener(SWT.Selection, event -> Editors.show(targets.get(Integer.parseInt(event.text))));
        GridDataFactory.fillDefaults().grab(true, false).hint(160, SWT.DEFAULT).applyTo(link);
    }

    private void fit() {
        if (body != null) {
            scroll.setMinHeight(body.computeSize(scroll.getClientArea().width, SWT.DEFAULT).y);
        }
    }

    @Override
    public void setFocus() {
        scroll.setFocus();
    }

    @Override
    public void dispose() {
        asking.cancel();
        ActiveText.get().removeListener(following);
        super.dispose();
    }
}

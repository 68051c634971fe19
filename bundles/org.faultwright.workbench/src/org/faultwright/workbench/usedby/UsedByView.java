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
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Link;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.language.server.ChangeImpact;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.look.ScrolledPage;

/** What a change at the cursor reaches: the ways to the step, the examples through it, the faults that name it. */
public final class UsedByView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.usedby";

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private final Job asking = new Asking();
    private volatile Optional<ActiveText.Place> place = Optional.empty();
    private ScrolledPage page;

    @Override
    public void createPartControl(Composite parent) {
        page = new ScrolledPage(parent);
        asking.setSystem(true);
        ActiveText.get().addView(this, following);
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
            Optional<ChangeImpact> touched = place.flatMap(there -> ChangeImpact.at(there.live().text(), there.offset()));
            page.later(() -> show(touched));
            return Status.OK_STATUS;
        }
    }

    private void show(Optional<ChangeImpact> touched) {
        page.write(body -> touched.ifPresentOrElse(step -> fill(body, step),
                () -> line(body, "Put the cursor in a step to see what a change of it reaches.", List.of())));
    }

    private static void fill(Composite body, ChangeImpact touched) {
        line(body, linked(List.of(touched.step().name())) + "  " + ScrolledPage.plain(touched.step().title()),
                List.of(touched.step().name().at()));
        named(body, "Reached by", touched.comesFrom().stream().map(step -> step.name()).toList(), "nothing; it is the beginning, or no way leads here");
        if (!touched.way().isEmpty()) {
            String way = touched.way().stream().map(step -> ScrolledPage.plain(step.toString())).collect(Collectors.joining(" \u203a "));
            line(body, "Shortest way: " + way, List.of());
        }
        examples(body, touched.examples());
        named(body, "Faults that say what it shows", touched.faults().stream().map(fault -> fault.name()).toList(), "none");
    }

    private static void examples(Composite body, List<ExampleRun> runs) {
        if (runs.isEmpty()) {
            line(body, "Examples through it: none", List.of());
            return;
        }
        StringBuilder words = new StringBuilder("Examples through it: ");
        for (int i = 0; i < runs.size(); i++) {
            words.append(i > 0 ? ", " : "").append("<a href=\"").append(i).append("\">")
                    .append(ScrolledPage.plain(runs.get(i).example().title().text())).append("</a>")
                    .append(runs.get(i).passes() ? "" : " (fails)");
        }
        line(body, words.toString(), runs.stream().map(run -> run.example().title().at()).toList());
    }

    private static void named(Composite body, String what, List<Name> names, String none) {
        line(body, what + ": " + (names.isEmpty() ? none : linked(names)), names.stream().map(Name::at).toList());
    }

    private static String linked(List<Name> names) {
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < names.size(); i++) {
            words.append(i > 0 ? ", " : "").append("<a href=\"").append(i).append("\">").append(ScrolledPage.plain(names.get(i).text()))
                    .append("</a>");
        }
        return words.toString();
    }

    private static void line(Composite body, String words, List<SourceRange> targets) {
        Link link = ScrolledPage.link(body);
        link.setText(words);
        link.addListener(SWT.Selection, event -> Editors.show(targets.get(Integer.parseInt(event.text))));
        GridDataFactory.fillDefaults().grab(true, false).hint(160, SWT.DEFAULT).applyTo(link);
    }

    @Override
    public void setFocus() {
        page.setFocus();
    }

    @Override
    public void dispose() {
        asking.cancel();
        ActiveText.get().removeView(this);
        super.dispose();
    }
}

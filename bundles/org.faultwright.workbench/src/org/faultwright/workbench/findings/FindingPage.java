/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.editor.FixApplication;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.Menus;
import org.faultwright.workbench.look.ScrolledPage;

/** One finding in full: what is wrong, what to do, the path that proves it, its fixes, its rule. */
final class FindingPage {
    private final Runnable show = this::show;
    private final ScrolledPage page;

    FindingPage(Composite parent) {
        page = new ScrolledPage(parent);
        ChosenFinding.get().addListener(show);
        show();
    }

    void dispose() {
        ChosenFinding.get().removeListener(show);
    }

    private void show() {
        page.write(body -> ChosenFinding.get().finding().ifPresentOrElse(finding -> fill(body, finding),
                () -> text(body, "Choose a finding to see what proves it and what to do.")));
    }

    private void fill(Composite body, Finding finding) {
        text(body, finding.message());
        text(body, "To do: " + finding.advice());
        if (!finding.path().isEmpty()) {
            path(body, finding.path());
        }
        Composite fixes = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(fixes);
        wide(fixes);
        offer(finding, fixes);
        if (!finding.fixes().isEmpty()) {
            Link all = ScrolledPage.link(body);
            all.setText("<a>" + FixAllDialog.TITLE + "\u2026</a>");
            all.addListener(SWT.Selection, event -> Menus.run("fixAll"));
            wide(all);
        }
        Link why = ScrolledPage.link(body);
        why.setText("<a>Why this is looked for: " + ScrolledPage.plain(HelpView.ruleTitle(finding.rule())) + "</a>");
        why.addListener(SWT.Selection, event -> HelpView.showRule(finding.rule()));
        wide(why);
    }

    private static void path(Composite body, List<PathStep> path) {
        StringBuilder words = new StringBuilder("Path: ");
        for (int i = 0; i < path.size(); i++) {
            String step = ScrolledPage.plain(path.get(i).toString());
            boolean here = i == ChosenFinding.get().step();
            words.append(i > 0 ? " \u203a " : "").append(here ? "\u25b6 " : "").append("<a href=\"").append(i)
                    .append("\">").append(step).append("</a>");
        }
        Link link = ScrolledPage.link(body);
        link.setText(words.toString());
        link.addListener(SWT.Selection, event -> ChosenFinding.get().goTo(Integer.parseInt(event.text)));
        wide(link);
    }

    /** Each fix is tried before it is offered, away from the window's thread. */
    private void offer(Finding finding, Composite fixes) {
        if (finding.fixes().isEmpty()) {
            return;
        }
        CompletableFuture.supplyAsync(() -> LiveTexts.get().services().fixes(finding))
                .thenAccept(tried -> page.later(() -> {
                    if (!fixes.isDisposed()) {
                        tried.forEach(fix -> button(fixes, finding, fix));
                        page.grown();
                    }
                }));
    }

    private static void button(Composite fixes, Finding finding, Fix fix) {
        Button button = new Button(fixes, SWT.PUSH | SWT.WRAP);
        button.setText(fix.title().replace("&", "&&"));
        button.addListener(SWT.Selection, event -> apply(finding, fix));
    }

    private static void apply(Finding finding, Fix fix) {
        Editors.show(finding.at());
        Optional<IDocument> document = Editors.active().flatMap(Editors::document);
        document.filter(text -> FixApplication.apply(fix, text)).ifPresent(text -> {
            Point changed = FixApplication.toSelect(fix, text);
            Editors.active().ifPresent(editor -> editor.selectAndReveal(changed.x, changed.y));
        });
    }

    private static void text(Composite body, String words) {
        Label label = new Label(body, SWT.WRAP);
        label.setText(words.replace("&", "&&"));
        wide(label);
    }

    private static void wide(Control control) {
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(control);
    }
}

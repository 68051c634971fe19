/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.Severity;
import org.faultwright.language.beginning.InterviewProgress;
import org.faultwright.language.server.Colouring;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;
import org.faultwright.workbench.look.ScrolledPage;

/** The text that the answers make, with what was found in it; made anew after each answer, away from the window's thread. */
final class GrowingText {
    private static final int MILLISECONDS_AFTER_AN_ANSWER = 300;
    private static final int MOST_REMARKS = 6;
    private static final int MARGIN = 6;

    private final StyledText text;
    private final ScrolledComposite scroll;
    private final Label told;
    private final Growing growing = new Growing();
    private final Runnable whenGrown;
    private volatile Supplier<InterviewProgress> wanted;
    private Optional<InterviewProgress> come = Optional.empty();

    /** @param grown called when the text has grown */
    GrowingText(Composite parent, Runnable grown) {
        this.whenGrown = grown;
        Composite half = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().margins(0, 8).spacing(0, 6).applyTo(half);
        text = new StyledText(half, SWT.READ_ONLY | SWT.V_SCROLL | SWT.H_SCROLL | SWT.BORDER);
        text.setFont(JFaceResources.getTextFont());
        text.setMargins(8, MARGIN, 8, MARGIN);
        // Tab goes on to the next question
        text.addListener(SWT.Traverse, event -> event.doit = true);
        AccessibleName.as(text, "The text so far");
        GridDataFactory.fillDefaults().grab(true, true).hint(200, 200).applyTo(text);
        scroll = new ScrolledComposite(half, SWT.V_SCROLL);
        scroll.setExpandHorizontal(true);
        told = new Label(scroll, SWT.WRAP);
        scroll.setContent(told);
        scroll.addListener(SWT.Resize, event -> fit());
        GridDataFactory.fillDefaults().grab(true, false).hint(120, 4 * told.computeSize(SWT.DEFAULT, SWT.DEFAULT).y).applyTo(scroll);
        growing.setSystem(true);
    }

    /** What is told is read to its end, however narrow the text is. */
    private void fit() {
        int width = Math.max(40, scroll.getClientArea().width);
        told.setSize(width, told.computeSize(width, SWT.DEFAULT).y);
    }

    Optional<InterviewProgress> come() {
        return come;
    }

    void grow(Supplier<InterviewProgress> from) {
        wanted = from;
        come = Optional.empty();
        growing.cancel();
        growing.schedule(MILLISECONDS_AFTER_AN_ANSWER);
    }

    void stop() {
        wanted = null;
        growing.cancel();
    }

    private final class Growing extends Job {
        Growing() {
            super("Writing from the answers");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            Supplier<InterviewProgress> from = wanted;
            if (from == null) {
                return Status.OK_STATUS;
            }
            InterviewProgress grown;
            try {
                grown = from.get();
            } catch (RuntimeException failed) {
                ILog.of(GrowingText.class).error("The answers could not be made into a text.", failed);
                grown = new InterviewProgress("", false, List.of("These answers cannot be made into a text. Change the last one."), List.of());
            }
            InterviewProgress made = grown;
            ScrolledPage.later(text, () -> show(from, made));
            return Status.OK_STATUS;
        }
    }

    private void show(Supplier<InterviewProgress> from, InterviewProgress grown) {
        if (from != wanted) {
            return;
        }
        come = Optional.of(grown);
        String before = text.getText();
        if (!before.equals(grown.text())) {
            int[] other = Editors.differing(before, grown.text());
            int end = Math.max(other[0], grown.text().length() - (before.length() - other[0] - other[1]));
            text.setRedraw(false);
            text.setText(grown.text());
            colour(grown.text());
            mark(before, other[0], Math.min(end, grown.text().length()));
            text.setRedraw(true);
        }
        told.setText(words(grown).replace("&", "&&"));
        told.setToolTipText(words(grown));
        scroll.setOrigin(0, 0);
        fit();
        told.setForeground(Palette.now().of(grown.isWhole() ? Use.BESIDE : Use.WARNING));
        whenGrown.run();
    }

    /** What the last answer has brought is marked, and in sight. */
    private void mark(String before, int from, int to) {
        if (!before.isEmpty() && to > from) {
            int first = text.getLineAtOffset(from);
            int last = text.getLineAtOffset(to > from && text.getText(to - 1, to - 1).equals("\n") ? to - 1 : to);
            text.setLineBackground(first, last - first + 1, Palette.now().of(Use.STEP_IN_HAND));
            text.setTopPixel(Math.max(0, text.getTopPixel() + text.getLinePixel(Math.max(0, first - 3)) - MARGIN));
        }
    }

    private void colour(String words) {
        List<StyleRange> styles = new ArrayList<>();
        for (Colouring.Stretch stretch : Colouring.of(words)) {
            Use use = switch (stretch.kind()) {
                case BEGINNING, KEYWORD -> Use.KEYWORD;
                case QUANTITY, ARROW -> Use.QUANTITY;
                case NAME -> Use.NAME;
                case TEXT -> Use.TEXT;
                case COMMENT -> Use.COMMENT;
            };
            styles.add(new StyleRange(stretch.offset(), stretch.length(), Palette.now().of(use), null,
                    stretch.kind() == Colouring.Kind.BEGINNING ? SWT.BOLD : SWT.NORMAL));
        }
        text.setStyleRanges(styles.toArray(StyleRange[]::new));
    }

    static String words(InterviewProgress grown) {
        String found = !grown.isWhole() ? "Not whole yet." : "Checked in full: no error, " + Phrases.counted(grown.count(Severity.WARNING), "warning", "warnings") + ", "
                + Phrases.counted(grown.count(Severity.ADVICE), "piece of advice", "pieces of advice") + ".";
        return found + " " + String.join(" ", grown.remarks().stream().limit(MOST_REMARKS).toList());
    }
}

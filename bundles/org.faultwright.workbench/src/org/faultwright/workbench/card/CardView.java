/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.card;

import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.ScrolledPage;

/** The card as it will print; follows the step at the cursor, and a click on a step takes the cursor there. */
public final class CardView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.card";
    private static final int MILLISECONDS_AFTER_A_CHANGE = 250;

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private Job making = new Making();
    private volatile LiveText wanted;
    private LiveText asked;
    private CardCanvas canvas;

    @Override
    public void createPartControl(Composite parent) {
        canvas = new CardCanvas(parent, CardView::go);
        ActiveText.get().addView(this, following);
    }

    /** The pages shown, for whoever asks what is on them; absent while none are ready. */
    public Optional<CardPages> pages() {
        return canvas.pages();
    }

    /** How many pictures of pages are in memory. */
    public int picturesKept() {
        return canvas.kept();
    }

    /** The step marked on the card; absent when none is. */
    public Optional<String> marked() {
        return canvas.marked();
    }

    private void follow(Optional<ActiveText.Place> place) {
        if (canvas.isDisposed()) {
            return;
        }
        LiveText live = place.map(ActiveText.Place::live).orElse(null);
        if (live == null || !(live.text().document() instanceof Procedure)) {
            asked = live;
            wanted = null;
            canvas.say(live != null ? "A library has no card of its own."
                    : ActiveText.get().editor().isPresent() ? "Reading the procedure\u2026" : "Open a procedure to see its card.");
            return;
        }
        if (live != asked) {
            boolean other = asked == null || !asked.file().equals(live.file());
            asked = live;
            wanted = live;
            if (other) {
                canvas.say("Preparing the card\u2026");
            }
            making.cancel();
            if (other) {
                making = new Making(); // the card of a long text that was left is not waited for
            }
            making.schedule(other ? 0 : MILLISECONDS_AFTER_A_CHANGE);
        }
        canvas.mark(stepAt(live, place.get().offset()));
    }

    private static Optional<String> stepAt(LiveText live, int offset) {
        for (StepGraph graph : live.text().document().graphs()) {
            String before = graph instanceof Procedure ? "" : graph.name().text() + "/";
            Optional<String> step = graph.steps().stream()
                    .filter(one -> one.at().offset() <= offset && offset <= one.at().end())
                    .map(one -> before + one.name().text()).findFirst();
            if (step.isPresent()) {
                return step;
            }
        }
        return Optional.empty();
    }

    private static void go(String step) {
        ActiveText.get().place().ifPresent(place -> {
            for (StepGraph graph : place.live().text().document().graphs()) {
                String before = graph instanceof Procedure ? "" : graph.name().text() + "/";
                graph.steps().stream().filter(one -> step.equals(before + one.name().text())).findFirst()
                        .ifPresent(one -> ActiveText.get().editor().ifPresent(editor -> editor
                                .selectAndReveal(one.name().at().offset(), one.name().at().length())));
            }
        });
    }

    private final class Making extends Job {
        Making() {
            super("Preparing the card");
            setSystem(true);
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            LiveText live = wanted;
            if (live == null || !(live.text().document() instanceof Procedure procedure)) {
                return Status.OK_STATUS;
            }
            try {
                CheckedProcedure checked = LiveTexts.get().services().forPublishing(procedure);
                if (isStale(live, monitor)) {
                    return Status.CANCEL_STATUS;
                }
                byte[] card = new CardPdf().publish(Publication.of(checked, Drafts.ALLOWED)).bytes();
                if (isStale(live, monitor)) {
                    return Status.CANCEL_STATUS;
                }
                CardPages pages = CardPages.open(card);
                ScrolledPage.later(canvas, () -> {
                    if (live == wanted) {
                        canvas.show(pages);
                    } else {
                        pages.close();
                    }
                });
            } catch (PublishingRefused | java.io.IOException | RuntimeException failed) {
                ILog.of(CardView.class).error("The card of " + live.file().getName() + " could not be made.", failed);
                ScrolledPage.later(canvas, () -> {
                    if (live == wanted) {
                        canvas.say("This card cannot be made from the text as it is now. It comes back with the next change that can be printed.");
                    }
                });
            }
            return Status.OK_STATUS;
        }

        private boolean isStale(LiveText live, IProgressMonitor monitor) {
            return monitor.isCanceled() || live != wanted;
        }
    }

    @Override
    public void setFocus() {
        canvas.setFocus();
    }

    @Override
    public void dispose() {
        making.cancel();
        ActiveText.get().removeView(this);
        super.dispose();
    }
}

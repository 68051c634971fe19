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
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.StepGraph;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardInHand;
import org.faultwright.publish.card.CardPages;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.ScrolledPage;

/** The card as it will print; follows the step at the cursor, and a click on a step takes the cursor there. */
public final class CardView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.card";
    /** A card that takes no longer need not wait: the text has waited already, before it was read. */
    private static final int SHORT_MILLISECONDS = 400;
    private static final int MOST_MILLISECONDS_OF_PAUSE = 1000;
    /** After so long without a change the steps go where they are published. */
    private static final int MILLISECONDS_TO_SETTLE = 1500;

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private CardJob making = new CardJob();
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
                making = new CardJob(); // the card of a long text that was left is not waited for
            }
            making.schedule(other ? 0 : making.pause());
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

    /** Makes the cards of one text. A card that is looked at waits for no rule, and its steps stay where they are while somebody writes. */
    private final class CardJob extends Job {
        private final CardInHand inHand = new CardInHand();
        private volatile long took;
        /** What the pages that are shown were made of. */
        private volatile Optional<Publication> made = Optional.empty();
        private Optional<Publication> unsettled = Optional.empty();

        CardJob() {
            super("Preparing the card");
            setSystem(true);
        }

        /** In milliseconds: as long as a long card took the last time, so that one core at most is busy with cards. */
        int pause() {
            return took <= SHORT_MILLISECONDS ? 0 : (int) Math.min(MOST_MILLISECONDS_OF_PAUSE, took);
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            LiveText live = wanted;
            if (live == null || !(live.text().document() instanceof Procedure procedure)) {
                return Status.OK_STATUS;
            }
            try {
                long start = System.nanoTime();
                Publication publication = Publication.of(LiveTexts.get().services().forLooking(live.text(), procedure), Drafts.ALLOWED);
                boolean again = made.filter(before -> isSame(before, publication)).isPresent();
                Optional<CardPages> pages = !again ? Optional.of(inHand.of(publication))
                        : unsettled.isPresent() ? inHand.settled(unsettled.get()) : Optional.empty();
                unsettled = again ? Optional.empty() : Optional.of(publication);
                made = Optional.of(publication);
                pages.ifPresent(ready -> show(live, ready));
                if (!again) {
                    took = (System.nanoTime() - start) / 1_000_000;
                    schedule(MILLISECONDS_TO_SETTLE);
                }
            } catch (PublishingRefused | java.io.IOException | RuntimeException failed) {
                made = Optional.empty();
                ILog.of(CardView.class).error("The card of " + live.file().getName() + " could not be made.", failed);
                ScrolledPage.later(canvas, () -> {
                    if (live == wanted) {
                        canvas.say("This card cannot be made from the text as it is now. It comes back with the next change that can be printed.");
                    }
                });
            }
            return Status.OK_STATUS;
        }

        /** What more rules have found makes no other card, but for errors. */
        private static boolean isSame(Publication one, Publication other) {
            return one.digest().equals(other.digest()) && one.errors().equals(other.errors());
        }

        private void show(LiveText live, CardPages pages) {
            ScrolledPage.later(canvas, () -> {
                if (live == wanted) {
                    canvas.show(pages);
                } else {
                    made = Optional.empty();
                    pages.close();
                }
            });
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

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;
import java.util.function.Consumer;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Procedure;
import org.faultwright.workbench.editor.FixApplication;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/**
 * The procedure in front, walked one step at a time. Where a walk stands is worked out away from the window's thread, again after each change of the
 * text; what was answered is kept for each open text.
 */
public final class WalkView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.walk";
    private static final int MILLISECONDS_AFTER_A_CHANGE = 250;
    private static final String READING = "Reading the procedure\u2026";

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private final IPartListener2 leaving = new Leaving();
    private final Map<IDocument, WalkInHand> walks = new WeakHashMap<>();
    private final StepMark mark = new StepMark();
    private final Replaying replaying = new Replaying();
    private volatile Request wanted;
    private LiveText asked;
    private boolean working;
    private int errors;
    private WalkPage page;

    /** @param reveal whether the cursor is to go to the step */
    private record Request(LiveText live, Procedure procedure, WalkInHand walk, List<WalkAnswer> answers, boolean reveal) {
    }

    @Override
    public void createPartControl(Composite parent) {
        page = new WalkPage(parent, new Pressing());
        replaying.setSystem(true);
        getSite().getPage().addPartListener(leaving);
        ActiveText.get().addView(this, following);
    }

    /** The walk through the text in front, for whoever asks where it stands; absent while it is not begun or being worked out. */
    Optional<WalkState> stand() {
        return asked == null || working ? Optional.empty() : Optional.ofNullable(walks.get(asked.document())).flatMap(WalkInHand::stand);
    }

    /** As a press on "Begin". @return false while there is nothing to begin */
    public boolean begin() {
        Optional<WalkInHand> walk = inHand().filter(one -> !one.isBegun());
        walk.ifPresent(one -> new Pressing().begin());
        return walk.isPresent();
    }

    /** Whether a step is shown. */
    public boolean isShown() {
        return stand().isPresent();
    }

    /** What is drawn, for whoever looks at it. */
    Composite control() {
        return page.control();
    }

    // ---- the text in front

    private void follow(Optional<ActiveText.Place> place) {
        if (page.isDisposed()) {
            return;
        }
        LiveText live = place.map(ActiveText.Place::live).orElse(null);
        if (live == null || !(live.text().document() instanceof Procedure procedure)) {
            leave();
            page.say(live != null ? "A library is not walked by itself. Open a procedure that uses it."
                    : ActiveText.get().editor().isPresent() ? READING : "Open a procedure to walk it.");
            return;
        }
        if (live == asked) {
            return;
        }
        LiveText before = asked;
        boolean other = before == null || before.document() != live.document();
        asked = live;
        WalkInHand walk = walks.computeIfAbsent(live.document(), none -> new WalkInHand());
        int found = (int) live.text().findings().stream().filter(finding -> finding.severity() == Severity.ERROR).count();
        boolean same = !other && before.text().document() == procedure && found == errors;
        errors = found;
        if (other) {
            mark.clear();
        }
        if (!walk.isBegun()) {
            if (other || before.text().document() != procedure) {
                page.begin(procedure, walk);
            }
        } else if (!procedure.problems().isEmpty()) {
            wanted = null;
            working = false;
            walk.stand().ifPresentOrElse(stand -> page.show(walk, true, errors), () -> page.say("The walk waits until the text can be read."));
        } else if (!same) {
            request(walk, false, other ? 0 : MILLISECONDS_AFTER_A_CHANGE);
        }
    }

    private void leave() {
        asked = null;
        wanted = null;
        working = false;
        mark.clear();
    }

    private void request(WalkInHand walk, boolean reveal, int delay) {
        if (asked != null && asked.text().document() instanceof Procedure procedure) {
            boolean stillToReveal = reveal || wanted != null && working && wanted.reveal() && wanted.walk() == walk;
            wanted = new Request(asked, procedure, walk, walk.answers(), stillToReveal);
            working = true;
            replaying.cancel();
            replaying.schedule(delay);
        }
    }

    /** Works out where the answers lead in the text as it is now. */
    private final class Replaying extends Job {
        private StudiedProcedure studied;

        Replaying() {
            super("Walking the procedure");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            Request request = wanted;
            if (request == null) {
                return Status.OK_STATUS;
            }
            try {
                if (studied == null || studied.procedure() != request.procedure()) {
                    studied = new StudiedProcedure(request.procedure());
                }
                Optional<WalkState> stand = WalkState.of(studied, request.answers());
                page.later(() -> show(request, stand));
            } catch (RuntimeException failed) {
                ILog.of(WalkView.class).error("The walk through " + request.live().file().getName() + " could not be worked out.", failed);
                page.later(() -> page.say("This text cannot be walked as it is now. The walk comes back with the next change."));
            }
            return Status.OK_STATUS;
        }
    }

    private void show(Request request, Optional<WalkState> stand) {
        if (request != wanted) {
            return;
        }
        working = false;
        request.walk().show(stand);
        if (stand.isEmpty()) {
            mark.clear();
            page.begin(request.procedure(), request.walk());
            return;
        }
        draw(request.walk());
        ActiveText.get().editor().ifPresent(editor -> mark.show(editor, request.live().document(), stand.get(), request.reveal()));
    }

    private void draw(WalkInHand walk) {
        page.show(walk, asked != null && !asked.text().document().problems().isEmpty(), errors);
    }

    private Optional<WalkInHand> inHand() {
        return asked == null || working || page.isOldPress() ? Optional.empty() : Optional.ofNullable(walks.get(asked.document()));
    }

    /** What is pressed while the last press is being worked out is not meant for what will be shown then. */
    private final class Pressing implements WalkPage.Presses {
        private void move(Consumer<WalkInHand> change) {
            inHand().ifPresent(walk -> {
                change.accept(walk);
                request(walk, true, 0);
            });
        }

        @Override
        public void begin() {
            move(WalkInHand::begin);
        }

        @Override
        public void goOn() {
            move(WalkInHand::goOn);
        }

        @Override
        public void back() {
            inHand().ifPresent(walk -> {
                walk.back();
                if (walk.isBegun()) {
                    request(walk, true, 0);
                } else {
                    toTheBeginning(walk);
                }
            });
        }

        @Override
        public void beginAnew() {
            inHand().ifPresent(walk -> {
                walk.beginAnew();
                toTheBeginning(walk);
            });
        }

        private void toTheBeginning(WalkInHand walk) {
            mark.clear();
            page.begin((Procedure) asked.text().document(), walk);
        }

        @Override
        public void answer(WalkAnswer answer) {
            move(walk -> walk.answer(answer));
        }

        @Override
        public void takeBack(int kept) {
            move(walk -> walk.takeBack(kept));
        }

        @Override
        public void acknowledge(Note note) {
            inHand().ifPresent(walk -> {
                walk.acknowledge(note);
                draw(walk);
            });
        }

        @Override
        public void keep(String title) {
            inHand().ifPresent(walk -> walk.stand().ifPresent(stand -> WalkView.this.keep(walk, stand, title)));
        }
    }

    // ---- as an example

    private void keep(WalkInHand walk, WalkState stand, String title) {
        IDocument document = asked.document();
        Job.createSystem("Trying the example", (ICoreRunnable) monitor -> {
            KeptExample example = KeptExample.of(stand, title, LiveTexts.get().services());
            page.later(() -> tried(walk, example, document));
        }).schedule();
    }

    /** What was written is shown when the text has been read again. */
    private void tried(WalkInHand walk, KeptExample example, IDocument document) {
        if (example.fix().filter(fix -> FixApplication.apply(fix, document)).isPresent()) {
            walk.keptAs(example.name());
            reveal(example.fix().get(), document);
            return;
        }
        walk.tell(example.refused().orElse("The text has changed meanwhile. Try again."));
        if (asked != null && asked.document() == document && walk.stand().isPresent()) {
            draw(walk);
        }
    }

    private static void reveal(Fix fix, IDocument document) {
        Point changed = FixApplication.toSelect(fix, document);
        ActiveText.get().editor().map(editor -> editor.getAdapter(ITextViewer.class)).filter(viewer -> viewer.getDocument() == document)
                .ifPresent(viewer -> viewer.revealRange(changed.x, fix.edits().get(0).replacement().strip().length()));
    }

    // ---- the view

    private final class Leaving implements IPartListener2 {
        @Override
        public void partHidden(IWorkbenchPartReference reference) {
            if (reference.getPart(false) == WalkView.this) {
                leave();
            }
        }
    }

    @Override
    public void setFocus() {
        page.setFocus();
    }

    @Override
    public void dispose() {
        getSite().getPage().removePartListener(leaving);
        ActiveText.get().removeView(this);
        replaying.cancel();
        mark.clear();
        super.dispose();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.jobs.ISchedulingRule;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.widgets.Control;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.SheetChange;
import org.faultwright.workbench.editor.FixApplication;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.ScrolledPage;

/** Writes changes of the table into the text: worked out from the text as it stands, tried away from the window's thread, and put in as one step to undo. */
final class TableWriting {
    private static final int MOST_TRIES = 4;
    private static final String CHANGED = "The text has changed meanwhile. Try again.";

    private final Control shown;
    private final ISchedulingRule oneByOne = new ISchedulingRule() {
        @Override
        public boolean contains(ISchedulingRule rule) {
            return rule == this;
        }

        @Override
        public boolean isConflicting(ISchedulingRule rule) {
            return rule == this;
        }
    };

    TableWriting(Control shown) {
        this.shown = shown;
    }

    /**
     * One after the other, in the order asked for.
     *
     * @param title  what it does, as an order
     * @param change made from the table of the text as it stands then
     * @param done   told in the window's thread why nothing was written; of nothing where it was, or nothing had to be
     */
    void write(IDocument document, String title, Function<FaultSheet, SheetChange> change, Consumer<List<String>> done) {
        write(document, title, change, done, MOST_TRIES);
    }

    private void write(IDocument document, String title, Function<FaultSheet, SheetChange> change, Consumer<List<String>> done, int tries) {
        Job job = Job.createSystem("Writing into the fault table", (ICoreRunnable) monitor -> {
            try {
                Outcome outcome = tried(document, title, change);
                ScrolledPage.later(shown, () -> {
                    boolean written = outcome.fix().isEmpty() || FixApplication.apply(outcome.fix().get(), document);
                    if (!written && tries > 1) {
                        write(document, title, change, done, tries - 1);
                    } else {
                        done.accept(written ? outcome.refused() : List.of(CHANGED));
                    }
                });
            } catch (RuntimeException failed) {
                ILog.of(TableWriting.class).error("A change of the fault table could not be made.", failed);
                ScrolledPage.later(shown, () -> done.accept(List.of("This cannot be written into the text as it is now. Change it in the text.")));
            }
        });
        job.setRule(oneByOne);
        job.schedule();
    }

    private record Outcome(Optional<Fix> fix, List<String> refused) {
    }

    private static Outcome tried(IDocument document, String title, Function<FaultSheet, SheetChange> change) {
        Optional<LiveText> live = LiveTexts.get().current(document);
        Optional<FaultSheet> sheet = live.flatMap(text -> LiveTexts.get().services().faultSheet(text.text()));
        if (sheet.isEmpty() || !sheet.get().procedure().problems().isEmpty()) {
            return new Outcome(Optional.empty(), List.of("The table waits until the text can be read."));
        }
        SheetChange made = change.apply(sheet.get());
        Optional<Fix> fix = made.fix(title);
        Optional<String> against = fix.flatMap(one -> LiveTexts.get().services().against(live.get().text(), one));
        return against.isPresent() ? new Outcome(Optional.empty(), List.of(against.get())) : new Outcome(fix, made.refused());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import javax.print.PrintException;
import javax.print.PrintService;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.publish.card.CardPrinting;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.look.DialogParent;
import org.faultwright.workbench.look.ScrolledPage;

/** Prints the bench card of the procedure in front. Printers are asked, and fed, away from the window's thread: one that is far off answers late. */
public final class PrintHandler extends AbstractHandler {
    static final String TITLE = "Print the card";

    @Override
    public Object execute(ExecutionEvent event) {
        Shell shell = DialogParent.shell();
        Optional<LiveText> live = ActiveText.get().place().map(ActiveText.Place::live);
        if (live.isEmpty() || !(live.get().text().document() instanceof Procedure)) {
            MessageDialog.openInformation(shell, TITLE, "Open a procedure first; the card of what is in front is printed.");
            return null;
        }
        Job.create("Looking for printers", (ICoreRunnable) monitor -> {
            try {
                CheckedProcedure checked = PublishHandler.checked(live.get());
                List<PrintDialog.Printer> printers = CardPrinting.printers().stream().map(PrintDialog.Printer::of).toList();
                ScrolledPage.later(shell, () -> ask(shell, checked, printers));
            } catch (RuntimeException failed) {
                ILog.of(PrintHandler.class).error("What is to be printed could not be made ready.", failed);
                ScrolledPage.later(shell, () -> MessageDialog.openInformation(shell, TITLE, "The card cannot be printed now. Publish it as a PDF, and print that."));
            }
        }).schedule();
        return null;
    }

    /** A card with open errors says DRAFT on every page, and is printed when somebody says so. */
    static void ask(Shell shell, CheckedProcedure checked, List<PrintDialog.Printer> printers) {
        if (printers.isEmpty()) {
            MessageDialog.openInformation(shell, TITLE, "This machine has no printer. Publish the card as a PDF instead, and print that on another.");
            return;
        }
        PrintDialog dialog = new PrintDialog(shell, printers, checked.errors().size());
        if (dialog.open() == Window.OK) {
            CardPrinting.PrintRequest wish = new CardPrinting.PrintRequest(checked.procedure().title(), dialog.copies(), dialog.bothSides());
            Job.create("Printing the card", (ICoreRunnable) monitor -> print(shell, checked, dialog.card(), dialog.printer(), wish)).schedule();
        }
    }

    private static void print(Shell shell, CheckedProcedure checked, CardPdf card, PrintService printer, CardPrinting.PrintRequest wish) {
        String told;
        try (CardPages pages = CardPages.open(card.publish(Publication.of(checked, Drafts.ALLOWED)).bytes())) {
            CardPrinting.print(pages, printer, wish);
            told = "The printer \"" + printer.getName() + "\" has taken the card: " + pages.count() + (pages.count() == 1 ? " page." : " pages.");
        } catch (PublishingRefused refused) {
            told = refused.getMessage();
        } catch (IOException | PrintException | RuntimeException failed) {
            ILog.of(PrintHandler.class).error("The card could not be printed.", failed);
            told = "The printer \"" + printer.getName() + "\" did not take the card. Look whether it is switched on and has paper, or publish the card as a PDF and print that.";
        }
        String sentence = told;
        ScrolledPage.later(shell, () -> MessageDialog.openInformation(shell, TITLE, sentence));
    }
}

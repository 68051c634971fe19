/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.io.IOException;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.SWTError;
import org.eclipse.swt.printing.PrintDialog;
import org.eclipse.swt.printing.Printer;
import org.eclipse.swt.printing.PrinterData;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.ScrolledPage;

/** Prints the bench card of the procedure in front. */
public final class PrintHandler extends AbstractHandler {
    private static final String TITLE = "Print the card";

    @Override
    public Object execute(ExecutionEvent event) {
        Shell shell = HandlerUtil.getActiveShell(event);
        Optional<LiveText> live = ActiveText.get().place().flatMap(place -> LiveTexts.get().current(place.live().document()));
        if (live.isEmpty() || !(live.get().text().document() instanceof Procedure procedure)) {
            MessageDialog.openInformation(shell, TITLE, "Open a procedure first; the card of what is in front is printed.");
            return null;
        }
        Job.create("Preparing the card", (ICoreRunnable) monitor -> {
            CheckedProcedure checked = LiveTexts.get().services().forPublishing(procedure);
            ScrolledPage.later(shell, () -> ask(shell, checked));
        }).schedule();
        return null;
    }

    /** A card with open errors says DRAFT on every page, and is printed when somebody says so. */
    private static void ask(Shell shell, CheckedProcedure checked) {
        int errors = checked.errors().size();
        if (errors > 0 && MessageDialog.open(MessageDialog.QUESTION, shell, TITLE, "This procedure has " + errors + (errors == 1 ? " error" : " errors")
                + ". Every page will say DRAFT and the errors are listed.", SWT.NONE, "Print as a draft", "Cancel") != 0) {
            return;
        }
        Optional<PrinterData> on = chosen(shell);
        on.ifPresent(printer -> Job.create("Printing the card", (ICoreRunnable) monitor -> print(shell, checked, printer)).schedule());
    }

    private static Optional<PrinterData> chosen(Shell shell) {
        try {
            if (Printer.getPrinterList().length == 0) {
                throw new SWTError("no printer");
            }
            PrintDialog dialog = new PrintDialog(shell, SWT.NONE);
            dialog.setText(TITLE);
            return Optional.ofNullable(dialog.open());
        } catch (SWTError | org.eclipse.swt.SWTException none) {
            MessageDialog.openInformation(shell, TITLE, "This machine has no printer. Publish the card as a PDF instead, and print that on another.");
            return Optional.empty();
        }
    }

    private static void print(Shell shell, CheckedProcedure checked, PrinterData on) {
        String told;
        try (CardPages pages = CardPages.open(new CardPdf().publish(Publication.of(checked, Drafts.ALLOWED)).bytes())) {
            told = CardPrinting.print(pages, on, checked.procedure().name().text()) ? "" : "The printer did not take the card.";
        } catch (PublishingRefused refused) {
            told = refused.getMessage();
        } catch (IOException | SWTError | org.eclipse.swt.SWTException failed) {
            ILog.of(PrintHandler.class).error("The card could not be printed.", failed);
            told = "The card could not be printed. Publish it as a PDF instead, and print that.";
        }
        String sentence = told;
        if (!sentence.isEmpty()) {
            ScrolledPage.later(shell, () -> MessageDialog.openInformation(shell, TITLE, sentence));
        }
    }
}

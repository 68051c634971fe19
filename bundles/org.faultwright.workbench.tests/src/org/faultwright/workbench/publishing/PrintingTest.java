/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import javax.print.PrintServiceLookup;
import javax.print.attribute.standard.Copies;
import javax.print.attribute.standard.Media;
import javax.print.attribute.standard.MediaSizeName;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keyboard;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The card on paper: a printer that keeps its PostScript stands for a real one. */
@ExtendWith(KeepPicture.class)
class PrintingTest {
    private static final KeptPrinter PRINTER = new KeptPrinter("Bench printer of the tests");

    private final Keyboard keyboard = new Keyboard();

    @BeforeAll
    static void plug_it_in() {
        assertTrue(PrintServiceLookup.registerService(PRINTER) || PRINTER.isPluggedIn());
    }

    @AfterEach
    void unplug_it() {
        PRINTER.plug(false);
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
    }

    @Test
    void should_print_every_page_by_the_keyboard_and_not_in_the_thread_of_the_window() throws Exception {
        PRINTER.plug(true);
        LiveText live = opened();

        List<String> said = printed(shell -> {
            keyboard.answer("Printer", PRINTER.getName());
            ((Spinner) keyboard.go("Copies")).setSelection(2);
            keyboard.picture("start-11-print");
        }, "Print");

        int pages = pages(checked(live));
        assertTrue(said.get(0).contains("\"" + PRINTER.getName() + "\" has taken the card: " + pages + " pages."), said.toString());
        String paper = PRINTER.paper();
        // "Document Structuring Conventions", version 3.0: each page begins so
        assertEquals(pages, paper.lines().filter(line -> line.startsWith("%%Page: ")).count());
        assertTrue(paper.length() > 100_000 * pages, "there is next to no ink on " + paper.length() + " bytes");
        assertEquals(2, ((Copies) PRINTER.wanted().get(Copies.class)).getValue());
        assertEquals(MediaSizeName.ISO_A4, PRINTER.wanted().get(Media.class));
        assertNotSame(Thread.currentThread(), PRINTER.thread());
        assertFalse(PRINTER.asking().isEmpty() || PRINTER.asking().contains(Thread.currentThread()), "a printer that is far off answers late");
    }

    @Test
    void should_say_in_one_sentence_that_the_printer_took_nothing() throws Exception {
        PRINTER.plug(true);
        PRINTER.jam();
        opened();

        List<String> said = printed(shell -> keyboard.answer("Printer", PRINTER.getName()), "Print");

        assertTrue(said.get(0).contains("\"" + PRINTER.getName() + "\" did not take the card"), said.toString());

        PRINTER.plug(true);
        PRINTER.burn();
        List<String> burnt = printed(shell -> keyboard.answer("Printer", PRINTER.getName()), "Print");
        assertTrue(burnt.get(0).contains("did not take the card"), burnt.toString());
    }

    @Test
    void should_say_in_one_sentence_that_there_is_no_printer() throws Exception {
        LiveText live = opened();
        List<String> said = Dialogs.answer(PrintHandler.TITLE, "OK");

        PrintHandler.ask(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), checked(live), List.of());

        assertTrue(said.get(0).contains("This machine has no printer. Publish the card as a PDF instead"), said.toString());
    }

    @Test
    void should_print_a_procedure_with_an_error_as_a_draft_only() throws Exception {
        PRINTER.plug(true);
        IDocument document = opened().document();
        document.set(document.get().replace("yes normal -> OpenLid", "yes normal -> Nowhere"));
        Waiting.until("the change is checked", () -> LiveTexts.get().of(document).orElseThrow().text().content().contains("Nowhere"));

        List<String> said = printed(shell -> {
            assertTrue(Words.of(shell).contains("Every page says DRAFT"), Words.of(shell));
            keyboard.answer("Printer", PRINTER.getName());
        }, "Print as a draft");

        assertTrue(said.get(0).contains("has taken the card"), said.toString());
    }

    @Test
    void should_ask_for_a_procedure_when_none_is_in_front() throws Exception {
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
        keyboard.settle();
        List<String> said = Dialogs.answer(PrintHandler.TITLE, "OK");

        command();

        assertTrue(said.get(0).contains("Open a procedure first"), said.toString());
    }

    /** Gives the command, answers the dialog, and waits for the outcome. @return what is told at the end */
    private List<String> printed(Consumer<Shell> answers, String button) throws Exception {
        boolean[] answered = {false};
        Throwable[] failed = {null};
        keyboard.when(PrintHandler.TITLE, () -> {
            try {
                answers.accept(keyboard.window(PrintHandler.TITLE));
                keyboard.enter(button);
            } catch (RuntimeException | Error error) {
                failed[0] = error;
                keyboard.picture("failed");
                Arrays.stream(Display.getCurrent().getShells()).filter(shell -> shell.getText().equals(PrintHandler.TITLE)).forEach(Shell::close);
            }
            answered[0] = true;
        });
        command();
        Waiting.until("it is answered", () -> answered[0]);
        if (failed[0] != null) {
            throw new AssertionError(failed[0].getMessage(), failed[0]);
        }
        List<String> said = Dialogs.answer(PrintHandler.TITLE, "OK");
        Waiting.until("the outcome is told", () -> !said.isEmpty());
        return said;
    }

    private static void command() throws Exception {
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getService(IHandlerService.class).executeCommand("org.faultwright.workbench.print", null);
    }

    private static LiveText opened() throws CoreException {
        IDocument document = Editors.document(Editors.open(Folders.demo().getFile("OllenbyFaintLabels.procedure")).orElseThrow()).orElseThrow();
        return Waiting.untilPresent("the demo is checked", () -> LiveTexts.get().of(document));
    }

    private static CheckedProcedure checked(LiveText live) {
        return LiveTexts.get().services().forPublishing((Procedure) live.text().document());
    }

    private static int pages(CheckedProcedure checked) throws java.io.IOException, PublishingRefused {
        try (CardPages pages = CardPages.open(new CardPdf().publish(Publication.of(checked, Drafts.REFUSED)).bytes())) {
            return pages.count();
        }
    }
}

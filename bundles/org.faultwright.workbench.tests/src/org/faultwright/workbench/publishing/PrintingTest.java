/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.printing.Printer;
import org.eclipse.swt.printing.PrinterData;
import org.eclipse.ui.PlatformUI;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The card on paper: the printer of the window system that prints into a file. */
class PrintingTest {
    @TempDir
    private Path folder;

    @AfterEach
    void close_editors() {
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
    }

    @Test
    void should_print_every_page_of_the_card() throws CoreException, IOException, PublishingRefused {
        Optional<PrinterData> intoFile = Arrays.stream(Printer.getPrinterList()).filter(one -> one.driver.contains("File")).findFirst();
        assertTrue(intoFile.isPresent(), "this window system cannot print into a file");
        PrinterData on = intoFile.get();
        Path paper = folder.resolve("paper.pdf");
        on.printToFile = true;
        on.fileName = paper.toUri().toString();
        IDocument document = Editors.document(Editors.open(Folders.demo().getFile(Folders.FIRST_OF_THE_DEMO)).orElseThrow()).orElseThrow();
        LiveText live = Waiting.untilPresent("the demo is checked", () -> LiveTexts.get().of(document));
        Publication publication = Publication.of(LiveTexts.get().services().forPublishing((Procedure) live.text().document()), Drafts.REFUSED);

        try (CardPages pages = CardPages.open(new CardPdf().publish(publication).bytes())) {
            assertTrue(CardPrinting.print(pages, on, "Card"));
            Waiting.until("it is printed", () -> Files.exists(paper) && paper.toFile().length() > 10_000);
            try (CardPages printed = CardPages.open(Files.readAllBytes(paper))) {
                assertEquals(pages.count(), printed.count());
                assertEquals(pages.size(0).getWidth(), printed.size(0).getWidth(), 2);
            }
        }
    }
}

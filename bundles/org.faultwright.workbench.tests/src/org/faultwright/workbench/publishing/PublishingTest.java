/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.exports.Exports;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Publishing what is in front. */
@ExtendWith(KeepPicture.class)
class PublishingTest {
    @TempDir
    private Path folder;

    @AfterEach
    void close_editors() {
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
    }

    @Test
    void should_write_the_card_and_the_tree_and_say_where() throws CoreException, IOException {
        LiveText live = opened();

        String said = publish(live, Drafts.REFUSED);

        assertTrue(said.contains("written into " + folder), said);
        assertEquals("%PDF", new String(Files.readAllBytes(folder.resolve("OllenbyFaintLabels.pdf")), 0, 4, StandardCharsets.US_ASCII));
        assertTrue(Files.exists(folder.resolve("OllenbyFaintLabels.tree.json")));
        assertEquals("%PDF", new String(Files.readAllBytes(folder.resolve("OllenbyFaintLabels.quality.pdf")), 0, 4, StandardCharsets.US_ASCII));
    }

    @Test
    void should_refuse_a_text_with_an_error_in_one_sentence_and_write_nothing() throws CoreException, IOException {
        LiveText live = opened();
        IDocument document = live.document();
        document.set(document.get().replace("then -> TryClean", "then -> Nowhere"));
        Waiting.until("the change is checked", () -> LiveTexts.get().of(document).orElseThrow().text().content().contains("Nowhere"));

        String said = publish(LiveTexts.get().of(document).orElseThrow(), Drafts.REFUSED);

        assertTrue(said.contains("unknown-name"), said);
        try (var files = Files.list(folder)) {
            assertEquals(0, files.count());
        }
    }

    private static LiveText opened() throws CoreException {
        ITextEditor editor = Editors.open(Folders.demo().getFile("OllenbyFaintLabels.procedure")).orElseThrow();
        IDocument document = Editors.document(editor).orElseThrow();
        return Waiting.untilPresent("the demo is checked", () -> LiveTexts.get().of(document));
    }

    /** Publishes, waits for the message, and closes it. @return its words */
    private String publish(LiveText live, Drafts drafts) {
        List<ProcedureExport> forms = Exports.all().stream().filter(ProcedureExport.class::isInstance)
                .map(ProcedureExport.class::cast).toList();
        assertFalse(forms.isEmpty());
        StringBuilder said = new StringBuilder();
        Display display = Display.getCurrent();
        Runnable reading = new Runnable() {
            @Override
            public void run() {
                for (Shell shell : display.getShells()) {
                    if (shell.getText().equals("Publish") && shell.isVisible()) {
                        said.append(Words.of(shell));
                        shell.close();
                        return;
                    }
                }
                display.timerExec(100, this);
            }
        };
        display.timerExec(100, reading);
        Job job = PublishHandler.publish(live, folder, forms, true, drafts);
        job.schedule();
        Waiting.until("the outcome is told", () -> !said.isEmpty());
        return said.toString();
    }
}

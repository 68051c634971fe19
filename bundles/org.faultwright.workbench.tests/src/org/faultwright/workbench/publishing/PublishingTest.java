/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Export;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.exports.Exports;
import org.faultwright.publish.card.CardPages;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keyboard;
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
        // those of a folder and of the libraries, too; what is about one procedure never takes the place of a folder's index
        assertTrue(Files.readString(folder.resolve("OllenbyFaintLabels.index.html")).contains("OllenbyFaintLabels.bench.html"));
        assertTrue(Files.exists(folder.resolve("OllenbyFaintLabels.quality.json")) && !Files.exists(folder.resolve("index.html")));
        try (var files = Files.list(folder)) {
            assertEquals(Exports.all().size() - 1, files.filter(file -> file.getFileName().toString().startsWith("OllenbyFaintLabels")).count());
        }
    }

    @Test
    void should_refuse_a_text_with_an_error_in_one_sentence_and_write_nothing() throws CoreException, IOException {
        LiveText live = opened();
        IDocument document = live.document();
        document.set(document.get().replace("yes normal -> OpenLid", "yes normal -> Nowhere"));
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

    @Test
    void should_open_the_folder_and_say_where_it_is_when_nothing_can_show_it() throws CoreException {
        LiveText live = opened();
        List<String> opened = new ArrayList<>();
        List<String> said = Dialogs.answer("Publish", "Open the folder");
        PublishHandler.publish(PublishHandler.checked(live), folder, forms(), Drafts.REFUSED, Optional.empty(), opened::add).schedule();
        Waiting.until("the folder is opened", () -> !opened.isEmpty());
        assertEquals(List.of(folder.toString()), opened);
        assertFalse(said.get(0).contains("quality"), said.toString());

        List<String> again = Dialogs.answer("Publish", "Open the folder");
        PublishHandler.publish(PublishHandler.checked(live), folder, forms(), Drafts.REFUSED, Optional.empty(), none -> false).schedule();
        Waiting.until("the outcome is told", () -> !again.isEmpty());
        List<String> where = Dialogs.answer("Publish", "OK");
        Waiting.until("it is said where", () -> !where.isEmpty());
        assertTrue(where.get(0).contains("no program that shows folders. The files are in " + folder), where.toString());
    }

    @Test
    void should_write_the_quality_report_alone_and_open_nothing_unasked() throws Exception {
        opened();
        Keyboard keyboard = new Keyboard();
        Throwable[] failed = {null};
        keyboard.when("Publish", () -> {
            try {
                keyboard.answer("Into folder", folder.toString());
                for (Export form : forms()) {
                    keyboard.answer(form.title(), "");
                }
                keyboard.answer("Quality report, PDF, of this procedure", "");
                Shell shell = keyboard.window("Publish");
                assertFalse(shell.getDefaultButton().isEnabled(), "nothing is chosen");
                keyboard.answer("Quality report, PDF, of this procedure", "");
                keyboard.enter("Publish");
            } catch (RuntimeException | Error error) {
                failed[0] = error;
                keyboard.window("Publish").close();
            }
        });
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getService(IHandlerService.class).executeCommand("org.faultwright.workbench.publish", null);
        if (failed[0] != null) {
            throw new AssertionError(failed[0].getMessage(), failed[0]);
        }
        List<String> said = Dialogs.answer("Publish", "OK");
        Waiting.until("the outcome is told", () -> !said.isEmpty());

        try (var files = Files.list(folder)) {
            assertEquals(List.of("OllenbyFaintLabels.quality.pdf"), files.map(file -> file.getFileName().toString()).toList());
        }
        try (CardPages report = CardPages.open(Files.readAllBytes(folder.resolve("OllenbyFaintLabels.quality.pdf")))) {
            assertTrue(report.count() >= 1);
        }
    }

    /** A long procedure takes seconds: meanwhile the window answers, and the dialog can be left. */
    @Test
    void should_check_away_from_the_thread_of_the_window_and_be_left_meanwhile() throws Exception {
        LiveText live = opened();
        CountDownLatch slow = new CountDownLatch(1);
        List<Thread> checking = new CopyOnWriteArrayList<>();
        PublishDialog dialog = new PublishDialog(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), live, text -> {
            checking.add(Thread.currentThread());
            try {
                slow.await(30, TimeUnit.SECONDS);
            } catch (InterruptedException stopped) {
                throw new IllegalStateException(stopped);
            }
            return PublishHandler.checked(text);
        });
        dialog.setBlockOnOpen(false);
        dialog.open();
        try {
            Waiting.until("it is being checked", () -> !checking.isEmpty());
            assertNotSame(Thread.currentThread(), checking.get(0));
            assertTrue(says(dialog, PublishDialog.CHECKING) && says(dialog, "licensed practice come first"));
            assertFalse(dialog.getShell().getDefaultButton().isEnabled(), "nothing is published that is not checked");
            slow.countDown();
            Waiting.until("it can be published", () -> dialog.getShell().getDefaultButton().isEnabled());
            assertFalse(says(dialog, PublishDialog.CHECKING));
        } finally {
            slow.countDown();
            dialog.close();
        }
        CountDownLatch never = new CountDownLatch(1);
        PublishDialog left = new PublishDialog(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), live, text -> {
            try {
                never.await(30, TimeUnit.SECONDS);
            } catch (InterruptedException stopped) {
                throw new IllegalStateException(stopped);
            }
            return PublishHandler.checked(text);
        });
        List<String> said = Dialogs.answer("Publish", "Cancel");
        assertEquals(Window.CANCEL, left.open());
        never.countDown();
        assertFalse(said.isEmpty());
    }

    private static boolean says(PublishDialog dialog, String words) {
        return Controls.all(dialog.getShell(), Text.class).stream().anyMatch(text -> text.getText().contains(words));
    }

    @Test
    void should_say_in_one_sentence_that_a_form_cannot_be_made() throws Exception {
        LiveText live = opened();
        List<String> said = Dialogs.answer("Publish", "OK");
        ProcedureExport broken = (ProcedureExport) java.lang.reflect.Proxy.newProxyInstance(PublishingTest.class.getClassLoader(), new Class<?>[] {ProcedureExport.class},
                (proxy, method, arguments) -> {
                    throw new IllegalStateException("no such form");
                });
        PublishHandler.publish(PublishHandler.checked(live), folder, List.of(broken), Drafts.REFUSED, Optional.empty(), none -> false).schedule();
        Waiting.until("it is told", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("cannot be made from the procedure as it is now, and nothing was written"), said.toString());
        try (var files = Files.list(folder)) {
            assertEquals(0, files.count());
        }
    }

    /** The same page that the command line writes beside its index; the rest of the release counts for nothing, since one procedure is published. */
    @Test
    void should_tell_what_changed_since_the_last_release() throws Exception {
        LiveText live = opened();
        IDocument document = live.document();
        Path last = Files.createDirectory(folder.resolve("last"));
        try (var texts = Files.list(Path.of(Folders.demo().getLocationURI()))) {
            for (Path text : texts.filter(file -> file.toString().endsWith(".procedure")).toList()) {
                Files.copy(text, last.resolve(text.getFileName()));
            }
        }
        Path library = Files.createDirectory(last.resolve("library"));
        try (var texts = Files.list(Path.of(Folders.demo().getLocationURI()).resolve("library"))) {
            for (Path text : texts.filter(Files::isRegularFile).toList()) {
                Files.copy(text, library.resolve(text.getFileName()));
            }
        }
        document.set(document.get().replace("expects 24 V +/- 5 %", "expects 24 V +/- 10 %"));
        LiveText changed = Waiting.untilPresent("the change is checked", () -> LiveTexts.get().of(document).filter(one -> one.text().content().contains("24 V +/- 10 %")));
        Path into = folder.resolve("now");

        String said = publish(changed, into, Optional.of(last));

        assertTrue(said.contains("OllenbyFaintLabels.comparison.html"), said);
        String page = Files.readString(into.resolve("OllenbyFaintLabels.comparison.html"));
        assertTrue(page.contains("10 %") && page.contains("5 %"), page);
        assertFalse(page.contains(">Gone<"), "the other procedures were not asked for");
        assertTrue(Files.readString(into.resolve("OllenbyFaintLabels.index.html")).contains("<a href=\"OllenbyFaintLabels.comparison.html\">What changed since the last release</a>"));
        assertFalse(Files.readString(into.resolve("OllenbyFaintLabels.quality.html")).contains("gone since the last release ("));
    }

    @Test
    void should_say_in_one_sentence_that_a_release_cannot_be_read_and_write_nothing() throws Exception {
        LiveText live = opened();
        Path empty = Files.createDirectory(folder.resolve("empty"));

        String said = publish(live, folder.resolve("now"), Optional.of(empty));

        assertTrue(said.contains("holds no procedure"), said);
        assertFalse(Files.exists(folder.resolve("now")));
    }

    @Test
    void should_refuse_a_release_that_is_not_there_before_anything_is_published() throws CoreException {
        LiveText live = opened();
        PublishDialog dialog = new PublishDialog(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), live, PublishHandler::checked);
        dialog.setBlockOnOpen(false);
        dialog.open();
        try {
            Waiting.until("it can be published", () -> dialog.getShell().getDefaultButton().isEnabled());
            Text last = Controls.all(dialog.getShell(), Text.class).stream().filter(text -> text.getMessage().startsWith("report and index")).findFirst().orElseThrow();
            last.setText(folder.resolve("nowhere").toString());
            assertFalse(dialog.getShell().getDefaultButton().isEnabled());
            assertTrue(says(dialog, "There is no folder"));
            last.setText(folder.toString());
            assertTrue(dialog.getShell().getDefaultButton().isEnabled());
        } finally {
            dialog.close();
        }
    }

    private static String publish(LiveText live, Path into, Optional<Path> since) {
        List<String> said = Dialogs.answer("Publish", "OK");
        PublishHandler.publish(PublishHandler.checked(live), into, Exports.all(), Drafts.REFUSED, since, none -> false).schedule();
        Waiting.until("the outcome is told", () -> !said.isEmpty());
        return said.get(0);
    }

    /** Publishes, waits for the message, and closes it. @return its words */
    private String publish(LiveText live, Drafts drafts) {
        assertFalse(forms().isEmpty());
        List<String> said = Dialogs.answer("Publish", "OK");
        PublishHandler.publish(PublishHandler.checked(live), folder, Exports.all(), drafts, Optional.empty(), none -> false).schedule();
        Waiting.until("the outcome is told", () -> !said.isEmpty());
        return said.get(0);
    }

    private static List<Export> forms() {
        return Exports.all().stream().filter(ProcedureExport.class::isInstance).toList();
    }
}

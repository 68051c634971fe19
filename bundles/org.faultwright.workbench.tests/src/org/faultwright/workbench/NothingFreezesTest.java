/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.publish.card.CardPages;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.editor.ProcedureEditor;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.walk.WalkView;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A watch on the window's thread while somebody types. */
@ExtendWith(KeepPicture.class)
class NothingFreezesTest {
    /** Of the window's thread's own work, so that a busy machine does not count; generous, since compiling is in it. */
    private static final long LONGEST_STALL_MILLISECONDS = 400;
    private static final int MOST_PAUSES = 1_200;
    private static final String WORDS = "// what is typed here in a hurry -> every key must be seen at once\n";

    @AfterEach
    void leave_it_as_it_was() {
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
    }

    @Test
    void should_never_stall_while_a_comment_is_typed_nor_open_a_window_over_it() throws CoreException {
        typeAComment();
    }

    @Test
    void should_never_stall_while_a_walk_stands_beside_the_text() throws CoreException {
        IWorkbenchPage page = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
        Editors.open(largest()).orElseThrow();
        WalkView walk = (WalkView) page.showView(WalkView.ID);
        try {
            Waiting.until("it can be begun", () -> walk.isShown() || walk.begin()); // an earlier walk is kept
            Waiting.until("it stands at a step", walk::isShown);
            typeAComment();
            Waiting.until("it stands there still", walk::isShown);
        } finally {
            page.showView(CardView.ID);
        }
    }

    private static void typeAComment() throws CoreException {
        ITextEditor editor = Editors.open(largest()).orElseThrow();
        Waiting.until("it is checked", () -> ActiveText.get().place().isPresent());
        StyledText widget = (StyledText) editor.getAdapter(Control.class);
        Display display = widget.getDisplay();
        widget.setCaretOffset(0);
        int shells = visible(display);
        long longest = 0;

        for (char key : WORDS.toCharArray()) {
            long from = worked();
            widget.insert(String.valueOf(key));
            widget.setCaretOffset(widget.getCaretOffset() + 1);
            for (int events = 0; events < 500 && display.readAndDispatch(); events++) {
                longest = Math.max(longest, worked() - from);
                from = worked();
            }
            pause(display, 20);
        }

        System.out.println("measured: longest stall of the window's thread while typing: " + longest + " ms");
        assertTrue(longest < LONGEST_STALL_MILLISECONDS, longest + " ms");
        assertTrue(visible(display) <= shells, "nothing has opened by itself");
    }

    /** Words in a title, a number in a limit and a name at an arrow, where somebody corrects a procedure; each is typed and taken back. */
    @Test
    void should_draw_every_key_at_once_in_a_procedure_of_forty_and_of_two_thousand_steps() throws CoreException {
        try (Bench bench = new Bench()) {
            bench.file("MadeBench.procedure", MadeProcedure.LIBRARY);
            for (int steps : new int[] {40, 2_000}) {
                ProcedureEditor editor = bench.open(bench.file("Made" + steps + ".procedure", MadeProcedure.of("Made" + steps, steps)));
                TypingWatch watch = new TypingWatch((StyledText) editor.getAdapter(Control.class));
                String text = editor.document().get();
                int middle = text.indexOf("measure Volts" + MadeProcedure.rails(steps) / 2);

                watch.typeAndTakeBack(text.indexOf("under load", middle), "warm, as the customer saw it, ");
                watch.typeAndTakeBack(text.indexOf(" V +/-", middle), "250");
                watch.typeAndTakeBack(text.indexOf("below  -> ", middle) + "below  -> ".length(), "Another");
                watch.typeOver(text.indexOf("under load", middle), "under load", "warm");
                watch.thinkUntil(() -> hasChecked(editor));
                watch.typeOver(text.indexOf("under load", middle), "warm", "under load");
                watch.thinkUntil(() -> hasChecked(editor));

                System.out.println("measured: typing at 20 ms a key, and a pause after it, " + steps + " steps: " + watch);
                assertTrue(watch.longestStall() < LONGEST_STALL_MILLISECONDS, watch.toString());
                assertTrue(watch.drawnWithin(99) < LONGEST_STALL_MILLISECONDS, watch.toString());
                assertEquals(text, editor.document().get(), "every key came through");
                letItBeChecked();
                PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
            }
        }
    }

    @Test
    void should_show_what_was_typed_on_the_card_whatever_was_open_before() throws CoreException {
        try (Bench bench = new Bench()) {
            bench.file("MadeBench.procedure", MadeProcedure.LIBRARY);
            bench.open(bench.file("Long.procedure", MadeProcedure.of("Long", 800))); // its card takes long, and is not waited for
            ProcedureEditor editor = bench.open(bench.file("Short.procedure", MadeProcedure.of("Short", 40)));
            CardView card = (CardView) PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().findView(CardView.ID);
            CardPages before = Waiting.untilPresent("the card is there", card::pages);
            TypingWatch watch = new TypingWatch((StyledText) editor.getAdapter(Control.class));

            watch.type(editor.document().get().indexOf("under load"), "still ");
            long typed = System.currentTimeMillis();
            Waiting.until("the card shows what was typed", () -> card.pages().filter(pages -> pages != before).isPresent() && hasChecked(editor));

            System.out.println("measured: the card of 40 steps is shown " + (System.currentTimeMillis() - typed) + " ms after the last key");
            assertTrue(card.pages().orElseThrow().count() < 10, "it is the card of the short one");
            letItBeChecked();
        }
    }

    /** What is still checked in the background would hold up whoever opens the next text. */
    private static void letItBeChecked() {
        for (int pauses = 0; pauses < MOST_PAUSES && !FolderDocuments.get().isComplete(); pauses++) {
            pause(Display.getCurrent(), 100);
        }
    }

    private static boolean hasChecked(ProcedureEditor editor) {
        return LiveTexts.get().of(editor.document()).filter(live -> live.text().content().equals(editor.document().get())).isPresent();
    }

    /** The times are those of the clock: somebody waits for them. */
    @Test
    void should_show_or_refuse_a_large_file() throws CoreException {
        try (Bench bench = new Bench()) {
            FolderDocuments.get().stop(); // what the background has to do with such files is not asked for here
            refused(bench, "a line of 1 MB", "4k7 measure ".repeat(84_000));
            refused(bench, "a file of 5 MB", "// what was tried and did not help, and why\n".repeat(114_000));
            shown(bench, "a line of 99,000 characters", "4k7 measure ".repeat(8_250));
            shown(bench, "a file of 3.9 MB", "// what was tried and did not help, and why\n".repeat(88_000));
        } finally {
            FolderDocuments.get().goOn();
        }
    }

    private static void refused(Bench bench, String what, String text) throws CoreException {
        IFile file = bench.file("Refused" + text.length() + ".procedure", text);
        long from = System.nanoTime();
        long[] seen = {0};
        List<String> said = Dialogs.answer("Open", dialog -> seen[0] = System.nanoTime(), "OK");

        assertEquals(Optional.empty(), Editors.open(file));

        System.out.println("measured: " + what + ": refused in a sentence within " + (seen[0] - from) / 1_000_000 + " ms");
        assertTrue(said.get(0).contains(file.getName()), said.toString());
    }

    private static void shown(Bench bench, String what, String text) throws CoreException {
        IFile file = bench.file("Shown" + text.length() + ".procedure", text);
        long from = System.nanoTime();

        StyledText widget = (StyledText) Editors.open(file).orElseThrow().getAdapter(Control.class);
        widget.update();

        long opened = System.nanoTime();
        StallWatch watch = StallWatch.ofThisThread();
        for (int events = 0; events < MOST_PAUSES && System.nanoTime() - opened < 1_000_000_000L; events++) {
            watch.begins();
            boolean more = widget.getDisplay().readAndDispatch();
            watch.ends();
            if (!more) {
                pause(widget.getDisplay(), 5);
            }
        }
        System.out.println("measured: " + what + ": shown within " + (opened - from) / 1_000_000 + " ms, longest stall in the second after it "
                + Math.round(watch.longest()) + " ms" + watch.where());
        assertEquals(text.length(), widget.getCharCount());
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
    }

    @Test
    void should_keep_only_the_pages_that_are_seen() throws CoreException {
        Editors.open(largest()).orElseThrow();
        CardView card = (CardView) PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().findView(CardView.ID);

        Waiting.untilPresent("the card is there", card::pages);
        Waiting.until("a page is drawn", () -> card.picturesKept() > 0);

        assertTrue(card.picturesKept() <= Math.min(6, card.pages().orElseThrow().count()), card.picturesKept() + " pictures");
    }

    /** The longest procedure of the demo. */
    private static IFile largest() throws CoreException {
        return Arrays.stream(Folders.demo().members()).filter(IFile.class::isInstance).map(IFile.class::cast)
                .filter(FolderDocuments::isProcedureText).max(Comparator.comparingLong(file -> file.getLocation().toFile().length())).orElseThrow();
    }

    private static int visible(Display display) {
        int count = 0;
        for (Shell shell : display.getShells()) {
            count += shell.isVisible() ? 1 : 0;
        }
        return count;
    }

    /** Milliseconds of processor time that this thread has used. */
    private static long worked() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1_000_000;
    }

    private static void pause(Display display, int milliseconds) {
        boolean[] over = {false};
        display.timerExec(milliseconds, () -> over[0] = true);
        while (!over[0]) {
            if (!display.readAndDispatch()) {
                display.sleep();
            }
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Comparator;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.walk.WalkView;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A watch on the window's thread while somebody types. */
@ExtendWith(KeepPicture.class)
class NothingFreezesTest {
    /** Of the window's thread's own work, so that a busy machine does not count; generous, since compiling is in it. */
    private static final long LONGEST_STALL_MILLISECONDS = 400;
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

        System.out.println("longest stall of the window's thread while typing: " + longest + " ms");
        assertTrue(longest < LONGEST_STALL_MILLISECONDS, longest + " ms");
        assertTrue(visible(display) <= shells, "nothing has opened by itself");
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

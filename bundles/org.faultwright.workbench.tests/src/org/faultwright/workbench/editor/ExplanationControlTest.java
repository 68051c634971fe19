/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.PlatformUI;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.publishing.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What is said under the pointer. */
@ExtendWith(KeepPicture.class)
class ExplanationControlTest {
    private ExplanationControl control;

    @AfterEach
    void close() {
        if (control != null) {
            control.dispose();
        }
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
    }

    @Test
    void should_show_every_row_of_the_table_of_a_limit_within_its_size() throws CoreException {
        IFile file = Folders.demo().getFile("OllenbyFaintLabels.procedure");
        ProcedureEditor editor = (ProcedureEditor) Editors.open(file).orElseThrow();
        Waiting.until("it is checked", () -> LiveTexts.get().of(editor.document()).isPresent());
        String text = editor.document().get();
        String said = ProcedureHover.text(LiveTexts.get().of(editor.document()).orElseThrow().text(),
                text.indexOf("24 V", text.indexOf("measure HeadSupply")));
        long rows = said.lines().filter(line -> line.startsWith("|")).count();
        assertTrue(rows > 10, said);

        Shell shell = show(said);

        List<Label> cells = labels(shell);
        assertTrue(cells.size() >= rows, cells.size() + " cells");
        for (Label cell : cells) {
            Point end = shell.getDisplay().map(cell, shell, cell.getSize());
            assertTrue(end.x <= shell.getClientArea().width && end.y <= shell.getClientArea().height,
                    cell.getText() + " ends at " + end + " of " + shell.getClientArea());
        }
    }

    @Test
    void should_share_the_room_between_the_wide_columns_and_leave_the_narrow_ones() {
        assertEquals(90, ExplanationControl.widest(new int[] {20, 90, 60}, 200));
        assertEquals(60, ExplanationControl.widest(new int[] {20, 90, 60}, 140));
        assertEquals(55, ExplanationControl.widest(new int[] {20, 90, 60}, 130));
        assertEquals(30, ExplanationControl.widest(new int[] {90, 90, 90}, 90));
    }

    @Test
    void should_keep_within_the_screen_whatever_is_said() {
        Shell shell = show("**long** " + "word ".repeat(4_000) + "\n\n" + "|a|b|\n|---|---|\n" + "|one|two|\n".repeat(300));

        assertTrue(shell.getSize().x <= Display.getCurrent().getBounds().width);
        assertTrue(shell.getSize().y <= Display.getCurrent().getBounds().height);
    }

    @Test
    void should_say_a_finding_once() throws CoreException {
        try (Bench bench = new Bench()) {
            String text = "procedure Small \"Small\"\n\nbegin at Nowhere\n\nconclude Fine \"Fine\" {\n    finds nothing\n}\n";
            ProcedureEditor editor = bench.open(bench.file("Small.procedure", text));
            String said = ProcedureHover.text(LiveTexts.get().of(editor.document()).orElseThrow().text(), text.indexOf("Nowhere") + 1);
            Shell shell = show(said);

            String words = Words.of(shell);
            assertTrue(words.contains("Nowhere"), words);
            String first = words.lines().filter(line -> line.contains("Nowhere")).findFirst().orElseThrow();
            assertEquals(words.indexOf(first), words.lastIndexOf(first), words);
            assertFalse(words.contains("**") || words.contains("unknown-name"), words);
        }
    }

    /** What an author writes into a title is words, also where it looks like something else. */
    @Test
    void should_show_tables_lists_and_words_as_they_are() {
        Shell shell = show("**A \\*star\\*** and 5 \\< 6\nsecond line\n\n- one\n- *two*\n\n| what | value |\n|---|---|\n| a \\| b | 4 \\_ 7 |\n\n<b>as it is</b>");

        String words = Words.of(shell);
        assertTrue(words.contains("A *star* and 5 < 6\nsecond line"), words);
        assertTrue(words.contains("\u2022 one\n\u2022 two"), words);
        assertTrue(words.contains("<b>as it is</b>"), words);
        assertEquals(List.of("what", "value", "a | b", "4 _ 7"), labels(shell).stream().map(Label::getText).limit(4).toList());
    }

    @Test
    void should_say_each_thing_in_the_margin_once() {
        String said = new MarginHover().formatMultipleMessages(List.of("One is wrong.", "One is wrong.", "So is another."));

        assertEquals("One is wrong.\n\nSo is another.", said);
    }

    private Shell show(String said) {
        Shell parent = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell();
        control = new ExplanationControl(parent);
        control.setInformation(said);
        Point size = control.computeSizeHint();
        control.setSize(size.x, size.y);
        control.setLocation(new Point(20, 20));
        control.setVisible(true);
        return java.util.Arrays.stream(parent.getShells()).filter(shell -> (shell.getStyle() & SWT.TOOL) != 0 || (shell.getStyle() & SWT.ON_TOP) != 0)
                .filter(Shell::isVisible).findFirst().orElseThrow();
    }

    private static List<Label> labels(Composite in) {
        List<Label> labels = new ArrayList<>();
        for (Control child : in.getChildren()) {
            if (child instanceof Label label && !label.getText().isEmpty() && (label.getStyle() & SWT.SEPARATOR) == 0) {
                labels.add(label);
            } else if (child instanceof Composite inner) {
                labels.addAll(labels(inner));
            }
        }
        return labels;
    }
}

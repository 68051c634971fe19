/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposalExtension2;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.jface.text.source.IVerticalRulerInfo;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.language.server.Renaming;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.editor.CompletionProcessor;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.editor.FindingMark;
import org.faultwright.workbench.editor.FixApplication;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Writing in the real window. */
@ExtendWith(KeepPicture.class)
class WritingTest {
    private ITextEditor editor;
    private IDocument document;

    @BeforeEach
    void open_the_demo() throws CoreException {
        IFile file = Folders.demo().getFile("OllenbyFaintLabels.procedure");
        editor = Editors.open(file).orElseThrow();
        document = Editors.document(editor).orElseThrow();
        Waiting.until("the demo is checked", () -> ActiveText.get().place().filter(place -> place.live().document() == document)
                .isPresent());
    }

    @AfterEach
    void leave_it_as_it_was() {
        page().closeAllEditors(false);
    }

    @Test
    void should_open_the_demo_without_an_error() {
        assertEquals(List.of(), marks("org.faultwright.workbench.error"));
        assertEquals("OllenbyFaintLabels", live().text().document().name().text());
    }

    @Test
    void should_mark_an_error_while_it_is_typed_and_take_the_mark_away_when_it_is_fixed() throws BadLocationException {
        int at = document.get().indexOf("yes normal -> OpenLid");
        document.replace(at + "yes normal -> ".length(), "OpenLid".length(), "OpenLdi");
        Waiting.until("the misspelt step is marked", () -> !marks("org.faultwright.workbench.error").isEmpty());
        Finding finding = marks("org.faultwright.workbench.error").stream().map(mark -> ((FindingMark) mark).finding())
                .filter(one -> one.rule().equals("unknown-name")).findFirst().orElseThrow();

        assertTrue(FixApplication.apply(finding.fixes().get(0), document));
        assertEquals(new Point(at + "yes normal -> ".length(), "OpenLid".length()), FixApplication.toSelect(finding.fixes().get(0), document));

        Waiting.until("the mark is gone", () -> marks("org.faultwright.workbench.error").isEmpty());
        assertTrue(document.get().startsWith("yes normal -> OpenLid", at));
    }

    /** What was found may be asked about when its text is closed already. */
    @Test
    void should_not_change_a_text_that_is_closed() {
        SourceRange end = new SourceRange(new SourceText("here", document.get()), document.getLength(), 0);
        page().closeEditor(editor, false);

        assertFalse(FixApplication.apply(new Fix("Add a line", List.of(new Fix.Edit(end, "// one\n"))), document));
    }

    @Test
    void should_show_the_beginning_of_what_a_fix_wrote_in_several_lines_and_select_none_of_it() {
        String text = document.get();
        SourceRange end = new SourceRange(new SourceText("here", text), text.length(), 0);
        Fix fix = new Fix("Add two lines", List.of(new Fix.Edit(end, "\n\n// one\n// two\n")));

        assertTrue(FixApplication.apply(fix, document));

        assertEquals(new Point(text.length() + 2, 0), FixApplication.toSelect(fix, document));
    }

    @Test
    void should_mark_a_procedure_when_the_library_it_uses_is_changed_beside_it() throws CoreException {
        IDocument library = Editors.document(Editors.open(Folders.demo().getFile("library/HarbourNotes.procedure")).orElseThrow())
                .orElseThrow();
        Waiting.until("the library is checked", () -> LiveTexts.get().of(library).isPresent());

        library.set(library.get().replace("note DataLoss ", "note DataGone "));

        Waiting.until("the procedure misses the note", () -> live().text().findings().stream()
                .anyMatch(finding -> finding.rule().equals("unknown-name") && finding.message().contains("DataLoss")));
    }

    @Test
    void should_write_a_whole_measurement_with_its_blanks() throws BadLocationException {
        int end = document.getLength();
        document.replace(end, 0, "\nmeas");
        ITextViewer viewer = editor.getAdapter(ITextViewer.class);
        ICompletionProposal proposal = proposal(viewer, document.getLength(), "measure");

        ((ICompletionProposalExtension2) proposal).apply(viewer, '\n', 0, document.getLength());

        String written = document.get().substring(end);
        assertTrue(written.contains("expects 24 V +/- 5 %") && written.contains("within -> "), written);
        assertEquals("Name", document.get(proposal.getSelection(document).x, proposal.getSelection(document).y));
    }

    @Test
    void should_begin_a_line_further_in_behind_a_brace_and_bring_the_closing_one_back() {
        StyledText text = (StyledText) editor.getAdapter(Control.class);
        int end = document.getLength();
        text.setSelection(end);

        "\rcheck Dry \"Is it dry?\" {\rtakes 1 min\ryes -> NotSeen\r}\r".chars().forEach(key -> Keys.press(text, key));

        assertEquals("check Dry \"Is it dry?\" {\n    takes 1 min\n    yes -> NotSeen\n}\n", document.get().substring(end).stripLeading());
    }

    @Test
    void should_rename_a_step_with_its_arrows_and_examples() {
        LiveText before = live();
        int at = document.get().indexOf("observe LampCode") + "observe ".length();
        int named = count("LampCode");

        FixApplication.apply(Renaming.rename(before.text(), at, "BlinkCode"), document);

        assertEquals(0, count("LampCode"));
        assertEquals(named, count("BlinkCode"));
        Waiting.until("the renamed text is checked", () -> live().text().content().contains("BlinkCode"));
        assertEquals(List.of(), marks("org.faultwright.workbench.error"));
    }

    @Test
    void should_make_the_chosen_lines_comments_and_text_again_by_one_command() throws Exception {
        String before = document.get();
        int from = before.indexOf("observe LampCode");
        int to = before.indexOf('\n', before.indexOf('\n', from) + 1);
        editor.selectAndReveal(from, to - from);
        String lines = before.substring(from, to);

        run("org.faultwright.workbench.toggleComment");
        assertTrue(document.get().startsWith("//" + lines.lines().findFirst().orElseThrow(), from), document.get().substring(from, to));
        run("org.faultwright.workbench.toggleComment");

        assertEquals(before, document.get());
    }

    @Test
    void should_go_to_a_declaration_and_back() throws Exception {
        int named = document.get().indexOf("-> Scratch") + "-> ".length();
        page().activate(editor);
        boolean[] noted = {false};
        page().getWorkbenchWindow().getShell().getDisplay().asyncExec(() -> noted[0] = true);
        Waiting.until("the window has noted which text is in front", () -> noted[0]); // until then it notes no place
        editor.selectAndReveal(named, 0);
        Waiting.until("the cursor is there", () -> selected().x == named);

        run("org.faultwright.workbench.goToDeclaration");
        Waiting.until("it is at the declaration", () -> selected().x == document.get().indexOf("check Scratch") + "check ".length());
        run("org.eclipse.ui.navigate.backwardHistory");

        Waiting.until("it is where it was", () -> selected().x == named);
    }

    @Test
    void should_keep_marks_and_numbers_with_their_lines_while_lines_are_written_above() throws BadLocationException {
        int at = document.get().indexOf("yes normal -> OpenLid") + "yes normal -> ".length();
        document.replace(at, "OpenLid".length(), "OpenLdi");
        Waiting.until("the misspelt step is marked", () -> !marks("org.faultwright.workbench.error").isEmpty());
        String above = "// one\n// two\n// three\n";

        document.replace(0, 0, above);

        List<Annotation> marked = marks("org.faultwright.workbench.error");
        assertTrue(marked.stream().anyMatch(mark -> model().getPosition(mark).getOffset() == at + above.length()), marked.toString());
        StyledText text = (StyledText) editor.getAdapter(Control.class);
        editor.selectAndReveal(at + above.length(), 0);
        IVerticalRulerInfo numbers = editor.getAdapter(IVerticalRulerInfo.class);
        Point place = text.getLocationAtOffset(text.getCaretOffset());
        assertEquals(document.getLineOfOffset(at + above.length()), numbers.toDocumentLineNumber(place.y + text.getLineHeight() / 2));
    }

    @Test
    void should_colour_what_follows_anew_where_a_comment_over_several_lines_begins_or_ends() throws BadLocationException {
        StyledText text = (StyledText) editor.getAdapter(Control.class);
        int word = document.get().indexOf("check Scratch");
        Color usual = text.getStyleRangeAtOffset(word).foreground;

        document.replace(0, 0, "/* ");
        Color inAComment = text.getStyleRangeAtOffset(word + 3).foreground;
        assertNotEquals(usual, inAComment);
        document.replace(1, 1, "");
        assertEquals(usual, text.getStyleRangeAtOffset(word + 2).foreground, "the star is gone");
        document.replace(1, 0, "*");
        assertEquals(inAComment, text.getStyleRangeAtOffset(word + 3).foreground);
        document.replace(0, 3, "//");
        assertEquals(usual, text.getStyleRangeAtOffset(word + 2).foreground, "something was typed over it");
    }

    private static void run(String command) throws Exception {
        page().getWorkbenchWindow().getService(IHandlerService.class).executeCommand(command, null);
    }

    private Point selected() {
        return ((StyledText) editor.getAdapter(Control.class)).getSelection();
    }

    @Test
    void should_show_the_card_and_follow_the_cursor() {
        CardView card = (CardView) page().findView(CardView.ID);
        page().bringToTop(card); // in a small window another view stands before it
        Waiting.untilPresent("the card is made", card::pages);

        int at = document.get().indexOf("observe LampCode");
        editor.selectAndReveal(at, 0);

        Waiting.until("the step at the cursor is marked", () -> card.marked().equals(Optional.of("LampCode")));
        assertTrue(card.pages().orElseThrow().count() > 3);
    }

    @Test
    void should_stay_alive_with_a_megabyte_of_garbage() throws CoreException {
        IProject project = Folders.demo();
        IFile file = project.getFile("Garbage.procedure");
        byte[] garbage = ("{ } -> \" 4k7 measure ((( ".repeat(4) + "\n").repeat(10_000).getBytes(StandardCharsets.UTF_8);
        file.create(new ByteArrayInputStream(garbage), true, new NullProgressMonitor());
        try {
            ITextEditor opened = Editors.open(file).orElseThrow();
            IDocument text = Editors.document(opened).orElseThrow();

            LiveText checked = Waiting.untilPresent("the garbage is read", () -> LiveTexts.get().of(text));

            assertTrue(checked.text().findings().stream().anyMatch(finding -> finding.rule().equals("unreadable-text")));
            assertTrue(checked.text().findings().stream().noneMatch(finding -> finding.rule().equals("rule-failed")));
        } finally {
            page().closeAllEditors(false);
            file.delete(true, new NullProgressMonitor());
        }
    }

    @Test
    void should_stay_alive_with_a_line_of_many_thousand_words() throws CoreException {
        IFile file = Folders.demo().getFile("LongLine.procedure");
        byte[] line = ("procedure LongLine " + "4k7 measure ".repeat(3_000)).getBytes(StandardCharsets.UTF_8);
        file.create(new ByteArrayInputStream(line), true, new NullProgressMonitor());
        try {
            IDocument text = Editors.document(Editors.open(file).orElseThrow()).orElseThrow();

            Waiting.untilPresent("the line is read", () -> LiveTexts.get().of(text));
        } finally {
            page().closeAllEditors(false);
            file.delete(true, new NullProgressMonitor());
        }
    }

    private static ICompletionProposal proposal(ITextViewer viewer, int offset, String label) {
        for (ICompletionProposal proposal : new CompletionProcessor().computeCompletionProposals(viewer, offset)) {
            if (proposal.getDisplayString().startsWith(label)) {
                return proposal;
            }
        }
        throw new AssertionError("no proposal " + label);
    }

    private int count(String word) {
        return document.get().split("\\b" + word + "\\b", -1).length - 1;
    }

    private LiveText live() {
        return LiveTexts.get().of(document).orElseThrow();
    }

    private IAnnotationModel model() {
        return editor.getDocumentProvider().getAnnotationModel(editor.getEditorInput());
    }

    private List<Annotation> marks(String type) {
        IAnnotationModel model = model();
        List<Annotation> marks = new ArrayList<>();
        for (Iterator<Annotation> all = model.getAnnotationIterator(); all.hasNext();) {
            Annotation mark = all.next();
            if (mark.getType().equals(type)) {
                marks.add(mark);
            }
        }
        return marks;
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}

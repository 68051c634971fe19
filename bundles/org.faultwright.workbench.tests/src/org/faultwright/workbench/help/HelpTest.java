/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.Severity;
import org.faultwright.language.server.WantedWords;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.compare.CompareView;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.faulttable.FaultTableView;
import org.faultwright.workbench.find.FindView;
import org.faultwright.workbench.findings.ChosenFinding;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.Folders;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The help in the window. */
@ExtendWith(KeepPicture.class)
class HelpTest {
    @Test
    void should_lay_out_what_a_page_can_hold() {
        StyledText into = new StyledText(page().getWorkbenchWindow().getShell(), SWT.MULTI);
        try {
            HelpPage.show("# Title\n\nWords **bold `code`** and *more*.\nNext line.\n- one\n  - inner\n- two\n\n3. third\n4. fourth\n\n| key | does |\n|---|---|\n| `F1` | help |\n\n"
                    + "```procedure\ncheck A \"?\"\n```\n<b>plain</b> & 5 < 6\n", into);

            assertEquals("Title\n\nWords bold code and more.\nNext line.\n\n\u2022 one\n  \u2022 inner\n\u2022 two\n\n3. third\n4. fourth\n\nkey    does\nF1    help\n\n"
                    + "check A \"?\"\n\n<b>plain</b> & 5 < 6\n", into.getText());
            assertEquals(JFaceResources.getHeaderFont(), into.getStyleRangeAtOffset(0).font);
            assertEquals(SWT.ITALIC, into.getStyleRangeAtOffset(into.getText().indexOf("more")).fontStyle);
        } finally {
            into.dispose();
        }
    }

    /** No page says more than can be shown, and none shows its marks. */
    @Test
    void should_show_no_marks_on_any_page() {
        StyledText into = new StyledText(page().getWorkbenchWindow().getShell(), SWT.MULTI);
        try {
            for (String id : HelpTopics.ids()) {
                HelpPage.show(HelpTopics.page(id).orElseThrow(), into);

                assertFalse(into.getText().contains("**") || into.getText().contains("```") || into.getText().contains("|---"), id);
                assertTrue(into.getText().length() > 150, id);
            }
        } finally {
            into.dispose();
        }
    }

    @Test
    void should_have_a_page_for_every_topic() {
        assertTrue(HelpTopics.ids().size() > 80, "the rules are among the topics");
        for (String id : HelpTopics.ids()) {
            assertTrue(HelpTopics.page(id).filter(page -> page.length() > 200).isPresent(), id);
        }
    }

    @Test
    void should_show_a_page_of_the_reference() {
        HelpView.showTopic("reference-clauses");

        HelpView view = (HelpView) PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().findView(HelpView.ID);
        assertTrue(view.shownText().contains("needs CONDITION VALUE"), view.shownText());
    }

    @Test
    void should_show_the_page_of_a_rule() {
        HelpView.showRule("hole-between-bands");

        HelpView view = (HelpView) PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().findView(HelpView.ID);
        assertTrue(view.shownText().startsWith(HelpView.ruleTitle("hole-between-bands")), view.shownText());
    }

    @Test
    void should_find_pages_by_words_and_mark_them() throws Exception {
        HelpView view = look("r\u00c9sistance live");

        Waiting.until("pages are listed", () -> !view.listed().isEmpty()
                && view.listed().stream().allMatch(HelpTopics.Topic.class::isInstance));
        assertTrue(view.listed().size() < HelpTopics.ids().size() / 2, view.listed().toString());
        Waiting.until("the words are marked", () -> List.of("resistance", "live").contains(view.markedText().toLowerCase(java.util.Locale.ROOT)));

        look("xyzzyplugh");
        Waiting.until("nothing is listed", () -> view.listed().isEmpty());
        look("");
        Waiting.until("the contents are back", () -> view.listed().size() > 10 && view.listed().contains("The language, word by word"));
    }

    /** Each page is found by its own title. */
    @Test
    void should_find_every_page_by_its_title() {
        for (HelpTopics.Topic topic : HelpTopics.own()) {
            assertTrue(HelpTopics.holding(WantedWords.of(topic.title().replace("\u2026", ""))).contains(topic), topic.title());
        }
        HelpTopics.rules().values().forEach(headers -> headers.forEach(header ->
                assertTrue(HelpTopics.holding(WantedWords.of(header.summary())).stream().anyMatch(topic -> topic.id().equals(header.id())),
                        header.summary())));
    }

    @Test
    void should_open_on_what_is_in_hand() throws Exception {
        ITextEditor editor = Editors.open(Folders.demo().getFile("OllenbyFaintLabels.procedure")).orElseThrow();
        String text = Editors.document(editor).orElseThrow().get();
        Waiting.until("the text is checked", () -> ActiveText.get().place().isPresent());
        try {
            assertTrue(helpAt(editor, text.indexOf("confirms complaint") + 2).contains("confirms complaint"));
            assertEquals("confirms complaint", view().markedText());
            assertTrue(helpAt(editor, text.indexOf("Count the blinks")).startsWith("Keys and order of work"), "no word of the language is in hand");
            page().showView(CardView.ID);
            assertTrue(help().startsWith("Cards, trees and reports"), view().shownText());
            page().showView(FindView.ID);
            assertTrue(help().startsWith("Finding over all procedures"), view().shownText());
            page().showView(FaultTableView.ID);
            assertTrue(help().startsWith("The fault table"), view().shownText());
            page().showView(CompareView.ID);
            assertTrue(help().startsWith("Comparing two revisions"), view().shownText());
            page().showView(FindingsView.ID);
            ChosenFinding.get().choose(new Finding("hole-between-bands", Severity.ERROR, new SourceRange(new SourceText("x", ""), 0, 0), "m", "a",
                    List.of(), List.of()));
            assertTrue(help().startsWith(HelpView.ruleTitle("hole-between-bands")), view().shownText());
        } finally {
            ChosenFinding.get().forget();
            page().closeAllEditors(false);
        }
    }

    @Test
    void should_have_every_picture_that_a_page_shows() {
        int pictures = 0;
        for (String id : HelpTopics.ids()) {
            Matcher picture = Pattern.compile("!\\[(.*?)\\]\\((.*?)\\)").matcher(HelpTopics.page(id).orElseThrow());
            while (picture.find()) {
                pictures++;
                assertTrue(picture.group(1).length() > 15, "a screen reader is told what it shows");
                assertTrue(HelpTest.class.getResource("/help/" + picture.group(2)) != null, picture.group(2));
            }
        }
        assertTrue(pictures >= 6, pictures + " pictures");
    }

    @Test
    void should_show_a_picture_no_wider_than_the_page() {
        HelpView.showTopic("find");
        StyledText page = Controls.all(page().getWorkbenchWindow().getShell(), StyledText.class).stream()
                .filter(one -> one.getText().startsWith("Finding over")).findFirst().orElseThrow();
        int at = page.getText().indexOf('\ufffc');
        assertTrue(page.getStyleRangeAtOffset(at).metrics.width <= page.getClientArea().width);
        assertTrue(page.getStyleRangeAtOffset(at).metrics.ascent > 50);
    }

    private static String helpAt(ITextEditor editor, int offset) throws Exception {
        page().activate(editor);
        editor.selectAndReveal(offset, 0);
        return help();
    }

    private static String help() throws Exception {
        page().getWorkbenchWindow().getService(IHandlerService.class).executeCommand("org.faultwright.workbench.helpTopics", null);
        return view().shownText();
    }

    private static HelpView look(String words) throws Exception {
        HelpView view = (HelpView) page().showView(HelpView.ID);
        Controls.all(page().getWorkbenchWindow().getShell(), Text.class).stream().filter(text -> text.getMessage().startsWith("Look in the help")).findFirst().orElseThrow().setText(words);
        return view;
    }

    private static HelpView view() {
        return (HelpView) page().findView(HelpView.ID);
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }

    @Test
    void should_name_rules_by_their_titles_everywhere() {
        TreeSet<String> shown = new TreeSet<>();
        for (String id : HelpTopics.ids()) {
            // where a rule is named to a machine
            String page = HelpTopics.page(id).orElseThrow().replaceAll("--rule [a-z-]+", "");
            HelpTopics.rules().values().forEach(headers -> headers.stream().map(RuleHeader::id)
                    .filter(rule -> rule.contains("-") && page.matches("(?s).*(?<![\\w-])" + rule + "(?![\\w-]).*")).forEach(rule -> shown.add(rule + " in " + id)));
        }

        assertEquals(new TreeSet<>(), shown);
    }
}

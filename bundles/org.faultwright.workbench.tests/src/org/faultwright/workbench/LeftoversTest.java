/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.eclipse.core.commands.common.NotDefinedException;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.Status;
import org.eclipse.jface.bindings.Binding;
import org.eclipse.jface.preference.PreferenceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.Accessible;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.accessibility.AccessibleListener;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IViewReference;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.keys.IBindingService;
import org.eclipse.ui.statushandlers.StatusManager;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.chart.ChartView;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.faulttable.FaultTableView;
import org.faultwright.workbench.find.FindView;
import org.faultwright.workbench.findings.ChosenFinding;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.FindDialog;
import org.faultwright.workbench.publishing.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * Everything that can be reached in the window, by its menus, its keys, the right button and its tools, against a list that a person
 * has read: {@code what-can-be-reached.txt}. Nothing is left over from a programmer's environment. A new entry is put into
 * the list by hand, after looking at it in the window.
 */
@ExtendWith(KeepPicture.class)
class LeftoversTest {
    private static final String KEYS = "org.faultwright.workbench.keys";
    /** Words of programmers, and ids; none of them stands anywhere in the window. */
    private static final List<String> FOREIGN = List.of("org.", "eclipse", "plug-in", "workspace resource", "bookmark", "task", "quick diff",
            "open with", "show in", "wizard", "marker", "perspective", "refactor", "code ", "annotation", "preferences", "project");
    /** Their label tells what they would undo or where they would go. */
    private static final List<String> CHANGING = List.of("Undo", "Redo", "Back", "Forward");

    private final StringBuilder found = new StringBuilder();
    private ITextEditor editor;
    private Shell shell;

    @BeforeEach
    void open_a_text_and_the_help() throws CoreException {
        page().showView(HelpView.ID);
        shell = page().getWorkbenchWindow().getShell();
        editor = Editors.open(Folders.demo().getFile("OllenbyFaintLabels.procedure")).orElseThrow();
    }

    @AfterEach
    void leave_it_as_it_was() {
        page().closeAllEditors(false);
    }

    @Test
    void should_reach_what_is_on_the_list_and_nothing_else() throws IOException, NotDefinedException, CoreException {
        for (MenuItem top : shell.getMenuBar().getItems()) {
            tell("menu " + plain(top), entries(top.getMenu()));
        }
        TreeSet<String> tools = new TreeSet<>();
        // the tools of a view are seen while it is in front; in a small window the chart stands behind the others
        for (String view : List.of(ChartView.ID, FindView.ID, FaultTableView.ID, FindingsView.ID)) {
            page().showView(view);
            page().activate(editor);
            tools.addAll(tools());
        }
        tell("tools", List.copyOf(tools));
        tell("views", Arrays.stream(page().getViewReferences()).map(IViewReference::getPartName).sorted().toList());
        StyledText text = (StyledText) editor.getAdapter(Control.class);
        tell("right button, text", entries(text.getMenu()));
        tell("right button, margins of the text", marginMenus(text));
        tell("right button, a file on the shelf", shelfMenu());
        tell("right button, a folder on the shelf", shelfMenuOf(shelf().getItem(0)));
        tell("right button, nothing on the shelf", shelfMenuOf());
        tell("right button, tabs", tabMenus());
        TreeSet<String> others = new TreeSet<>();
        for (String view : List.of(ChartView.ID, FaultTableView.ID, FindingsView.ID)) { // they stand one behind the other
            page().showView(view);
            page().activate(editor);
            if (view.equals(FaultTableView.ID)) {
                Waiting.until("the fault table is worked out", () -> Controls.all(shell, Control.class).stream()
                        .anyMatch(control -> control.getClass().getSimpleName().equals("GridCanvas") && control.isVisible() && answersTheRightButton(control, SWT.MENU_KEYBOARD, control.toDisplay(1, 1))));
            }
            others.addAll(otherMenus(text));
        }
        tell("right button, anything else", List.copyOf(others));
        tell("keys", keys());
        tell("pages of settings of others", pages(PlatformUI.getWorkbench().getPreferenceManager()));

        assertEquals(list(), found.toString().strip());
    }

    @Test
    void should_have_each_command_in_one_menu() {
        List<String> all = new ArrayList<>();
        for (MenuItem top : shell.getMenuBar().getItems()) {
            all.addAll(entries(top.getMenu()));
        }

        assertTrue(all.size() > 30, all.toString());
        assertEquals(List.of(), all.stream().filter(entry -> all.indexOf(entry) != all.lastIndexOf(entry)).distinct().toList());
    }

    /** The page of the keys promises nothing that is not there. */
    @Test
    void should_have_every_key_that_the_help_names() throws IOException {
        IBindingService service = PlatformUI.getWorkbench().getService(IBindingService.class);
        List<String> bound = Arrays.stream(service.getBindings()).filter(binding -> binding.getSchemeId().equals(KEYS)
                && binding.getParameterizedCommand() != null).map(binding -> inOneOrder(binding.getTriggerSequence().format()
                        .replace("PageDown", "Page Down").replace("PageUp", "Page Up").replace("\u2190", "Left").replace("\u2192", "Right")
                        .replace("\u2191", "Up").replace("\u2193", "Down"))).toList();
        List<String> named = new ArrayList<>();
        for (String line : help("writing.md").lines().filter(one -> one.startsWith("| ") && !one.startsWith("| key")).toList()) {
            Arrays.stream(line.split("\\|")[1].split(", (?!$)| and |, or | or ")).map(String::strip).filter(key -> !key.contains("click")).forEach(named::add);
        }

        assertTrue(named.size() > 35, named.toString());
        assertEquals(List.of(), named.stream().filter(key -> !bound.contains(inOneOrder(key))).toList(), bound.toString());
    }

    /** Ctrl+Shift and Shift+Ctrl are one. */
    private static String inOneOrder(String key) {
        int last = key.lastIndexOf('+');
        return last < 0 ? key : String.join("+", new TreeSet<>(List.of(key.substring(0, last).split("\\+")))) + key.substring(last);
    }

    private static String help(String page) throws IOException {
        try (InputStream words = Platform.getBundle("org.faultwright.workbench").getEntry("help/" + page).openStream()) {
            return new String(words.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void should_have_no_word_of_a_programmer_on_the_list() throws IOException {
        String words = list().toLowerCase(java.util.Locale.ROOT);

        assertEquals(List.of(), FOREIGN.stream().filter(words::contains).toList());
    }

    @Test
    void should_tell_a_failure_of_the_program_without_ids_and_traces() {
        List<String> said = Dialogs.answer(PlainErrors.TITLE, "OK");

        StatusManager.getManager().handle(Status.error("org.eclipse.core.jobs: An internal error has occurred",
                new IllegalStateException("org.eclipse.something")), StatusManager.SHOW);

        Waiting.until("it is told", () -> !said.isEmpty());
        String words = said.get(0).replace(Platform.getLogFileLocation().toOSString(), "");
        assertFalse(words.contains("org.") || words.contains("Exception"), words);
        assertTrue(said.get(0).contains("What you typed is kept"), said.toString());
    }

    @Test
    void should_find_and_replace_in_words_of_a_technician() {
        editor.getAction(org.eclipse.ui.texteditor.ITextEditorActionConstants.FIND).run();

        Shell dialog = Arrays.stream(shell.getDisplay().getShells()).filter(one -> one.getText().startsWith("Find")).findFirst()
                .orElseThrow();
        String words = Words.of(dialog) + Controls.all(dialog, Button.class).stream().map(button -> button.getText().replace("&", "") + "\n")
                .collect(java.util.stream.Collectors.joining())
                + Controls.all(dialog, org.eclipse.swt.widgets.Group.class).stream().map(org.eclipse.swt.widgets.Group::getText)
                .collect(java.util.stream.Collectors.joining("\n"));
        try {
            assertEquals(FindDialog.TITLE, dialog.getText());
            for (String foreign : List.of("Scope", "Incremental", "Wrap", "Regular expressions\n", "Replace/Find", "Replace All", "Case sensitive")) {
                assertFalse(words.contains(foreign), words);
            }
            assertTrue(words.contains("Go on from the other end"), words);
            for (Button button : Controls.all(dialog, Button.class)) {
                Point needed = button.computeSize(SWT.DEFAULT, SWT.DEFAULT);
                assertTrue(!button.isVisible() || button.getSize().x >= needed.x, button.getText() + " is cut off");
            }
        } finally {
            dialog.close();
        }
    }

    @Test
    void should_say_why_a_command_did_nothing() throws Exception {
        page().activate(editor);
        StyledText text = (StyledText) editor.getAdapter(Control.class);
        Waiting.until("the text is checked", () -> ActiveText.get().place().isPresent());
        text.setCaretOffset(0);
        ChosenFinding.get().forget();
        Map<String, String> sentences = Map.of("nextOnPath", "Choose a finding first", "previousOnPath", "Choose a finding first",
                "goToDeclaration", "There is no name at the cursor", "fix", "No fix is offered at the cursor", "nextFinding",
                "Nothing was found in the text in front");

        for (Map.Entry<String, String> one : sentences.entrySet()) {
            page().getWorkbenchWindow().getService(IHandlerService.class).executeCommand("org.faultwright.workbench." + one.getKey(), null);
            assertTrue(Controls.all(shell, CLabel.class).stream().anyMatch(label -> label.getText() != null
                    && label.getText().contains(one.getValue())), one.getKey());
        }
    }

    private void tell(String where, List<String> entries) {
        found.append('[').append(where).append("]\n");
        entries.forEach(entry -> found.append(entry).append('\n'));
        found.append('\n');
    }

    /** Without what the text itself offers to choose from. */
    private static List<String> entries(Menu menu) {
        menu.notifyListeners(SWT.Show, new Event());
        List<String> entries = Arrays.stream(menu.getItems()).filter(item -> (item.getStyle() & (SWT.SEPARATOR | SWT.RADIO)) == 0)
                .map(LeftoversTest::plain).toList();
        menu.notifyListeners(SWT.Hide, new Event());
        return entries;
    }

    private static String plain(MenuItem item) {
        String text = item.getText().replace("&", "").replaceFirst("\t.*", "");
        return CHANGING.stream().filter(word -> text.equals(word) || text.startsWith(word + " ") && !text.startsWith("Back to the"))
                .findFirst().orElse(text);
    }

    private List<String> tools() {
        TreeSet<String> tools = new TreeSet<>();
        for (ToolBar bar : Controls.all(shell, ToolBar.class)) {
            for (ToolItem item : bar.getItems()) {
                String words = item.getText().isEmpty() ? item.getToolTipText() : item.getText();
                if (words != null && !words.isEmpty() && bar.isVisible()) {
                    tools.add(words.replace("&", "").replaceFirst(" \\(.*\\)$", ""));
                }
            }
        }
        return List.copyOf(tools);
    }

    /** The controls beside the text that have a menu: line numbers, marks, the overview. */
    private List<String> marginMenus(StyledText text) {
        TreeSet<String> entries = new TreeSet<>();
        Composite around = text.getParent().getParent();
        for (Control control : Controls.all(around, Control.class)) {
            if (control != text && control.getMenu() != null) {
                entries.addAll(entries(control.getMenu()));
            }
        }
        return List.copyOf(entries);
    }

    private List<String> shelfMenu() {
        page().activate(page().findView(org.faultwright.workbench.folders.ShelfView.ID));
        Tree shelf = shelf();
        Waiting.until("the shelf is filled", () -> shelf.getItemCount() > 0 && shelf.getItem(0).getItemCount() > 0);
        Waiting.until("the demo is open", () -> {
            Event opened = new Event();
            opened.item = shelf.getItem(0);
            shelf.notifyListeners(SWT.Expand, opened);
            return shelf.getItem(0).getItemCount() > 0 && shelf.getItem(0).getItem(0).getData() instanceof IFile;
        });
        return shelfMenuOf(shelf.getItem(0).getItem(0));
    }

    private Tree shelf() {
        return Controls.all(shell, Tree.class).stream().filter(tree -> tree.getMenu() != null).findFirst().orElseThrow();
    }

    private List<String> shelfMenuOf(TreeItem... chosen) {
        Tree shelf = shelf();
        shelf.setSelection(chosen);
        Event told = new Event();
        told.item = chosen.length == 0 ? null : chosen[0];
        shelf.notifyListeners(SWT.Selection, told);
        return entries(shelf.getMenu());
    }

    @Test
    void should_rename_and_delete_on_the_shelf_by_commands() throws Exception {
        shelfMenu();
        for (Map.Entry<String, String> key : Map.of(IWorkbenchCommandConstants.FILE_RENAME, "Rename the file",
                IWorkbenchCommandConstants.EDIT_DELETE, "Delete").entrySet()) {
            List<String> said = Dialogs.answer(key.getValue(), "Cancel");

            page().getWorkbenchWindow().getService(IHandlerService.class).executeCommand(key.getKey(), null);

            Waiting.until("the dialog was answered", () -> !said.isEmpty());
        }
    }

    @Test
    void should_have_a_name_for_a_screen_reader_for_every_control_without_words() throws ReflectiveOperationException, PartInitException {
        for (IViewReference view : page().getViewReferences()) {
            page().showView(view.getId());
        }
        List<Control> wordless = Controls.all(shell, Control.class).stream().filter(control -> control instanceof Tree || control instanceof Table
                || control instanceof StyledText || control.getClass().getSimpleName().matches("CardCanvas|ChartCanvas|GridCanvas")).toList();

        assertTrue(wordless.size() >= 8, wordless.toString());
        for (Control control : wordless) {
            assertFalse(spoken(control).isBlank(), control + " says nothing");
        }
    }

    /** What is answered when a screen reader asks; there is no public way to ask in its place. */
    private static String spoken(Control control) throws ReflectiveOperationException {
        java.lang.reflect.Field listeners = Accessible.class.getDeclaredField("accessibleListeners");
        listeners.setAccessible(true);
        AccessibleEvent asked = new AccessibleEvent(control);
        asked.childID = ACC.CHILDID_SELF;
        if (listeners.get(control.getAccessible()) instanceof List<?> all) {
            all.forEach(one -> ((AccessibleListener) one).getName(asked));
        }
        return asked.result == null ? "" : asked.result;
    }

    @Test
    void should_turn_the_pages_of_the_card_by_keys() throws PartInitException {
        CardView view = (CardView) page().showView(CardView.ID);
        Waiting.untilPresent("the card is there", view::pages);
        Canvas card = Controls.all(shell, Canvas.class).stream().filter(one -> one.getClass().getSimpleName().equals("CardCanvas")).findFirst()
                .orElseThrow();
        Keys.press(card, SWT.END);
        int end = card.getVerticalBar().getSelection();
        assertEquals(card.getVerticalBar().getMaximum() - card.getVerticalBar().getThumb(), end);
        Keys.press(card, SWT.PAGE_UP);
        assertTrue(card.getVerticalBar().getSelection() < end);
    }

    @Test
    void should_tell_of_a_file_on_the_shelf_in_a_hint_that_is_no_window() {
        shelfMenu();
        Tree shelf = Controls.all(shell, Tree.class).stream().filter(tree -> tree.getMenu() != null).findFirst().orElseThrow();
        shelf.getItem(0).setExpanded(true);
        shelf.setTopItem(shelf.getItem(0));
        Event over = new Event();
        Waiting.until("the file is seen", () -> {
            Rectangle first = shelf.getItem(0).getItem(0).getBounds();
            over.x = first.x + 2;
            over.y = first.y + first.height / 2;
            return shelf.getItem(new Point(over.x, over.y)) == shelf.getItem(0).getItem(0);
        });

        shelf.notifyListeners(SWT.MouseMove, over);

        assertTrue(shelf.getToolTipText() != null && shelf.getToolTipText().contains(".procedure"), shelf.getToolTipText());
    }

    private List<String> tabMenus() {
        TreeSet<String> entries = new TreeSet<>();
        Listener shown = event -> {
            if (event.widget instanceof Menu menu) {
                Arrays.stream(menu.getItems()).map(LeftoversTest::plain).filter(words -> !words.isEmpty()).forEach(entries::add);
                shell.getDisplay().asyncExec(() -> menu.setVisible(false));
            }
        };
        shell.getDisplay().addFilter(SWT.Show, shown);
        try {
            for (CTabFolder tabs : Controls.all(shell, CTabFolder.class)) {
                for (int tab = 0; tab < tabs.getItemCount() && tabs.isVisible(); tab++) {
                    Rectangle bounds = tabs.getItem(tab).getBounds();
                    Point at = tabs.toDisplay(bounds.x + bounds.width / 2, bounds.y + bounds.height / 2);
                    Event event = new Event();
                    event.x = at.x;
                    event.y = at.y;
                    tabs.notifyListeners(SWT.MenuDetect, event);
                    boolean[] shownByNow = {false};
                    shell.getDisplay().timerExec(300, () -> shownByNow[0] = true);
                    Waiting.until("a menu has come", () -> shownByNow[0]);
                }
            }
        } finally {
            shell.getDisplay().removeFilter(SWT.Show, shown);
        }
        return List.copyOf(entries);
    }

    /** Menus of controls that no other section looks at; a sentence in the status line can be copied. */
    private List<String> otherMenus(StyledText text) {
        TreeSet<String> entries = new TreeSet<>();
        List<Control> beside = Controls.all(text.getParent().getParent(), Control.class);
        for (Control control : Controls.all(shell, Control.class)) {
            if (control.getMenu() != null && !beside.contains(control) && !(control instanceof CTabFolder)
                    && !(control instanceof Tree) && !(control instanceof CLabel) && control.isVisible()) {
                Point end = new Point(control.getSize().x - 2, control.getSize().y - 2);
                // by the key, and by the mouse in each corner: one of them is empty
                for (Point corner : List.of(new Point(1, 1), new Point(end.x, 1), new Point(1, end.y), end)) {
                    for (int by : new int[] {SWT.MENU_KEYBOARD, SWT.MENU_MOUSE}) {
                        if (answersTheRightButton(control, by, control.toDisplay(corner))) {
                            entries.addAll(entries(control.getMenu()).stream().map(entry -> entry + " (" + control.getClass().getSimpleName() + ")").toList());
                        }
                    }
                }
            }
        }
        return List.copyOf(entries);
    }

    private static boolean answersTheRightButton(Control control, int by, Point at) {
        Event event = new Event();
        event.detail = by;
        event.x = at.x;
        event.y = at.y;
        control.notifyListeners(SWT.MenuDetect, event);
        return event.doit;
    }

    /** Every key that does something: no other scheme is active, and ours has no parent. */
    private static List<String> keys() throws NotDefinedException {
        IBindingService service = PlatformUI.getWorkbench().getService(IBindingService.class);
        assertEquals(KEYS, service.getActiveScheme().getId());
        TreeSet<String> keys = new TreeSet<>();
        for (Binding binding : service.getBindings()) {
            if (binding.getSchemeId().equals(KEYS) && binding.getParameterizedCommand() != null) {
                keys.add(binding.getTriggerSequence().format() + ": " + binding.getParameterizedCommand().getCommand().getName());
            }
        }
        return List.copyOf(keys);
    }

    private static List<String> pages(PreferenceManager manager) {
        List<String> pages = new ArrayList<>();
        manager.getElements(PreferenceManager.PRE_ORDER).forEach(node -> pages.add(node.getLabelText()));
        return pages;
    }

    private static String list() throws IOException {
        try (InputStream list = LeftoversTest.class.getResourceAsStream("what-can-be-reached.txt")) {
            return new String(list.readAllBytes(), StandardCharsets.UTF_8).strip();
        }
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}

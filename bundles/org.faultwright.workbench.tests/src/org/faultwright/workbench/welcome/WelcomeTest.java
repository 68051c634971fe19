/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.welcome;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keyboard;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.begin.FileDrop;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.RecentFolders;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** What somebody meets who has nothing open, and what can be dropped onto the window. */
@ExtendWith(KeepPicture.class)
class WelcomeTest {
    @TempDir
    private Path folder;
    private final Keyboard keyboard = new Keyboard();

    @BeforeEach
    void show_it() {
        page().closeAllEditors(false);
        Welcome.open(page());
        keyboard.rest(300);
    }

    @AfterEach
    void leave_it_as_it_was() throws CoreException {
        page().closeAllEditors(false);
        for (IProject project : Folders.all()) {
            if (Folders.place(project).getLocation().toPath().startsWith(folder)) {
                project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
            }
        }
    }

    @Test
    void should_have_three_things_to_do_that_the_keyboard_reaches() {
        for (String thing : List.of("New procedure\u2026", "Open the demo bench", "Read the tutorial")) {
            keyboard.go(thing);
        }
        keyboard.press("Read the tutorial");
        HelpView help = (HelpView) page().findView(HelpView.ID);
        Waiting.until("the tutorial is shown", () -> help != null && Controls.all(shell(), org.eclipse.swt.custom.StyledText.class).stream()
                .anyMatch(text -> text.getText().startsWith("A first procedure, step by step")));
        Welcome.open(page());
        keyboard.press("Open the demo bench");

        assertEquals(Folders.FIRST_OF_THE_DEMO, Waiting.untilPresent("the demo is open", Editors::active).getEditorInput().getName());
    }

    /** As releng/workbench.sh starts the window. */
    @Test
    void should_show_the_demo_in_front_where_that_was_asked_for_at_the_start() {
        page().closeAllEditors(false);
        Welcome.begin(page(), List.of());
        assertTrue(Editors.active().isEmpty(), "nobody asked");

        Welcome.begin(page(), List.of(Welcome.DEMO));

        assertEquals(Folders.FIRST_OF_THE_DEMO, Waiting.untilPresent("the demo is open", Editors::active).getEditorInput().getName());
    }

    @Test
    void should_list_a_folder_that_was_open_and_open_it_again() throws CoreException {
        IProject project = Folders.link(folder);
        project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
        assertEquals(folder, RecentFolders.all().get(0));
        Waiting.until("it is listed", () -> Controls.all(shell(), Link.class).stream().anyMatch(this::isOurs));

        Link link = Controls.all(shell(), Link.class).stream().filter(this::isOurs).findFirst().orElseThrow();
        link.notifyListeners(org.eclipse.swt.SWT.Selection, new org.eclipse.swt.widgets.Event());

        assertTrue(Folders.open().contains(folder));
    }

    private boolean isOurs(Link link) {
        return link.getText().startsWith("<a>" + folder.getFileName() + "</a>");
    }

    @Test
    void should_open_what_is_dropped_and_say_what_it_cannot() throws IOException {
        Path text = Files.writeString(folder.resolve("One.procedure"), "procedure One \"One\"\n");
        Path other = Files.writeString(folder.resolve("letter.txt"), "Dear all\n");

        FileDrop.open(text, shell());
        assertTrue(Folders.open().contains(folder));
        assertEquals("One.procedure", Waiting.untilPresent("it is open", Editors::active).getEditorInput().getName());

        List<String> said = Dialogs.answer("Open", "OK");
        FileDrop.open(List.of(folder, other), shell());
        assertTrue(said.get(0).contains("\"letter.txt\" is neither a procedure nor a table"), said.toString());
        assertEquals(1, Folders.open().stream().filter(folder::equals).count());
    }

    @Test
    void should_ask_what_a_dropped_table_holds() throws IOException {
        Path table = Files.writeString(folder.resolve("codes.csv"), "code,meaning\n1 pip,Cold\n");
        List<String> said = Dialogs.answer("New procedure", "Cancel");

        FileDrop.open(table, shell());

        assertTrue(said.get(0).contains("begins with \"codes.csv\""), said.toString());
    }

    @Test
    void should_have_nothing_that_is_cut_off_in_letters_of_one_and_a_half_the_size() {
        Button first = (Button) keyboard.go("New procedure\u2026");
        Composite body = first.getParent();
        int before = first.computeSize(SWT.DEFAULT, SWT.DEFAULT).x;
        List<Font> made = new ArrayList<>();
        for (Control control : body.getChildren()) {
            FontData[] larger = control.getFont().getFontData();
            for (FontData one : larger) {
                one.setHeight(one.getHeight() * 3 / 2);
            }
            made.add(new Font(control.getDisplay(), larger));
            control.setFont(made.get(made.size() - 1));
        }
        body.layout(true, true);
        assertTrue(first.computeSize(SWT.DEFAULT, SWT.DEFAULT).x > before * 6 / 5, "the letters are no larger");
        keyboard.picture("start-1b-welcome-larger");

        List<String> cut = Arrays.stream(body.getChildren()).filter(control -> !(control instanceof Label label) || !label.getText().isEmpty()).filter(control -> {
            boolean wraps = (control.getStyle() & SWT.WRAP) != 0;
            Point needed = control.computeSize(wraps ? control.getSize().x : SWT.DEFAULT, SWT.DEFAULT);
            return control.getSize().y < needed.y || !wraps && control.getSize().x < needed.x
                    || control.getBounds().x + control.getSize().x > body.getClientArea().width;
        }).map(control -> control + " " + control.getSize()).toList();
        page().closeAllEditors(false);
        made.forEach(Font::dispose);
        assertEquals(List.of(), cut);
    }

    private static Shell shell() {
        return page().getWorkbenchWindow().getShell();
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}

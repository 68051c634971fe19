/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.eclipse.jface.bindings.Binding;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.keys.IBindingService;
import org.junit.jupiter.api.Test;

/** Menus and keys against a list that a person has read: nothing is left over from a programmer's environment. */
class LeftoversTest {
    private static final List<String> MENUS = List.of("File: New…, Open a folder of procedures…, Save, Save as…, Save all,"
            + " Back to the saved text, Close, Publish…, Quit", "Edit: Undo, Redo, Cut, Copy, Paste, Select all, Find and replace…,"
            + " Go to the declaration, Back, Forward, Rename…, Format, Comment or not, Settings…", "Check: Next finding, Previous finding,"
            + " Offer fixes, Next step, Previous step", "Help: Help, About Faultwright");
    /** Their label tells what they would undo or where they would go. */
    private static final List<String> CHANGING = List.of("Undo", "Redo", "Back", "Forward");

    @Test
    void should_have_the_menus_on_the_list_and_no_other() {
        List<String> found = new ArrayList<>();
        for (MenuItem top : PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell().getMenuBar().getItems()) {
            found.add(plain(top) + ": " + String.join(", ", entries(top.getMenu())));
        }

        assertEquals(String.join("\n", MENUS), String.join("\n", found));
    }

    private static List<String> entries(Menu menu) {
        menu.notifyListeners(SWT.Show, new Event());
        List<String> entries = Arrays.stream(menu.getItems()).filter(item -> (item.getStyle() & SWT.SEPARATOR) == 0)
                .map(LeftoversTest::plain).toList();
        menu.notifyListeners(SWT.Hide, new Event());
        return entries;
    }

    private static String plain(MenuItem item) {
        String text = item.getText().replace("&", "").replaceFirst("\t.*", "");
        return CHANGING.stream().filter(word -> text.equals(word) || text.startsWith(word + " ") && !text.startsWith("Back to the"))
                .findFirst().orElse(text);
    }

    @Test
    void should_have_no_key_but_our_own_and_a_command_behind_each() {
        IBindingService keys = PlatformUI.getWorkbench().getService(IBindingService.class);
        TreeSet<String> undefined = new TreeSet<>();
        int own = 0;
        for (Binding binding : keys.getBindings()) {
            if (binding.getSchemeId().equals("org.faultwright.workbench.keys")) {
                own++;
                if (binding.getParameterizedCommand() == null || !binding.getParameterizedCommand().getCommand().isDefined()) {
                    undefined.add(String.valueOf(binding.getTriggerSequence()));
                }
            }
        }

        assertEquals("org.faultwright.workbench.keys", keys.getActiveScheme().getId());
        assertEquals(new TreeSet<>(), undefined);
        assertTrue(own > 50, own + " keys");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is recognised as damaged, and what is said of it; releng/starts.sh starts the window with the real thing. */
class WindowLayoutTest {
    private static final String WHOLE = "<?xml version=\"1.0\" encoding=\"ASCII\"?>\n<application:Application xmi:version=\"2.0\""
            + " xmlns:xmi=\"http://www.omg.org/XMI\" xmlns:application=\"http://www.eclipse.org/ui/2010/UIModel/application\">\n"
            + "  <children label=\"Faultwright\"/>\n</application:Application>\n";

    @TempDir
    private Path folder;

    @Test
    void should_find_nothing_wrong_where_there_is_no_arrangement_yet() {
        assertFalse(WindowLayout.isDamaged(folder.resolve("missing")));
    }

    @Test
    void should_find_nothing_wrong_with_a_whole_file() throws IOException {
        assertFalse(isDamaged(WHOLE.getBytes()));
    }

    @Test
    void should_recognise_a_file_that_was_cut_off_anywhere() throws IOException {
        byte[] whole = WHOLE.getBytes();
        for (int length = 0; length < whole.length - 1; length++) {
            assertTrue(isDamaged(Arrays.copyOf(whole, length)), "cut off after " + length + " bytes");
        }
    }

    @Test
    void should_recognise_what_is_no_arrangement_at_all() throws IOException {
        byte[] bytes = new byte[300];
        new Random(4).nextBytes(bytes);

        assertTrue(isDamaged(bytes));
        assertTrue(isDamaged(new byte[4096]));
        assertTrue(isDamaged(("<!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/hostname\">]><a>&b;</a>").getBytes()));
    }

    @Test
    void should_say_what_was_damaged_and_where_it_is_kept() {
        assertEquals("The arrangement of the window was damaged; it is as at the first start. Your procedures are untouched in their"
                + " folders.\n\nWhat was damaged is kept in /w/damaged-arrangement.",
                StartSequence.words(Map.of(Workspace.Part.ARRANGEMENT, Path.of("/w/damaged-arrangement")), List.of()));
        assertEquals("The list of open folders was damaged and has been begun anew, with the folders that were open. Your procedures are"
                + " untouched in their folders.", StartSequence.words(Map.of(), List.of(Path.of("/bench"))));
    }

    private boolean isDamaged(byte[] bytes) throws IOException {
        Files.write(folder.resolve("workbench.xmi"), bytes);
        return WindowLayout.isDamaged(folder);
    }
}

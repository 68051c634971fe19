/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;

class WindowTest {
    @Test
    void should_open_a_window_that_bears_the_name_of_the_program() {
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();

        assertTrue(window.getShell().isVisible());
        assertTrue(window.getShell().getText().contains("Faultwright"), window.getShell().getText());
    }

    /** The picture of the start is drawn by the launcher, so that only the window system knows of it; it has the size of the file. */
    @Test
    void should_have_taken_the_picture_of_the_start_away() throws IOException, InterruptedException {
        String picture = System.getProperty("org.eclipse.equinox.launcher.splash.location", "");
        assertTrue(picture.endsWith("splash.png"), "a picture was shown: " + picture);
        ImageData size = new ImageData(picture);

        Process windows = new ProcessBuilder("xdotool", "search", "--onlyvisible", "--name", ".", "getwindowgeometry", "%@").start();
        String seen = new String(windows.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertEquals(0, windows.waitFor());
        Rectangle own = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell().getClientArea();
        assertTrue(seen.contains("Geometry: " + own.width + "x"), "our own window is among them: " + seen);
        assertFalse(seen.contains("Geometry: " + size.width + "x" + size.height), seen);
        assertNull(System.getProperty("org.eclipse.equinox.launcher.splash.handle"), "the launcher knows that it is gone");
    }

    @Test
    void should_start_in_the_writing_perspective() {
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();

        assertEquals(WritingPerspective.ID, window.getActivePage().getPerspective().getId());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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

    @Test
    void should_start_in_the_writing_perspective() {
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();

        assertEquals(WritingPerspective.ID, window.getActivePage().getPerspective().getId());
    }
}

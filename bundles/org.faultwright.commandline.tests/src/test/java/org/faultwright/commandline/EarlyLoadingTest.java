/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class EarlyLoadingTest {
    @Test
    void isForACallAboutOneText() {
        assertTrue(EarlyLoading.isAboutOneText("check", "A.procedure"));
        assertTrue(EarlyLoading.isAboutOneText("check", "--no-cache", "--json", "folder/A.procedure"));
    }

    @Test
    void isNotForFoldersSeveralTextsOrNone() {
        assertFalse(EarlyLoading.isAboutOneText());
        assertFalse(EarlyLoading.isAboutOneText("A.procedure"));
        assertFalse(EarlyLoading.isAboutOneText("check", "folder"));
        assertFalse(EarlyLoading.isAboutOneText("check", "A.procedure", "B.procedure"));
        assertFalse(EarlyLoading.isAboutOneText("check", "A.procedure", "folder"));
        assertFalse(EarlyLoading.isAboutOneText("--version"));
    }

    @Test
    void whereNothingWasBegunNobodyWaits() {
        EarlyLoading.begin("check", "folder");
        EarlyLoading.await();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.ui.PlatformUI;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.ProcedureEditor;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.settings.dialog.SettingsDialog;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What can be set, and that it does something. */
@ExtendWith(KeepPicture.class)
class WorkbenchSettingsTest {
    private final int size = WorkbenchSettings.fontSize();

    @AfterEach
    void as_before() {
        WorkbenchSettings.judgeCalibrationOn(Optional.empty());
        WorkbenchSettings.choose(WorkbenchSettings.Colours.OF_THE_SYSTEM);
        WorkbenchSettings.useFontSize(size);
    }

    @Test
    void should_offer_the_size_the_colours_the_day_and_the_folders_and_nothing_else() {
        List<String> said = Dialogs.answer(SettingsDialog.TITLE, "Cancel");

        new SettingsDialog(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell()).open();

        for (String one : List.of("Size of the text", "Colours", "Calibration is judged on", "Folders")) {
            assertTrue(said.get(0).contains(one), said.toString());
        }
    }

    @Test
    void should_change_the_size_of_the_text_at_once() {
        WorkbenchSettings.useFontSize(17);

        assertEquals(17, JFaceResources.getTextFont().getFontData()[0].getHeight());
    }

    @Test
    void should_remember_the_colours_for_the_next_start() {
        WorkbenchSettings.choose(WorkbenchSettings.Colours.DARK);

        assertEquals(WorkbenchSettings.Colours.DARK, WorkbenchSettings.colours());
    }

    @Test
    void should_live_with_settings_that_somebody_has_spoilt() {
        InstanceScope.INSTANCE.getNode("org.faultwright.workbench").put("colours", "MAUVE");
        InstanceScope.INSTANCE.getNode("org.faultwright.workbench").put("calibrationJudgedOn", "the day after");

        assertEquals(WorkbenchSettings.Colours.OF_THE_SYSTEM, WorkbenchSettings.colours());
        assertEquals(LocalDate.now(), WorkbenchSettings.calibrationDay());
    }

    @Test
    void should_judge_calibration_on_the_day_that_was_chosen() throws CoreException {
        try (Bench bench = new Bench()) {
            IFile file = bench.file("Rail.procedure", """
                    procedure Rail "Supply rail"

                    instrument HandMeter "Hand-held multimeter" {
                        dc voltage up to 60 V   resolution 10 mV   accuracy 0.5 % of reading + 2 digits
                        calibrated until 2090-01-31
                    }
                    measure HeadSupply "Head supply" {
                        dc voltage using HandMeter
                        under 22 V    -> Done
                        at least 22 V -> Done
                    }
                    conclude Done "Measured" { finds nothing }
                    """);
            ProcedureEditor editor = bench.open(file);
            Object before = LiveTexts.get().services();
            assertTrue(!isOutOfCalibration(editor), LiveTexts.get().of(editor.document()).orElseThrow().text().findings().toString());

            WorkbenchSettings.judgeCalibrationOn(Optional.of(LocalDate.of(2090, 2, 1)));

            Waiting.until("the meter is out of calibration", () -> isOutOfCalibration(editor));
            assertNotSame(before, LiveTexts.get().services());
            WorkbenchSettings.judgeCalibrationOn(Optional.empty());
            Waiting.until("and is not today", () -> !isOutOfCalibration(editor));
        }
    }

    private static boolean isOutOfCalibration(ProcedureEditor editor) {
        return LiveTexts.get().of(editor.document()).orElseThrow().text().findings().stream()
                .anyMatch(finding -> finding.rule().equals("calibration-expired"));
    }
}

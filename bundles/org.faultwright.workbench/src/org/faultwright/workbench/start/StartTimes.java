/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import org.eclipse.core.runtime.ILog;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.welcome.Welcome;

/**
 * Writes when each part of the window was there, in milliseconds since the Java machine began and, in parentheses, of processor
 * time, which a busy machine does not change much; into the file that the system property {@code faultwright.times} names; does nothing without it. For releng/start-times.sh.
 */
public final class StartTimes {
    private static final String PROPERTY = "faultwright.times";
    private static final int MILLISECONDS_BETWEEN_LOOKS = 10;

    private final Map<String, BooleanSupplier> waitedFor = new LinkedHashMap<>();
    private final Map<String, String> times = new LinkedHashMap<>();
    private final Path file;

    private StartTimes(Path file, IWorkbenchWindow window) {
        this.file = file;
        IWorkbenchPage page = window.getActivePage();
        boolean[] painted = {false};
        window.getShell().getDisplay().addFilter(org.eclipse.swt.SWT.Paint, event -> painted[0] = true);
        waitedFor.put("window", () -> painted[0]);
        if (Arrays.stream(page.getEditorReferences()).anyMatch(one -> !Welcome.ID.equals(one.getId()))) {
            waitedFor.put("text", () -> painted[0] && ActiveText.get().editor().isPresent());
            waitedFor.put("findings", () -> ActiveText.get().place().isPresent());
            waitedFor.put("card", () -> page.findView(CardView.ID) instanceof CardView card && card.pages().isPresent());
        }
        waitedFor.put("titles", () -> FolderDocuments.get().progress().all() == FolderDocuments.files().size());
        waitedFor.put("checked", () -> FolderDocuments.get().isComplete());
    }

    /** Begins to look, where somebody wants to know. */
    public static void of(IWorkbenchWindow window) {
        Optional.ofNullable(System.getProperty(PROPERTY)).filter(name -> !name.isEmpty()).map(Path::of)
                .ifPresent(file -> new StartTimes(file, window).look());
    }

    private void look() {
        waitedFor.entrySet().removeIf(one -> {
            boolean there = one.getValue().getAsBoolean();
            if (there) {
                times.put(one.getKey(), now());
            }
            return there;
        });
        if (waitedFor.isEmpty()) {
            write();
        } else {
            Display.getCurrent().timerExec(MILLISECONDS_BETWEEN_LOOKS, this::look);
        }
    }

    private static String now() {
        long milliseconds = System.currentTimeMillis() - ManagementFactory.getRuntimeMXBean().getStartTime();
        long worked = ProcessHandle.current().info().totalCpuDuration().map(java.time.Duration::toMillis).orElse(0L);
        return milliseconds + " (" + worked + ")";
    }

    private void write() {
        System.gc();
        Runtime java = Runtime.getRuntime();
        times.put("heap in MB", String.valueOf(java.totalMemory() - java.freeMemory() >> 20));
        try {
            Files.writeString(file, times.entrySet().stream().map(time -> time.getKey() + ": " + time.getValue() + "\n")
                    .collect(Collectors.joining()));
        } catch (IOException refused) {
            ILog.of(StartTimes.class).warn("The times could not be written.", refused);
        }
    }
}

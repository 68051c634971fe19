/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import java.io.IOException;
import java.nio.file.ClosedWatchServiceException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import org.eclipse.core.runtime.ILog;
import org.eclipse.swt.widgets.Shell;

/** Lets a second start bring the first window to the front: it rings by writing a file that the first one watches for. */
public final class Doorbell {
    private static final String FILE = "show-window";

    private Doorbell() {
    }

    /** Asks the window that has this workspace to come to the front. */
    static void ring(Path workspace) throws IOException {
        Files.writeString(workspace.resolve(FILE), "");
    }

    /** Waits, without using the processor, for a second start. */
    public static void listen(Shell window) {
        Thread listening = new Thread(() -> listen(Workspace.folder(), window), "Faultwright: a second start");
        listening.setDaemon(true);
        listening.start();
    }

    private static void listen(Path workspace, Shell window) {
        try (WatchService watch = workspace.getFileSystem().newWatchService()) {
            workspace.register(watch, StandardWatchEventKinds.ENTRY_CREATE, StandardWatchEventKinds.ENTRY_MODIFY);
            Files.deleteIfExists(workspace.resolve(FILE));
            while (!window.isDisposed()) {
                WatchKey key = watch.take();
                for (WatchEvent<?> event : key.pollEvents()) {
                    if (String.valueOf(event.context()).equals(FILE) && Files.deleteIfExists(workspace.resolve(FILE))) {
                        show(window);
                    }
                }
                key.reset();
            }
        } catch (IOException | ClosedWatchServiceException unwatched) {
            ILog.of(Doorbell.class).warn("A second start cannot bring this window to the front.", unwatched);
        } catch (InterruptedException ending) {
            Thread.currentThread().interrupt();
        }
    }

    private static void show(Shell window) {
        if (!window.isDisposed()) {
            window.getDisplay().asyncExec(() -> {
                if (!window.isDisposed()) {
                    window.setMinimized(false);
                    window.forceActive();
                }
            });
        }
    }
}

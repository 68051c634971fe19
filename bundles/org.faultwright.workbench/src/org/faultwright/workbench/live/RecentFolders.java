/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** The folders that were put on the shelf lately, the last one first; kept with the workspace. */
public final class RecentFolders {
    private static final KeptPaths KEPT = new KeptPaths("recentFolders", 10);
    private static final List<Runnable> LISTENERS = new CopyOnWriteArrayList<>();

    private RecentFolders() {
    }

    /** The last one first; some may be gone from the disk. */
    public static List<Path> all() {
        return KEPT.all();
    }

    static void remember(Path folder) {
        KEPT.add(folder);
        LISTENERS.forEach(Runnable::run);
    }

    /** Called after a folder was put on the shelf, in any thread. */
    public static void addListener(Runnable listener) {
        LISTENERS.add(listener);
    }

    public static void removeListener(Runnable listener) {
        LISTENERS.remove(listener);
    }
}

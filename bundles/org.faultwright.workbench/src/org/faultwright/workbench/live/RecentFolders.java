/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Collectors;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.osgi.service.prefs.BackingStoreException;
import org.osgi.service.prefs.Preferences;

/** The folders that were put on the shelf lately, the last one first; kept with the workspace. */
public final class RecentFolders {
    private static final String KEY = "recentFolders";
    private static final int MOST = 10;
    private static final List<Runnable> LISTENERS = new CopyOnWriteArrayList<>();

    private RecentFolders() {
    }

    private static Preferences kept() {
        return InstanceScope.INSTANCE.getNode("org.faultwright.workbench");
    }

    /** The last one first; some may be gone from the disk. */
    public static synchronized List<Path> all() {
        List<Path> all = new ArrayList<>();
        for (String line : kept().get(KEY, "").split("\n")) {
            try {
                if (!line.isBlank()) {
                    all.add(Path.of(line));
                }
            } catch (InvalidPathException damaged) {
                ILog.of(RecentFolders.class).warn("What was kept of a folder is no path: " + line, damaged);
            }
        }
        return all;
    }

    static synchronized void remember(Path folder) {
        List<Path> all = new ArrayList<>(all());
        all.remove(folder);
        all.add(0, folder);
        kept().put(KEY, all.stream().limit(MOST).map(Path::toString).collect(Collectors.joining("\n")));
        try {
            kept().flush();
        } catch (BackingStoreException refused) {
            ILog.of(RecentFolders.class).warn("The folders could not be kept.", refused);
        }
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

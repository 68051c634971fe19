/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.osgi.service.prefs.BackingStoreException;
import org.osgi.service.prefs.Preferences;

/** Files and folders that were chosen lately, the last one first; kept with the workspace. From any thread. */
public final class KeptPaths {
    private final String key;
    private final int most;

    /** @param key under which they are kept @param most how many; an older one is forgotten */
    public KeptPaths(String key, int most) {
        this.key = key;
        this.most = most;
    }

    private static Preferences kept() {
        return InstanceScope.INSTANCE.getNode("org.faultwright.workbench");
    }

    /** The last one first; some may be gone from the disk. */
    public synchronized List<Path> all() {
        List<Path> all = new ArrayList<>();
        for (String line : kept().get(key, "").split("\n")) {
            try {
                if (!line.isBlank()) {
                    all.add(Path.of(line));
                }
            } catch (InvalidPathException damaged) {
                ILog.of(KeptPaths.class).warn("\"" + line + "\" is no path and was forgotten.", damaged);
            }
        }
        return all;
    }

    public synchronized void add(Path chosen) {
        keep(Stream.concat(Stream.of(chosen), all().stream().filter(one -> !one.equals(chosen))).toList());
    }

    public synchronized void keep(List<Path> paths) {
        kept().put(key, paths.stream().limit(most).map(Path::toString).collect(Collectors.joining("\n")));
        try {
            kept().flush();
        } catch (BackingStoreException refused) {
            ILog.of(KeptPaths.class).warn("What was chosen could not be kept for the next start.", refused);
        }
    }
}

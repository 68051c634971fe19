/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.compare;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.osgi.service.prefs.BackingStoreException;
import org.osgi.service.prefs.Preferences;

/** The files and folders that texts were compared with, the last one first; kept with the workspace. */
final class Remembered {
    private static final String KEY = "comparedWith";
    private static final int MOST = 6;

    private Remembered() {
    }

    private static Preferences kept() {
        return InstanceScope.INSTANCE.getNode("org.faultwright.workbench");
    }

    static List<Against.Place> places() {
        List<Against.Place> places = new ArrayList<>();
        for (String line : kept().get(KEY, "").split("\n")) {
            try {
                if (!line.isBlank()) {
                    places.add(new Against.Place(Path.of(line)));
                }
            } catch (InvalidPathException strange) {
                ILog.of(Remembered.class).warn("\"" + line + "\" is no path and was forgotten.", strange);
            }
        }
        return places;
    }

    static void add(Against.Place chosen) {
        keep(Stream.concat(Stream.of(chosen), places().stream().filter(one -> !one.equals(chosen))).limit(MOST).toList());
    }

    static void keep(List<Against.Place> places) {
        kept().put(KEY, String.join("\n", places.stream().map(Against.Place::words).toList()));
        try {
            kept().flush();
        } catch (BackingStoreException refused) {
            ILog.of(Remembered.class).warn("What texts are compared with could not be remembered.", refused);
        }
    }
}

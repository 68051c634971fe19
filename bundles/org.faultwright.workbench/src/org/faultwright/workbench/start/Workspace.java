/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.Platform;
import org.eclipse.osgi.service.datalocation.Location;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleException;
import org.osgi.framework.FrameworkUtil;

/** The folder in which a window keeps what is its own: which folders are open, how its views are arranged, what is not saved yet. */
public final class Workspace {
    private static final int MOST_WINDOWS = 20;

    private Workspace() {
    }

    /** Takes the folder for this window. @return false if another window has it */
    static boolean take() throws IOException {
        Location location = Platform.getInstanceLocation();
        if (location == null) {
            return true;
        }
        return location.isSet() ? location.lock() : location.set(location.getDefault(), true);
    }

    /** Where the workspace is, or would be. */
    static Path folder() {
        Location location = Platform.getInstanceLocation();
        URL url = location.isSet() ? location.getURL() : location.getDefault();
        return Path.of(new java.io.File(url.getPath()).getPath());
    }

    /** Whether a workspace was named when the program was started; it cannot be another one then. */
    static boolean wasNamed() {
        return Platform.getInstanceLocation().isSet();
    }

    /** Takes a folder beside the usual one. @return false if a workspace was named at the start, or too many windows are open */
    static boolean takeAnother() throws IOException {
        Location location = Platform.getInstanceLocation();
        Path usual = folder();
        for (int number = 2; number <= MOST_WINDOWS && !location.isSet(); number++) {
            Path other = usual.resolveSibling(usual.getFileName() + "-" + number);
            if (location.set(other.toUri().toURL(), true)) {
                return true;
            }
        }
        return false;
    }

    /** What can be damaged by itself. */
    enum Part {
        /** Which folders are open. */
        FOLDERS(".metadata/.plugins/org.eclipse.core.resources"),
        /** How the views are arranged and which texts are open. */
        ARRANGEMENT(".metadata/.plugins/org.eclipse.e4.workbench");

        private final String where;

        Part(String where) {
            this.where = where;
        }
    }

    /**
     * Opens the workspace; a part of it that cannot be read is set aside, never deleted, and begun anew.
     *
     * @return where each damaged part is now; empty where nothing was wrong
     */
    static Map<Part, Path> open() {
        Map<Part, Path> aside = new EnumMap<>(Part.class);
        if (WindowLayout.isDamaged(folder().resolve(Part.ARRANGEMENT.where))) {
            setAside(Part.ARRANGEMENT, aside);
        }
        if (!isReadable()) {
            Bundle resources = FrameworkUtil.getBundle(ResourcesPlugin.class);
            try {
                resources.stop(Bundle.STOP_TRANSIENT);
                setAside(Part.FOLDERS, aside);
                resources.start(Bundle.START_TRANSIENT);
            } catch (BundleException refused) {
                ILog.of(Workspace.class).error("The damaged workspace could not be begun anew.", refused);
            }
        }
        return aside;
    }

    private static void setAside(Part part, Map<Part, Path> aside) {
        Path to = free(folder().resolve("damaged-" + part.name().toLowerCase(Locale.ROOT)));
        try {
            Files.move(folder().resolve(part.where), to);
            aside.put(part, to);
        } catch (IOException refused) {
            ILog.of(Workspace.class).error("What is damaged could not be moved to " + to + ".", refused);
        }
    }

    /** Whether there is a list of folders that can be worked with; one that was cut off leaves a workspace that is closed. */
    private static boolean isReadable() {
        try {
            ResourcesPlugin.getWorkspace().run((ICoreRunnable) monitor -> { }, new NullProgressMonitor());
            return true;
        } catch (IllegalStateException | CoreException damaged) {
            return false;
        }
    }

    private static Path free(Path wanted) {
        Path free = wanted;
        for (int number = 2; Files.exists(free); number++) {
            free = wanted.resolveSibling(wanted.getFileName() + "-" + number);
        }
        return free;
    }

    /** The file that lists the folders that are open, outside everything that can be damaged with the workspace. */
    static Path list() {
        return folder().resolve("open-folders.txt");
    }

    static List<Path> listed() {
        try {
            return Files.exists(list()) ? Files.readAllLines(list()).stream().filter(line -> !line.isBlank()).map(Path::of).toList()
                    : List.of();
        } catch (IOException | java.nio.file.InvalidPathException unreadable) {
            return List.of();
        }
    }
}

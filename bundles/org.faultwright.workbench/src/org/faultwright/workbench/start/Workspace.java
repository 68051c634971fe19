/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IWorkspace;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.Platform;
import org.eclipse.osgi.service.datalocation.Location;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleException;
import org.osgi.framework.FrameworkUtil;

/** The folder in which a window keeps what is its own: which folders are open, how its views are arranged, what is not saved yet. */
public final class Workspace {
    private static final String RESOURCES = ".metadata/.plugins/org.eclipse.core.resources";
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

    /** Takes a folder beside the usual one. @return false if a workspace was named at the start and cannot be another */
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

    /**
     * Opens the workspace; one that cannot be read is set aside, never deleted, and an empty one is begun.
     *
     * @return where the damaged one is now; absent where nothing was wrong
     */
    static Optional<Path> open() {
        if (isReadable()) {
            return Optional.empty();
        }
        try {
            Bundle resources = FrameworkUtil.getBundle(ResourcesPlugin.class);
            resources.stop(Bundle.STOP_TRANSIENT);
            Path damaged = folder().resolve(RESOURCES);
            Path aside = free(folder().resolve("damaged-workspace"));
            Files.move(damaged, aside);
            resources.start(Bundle.START_TRANSIENT);
            return Optional.of(aside);
        } catch (IOException | BundleException refused) {
            ILog.of(Workspace.class).error("The damaged workspace could not be set aside.", refused);
            return Optional.empty();
        }
    }

    private static boolean isReadable() {
        try {
            IWorkspace workspace = ResourcesPlugin.getWorkspace();
            return workspace.getRoot() != null;
        } catch (IllegalStateException damaged) {
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

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/**
 * Where the account keeps what a program may write without being asked (XDG Base Directory Specification 0.8). None where there is no home: such as for a
 * service.
 */
public final class UserFolders {
    private UserFolders() {
    }

    /** What can be made anew: {@code $XDG_CACHE_HOME/faultwright}, or {@code ~/.cache/faultwright}; on Windows in {@code %LOCALAPPDATA%}. */
    public static Optional<Path> cache() {
        return place("XDG_CACHE_HOME", ".cache");
    }

    /** What is to stay: {@code $XDG_STATE_HOME/faultwright}, or {@code ~/.local/state/faultwright}; on Windows in {@code %LOCALAPPDATA%}. */
    public static Optional<Path> state() {
        return place("XDG_STATE_HOME", ".local/state");
    }

    /** A relative path in such a variable counts as none. */
    private static Optional<Path> place(String variable, String below) {
        try {
            boolean windows = System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
            String set = System.getenv(windows ? "LOCALAPPDATA" : variable);
            Optional<Path> said = Optional.ofNullable(set).filter(words -> !words.isBlank()).map(Path::of).filter(Path::isAbsolute);
            Optional<Path> home = Optional.ofNullable(System.getProperty("user.home")).filter(words -> !words.isBlank()).map(Path::of)
                    .filter(Path::isAbsolute).map(place -> place.resolve(below));
            return said.or(() -> home).map(place -> place.resolve("faultwright"));
        } catch (InvalidPathException none) {
            return Optional.empty();
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.logging.FileHandler;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogManager;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;
import org.faultwright.language.kept.UserFolders;

/**
 * Where in the program something failed, for whoever mends it: in {@code failures.log} of {@link UserFolders#state()}, of at most a megabyte, never on the error
 * output. Java makes one itself when something is logged for the first time; a call in which nothing fails writes no file.
 */
public final class FailureLog {
    private static final int MOST_BYTES = 1_000_000;

    /** Asked for by Java where {@link #useFromNowOn()} was called. */
    public FailureLog() {
        Logger all = LogManager.getLogManager().getLogger("");
        all.setLevel(Level.WARNING);
        all.addHandler(new WhenNeeded());
    }

    /** Whoever calls with a set-up of the log of his own keeps it. */
    static void useFromNowOn() {
        if (System.getProperty("java.util.logging.config.file") == null && System.getProperty("java.util.logging.config.class") == null) {
            System.setProperty("java.util.logging.config.class", FailureLog.class.getName());
        }
    }

    /** What failed outside the rules. */
    static void tell(String what, Throwable failure) {
        System.getLogger(FailureLog.class.getName()).log(System.Logger.Level.ERROR, what, failure);
    }

    static Optional<Path> file() {
        return UserFolders.state().map(place -> place.resolve("failures.log"));
    }

    private static final class WhenNeeded extends Handler {
        /** None yet, or none because nothing can be written there: a log that cannot be had ends no work. */
        private Optional<FileHandler> file = Optional.empty();
        private boolean opened;

        @Override
        public synchronized void publish(LogRecord record) {
            if (isLoggable(record)) {
                if (!opened) {
                    opened = true;
                    file = file().flatMap(WhenNeeded::open);
                }
                file.ifPresent(handler -> handler.publish(record));
            }
        }

        private static Optional<FileHandler> open(Path place) {
            try {
                Files.createDirectories(place.getParent());
                FileHandler handler = new FileHandler(place.toString().replace("%", "%%"), MOST_BYTES, 1, true);
                handler.setFormatter(new SimpleFormatter());
                return Optional.of(handler);
            } catch (IOException | SecurityException unwritable) {
                return Optional.empty();
            }
        }

        @Override
        public synchronized void flush() {
            file.ifPresent(Handler::flush);
        }

        @Override
        public synchronized void close() {
            file.ifPresent(Handler::close);
        }
    }
}

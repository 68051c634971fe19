/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;

/** Brings what the bundles below the window tell {@link System.Logger} into the log of the window: of a rule that failed, where it did. */
final class PlatformLogHandler extends Handler {
    /** Held here: a logger that nobody holds forgets whom it tells. */
    private static final Logger OWN = Logger.getLogger("org.faultwright");

    private PlatformLogHandler() {
    }

    static void useFromNowOn() {
        OWN.setUseParentHandlers(false);
        OWN.addHandler(new PlatformLogHandler());
    }

    @Override
    public void publish(LogRecord told) {
        if (told.getLevel().intValue() >= Level.WARNING.intValue()) {
            int severity = told.getLevel().intValue() >= Level.SEVERE.intValue() ? IStatus.ERROR : IStatus.WARNING;
            ILog.get().log(new Status(severity, PlatformLogHandler.class, told.getMessage(), told.getThrown()));
        }
    }

    @Override
    public void flush() {
        // the window's log writes at once
    }

    @Override
    public void close() {
        // nor is anything open
    }
}

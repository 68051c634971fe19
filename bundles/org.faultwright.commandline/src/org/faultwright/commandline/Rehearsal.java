/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.util.Optional;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.beginning.Beginning;
import org.faultwright.procedure.SourceText;

/**
 * Reads and checks a small text on another core while the call is still being understood. A fresh Java machine takes most of its time to load classes
 * and to link them; what it has linked for this text it need not link for the first file.
 */
final class Rehearsal {
    private static final String NAME = "Rehearsal";

    private Rehearsal() {
    }

    /** Nothing waits for it, and it ends with the call. */
    static void begin() {
        if (Runtime.getRuntime().availableProcessors() > 1) {
            Thread thread = new Thread(Rehearsal::run, NAME);
            thread.setDaemon(true);
            // whatever goes wrong here goes wrong with the first file too, and is told there
            thread.setUncaughtExceptionHandler((rehearsal, failure) -> { });
            thread.start();
        }
    }

    private static void run() {
        ProcedureReader reader = new ProcedureReader((library, fromFile) -> Optional.empty());
        new Checker().check(reader.read(new SourceText(NAME, Beginning.procedure(NAME).text())));
    }
}

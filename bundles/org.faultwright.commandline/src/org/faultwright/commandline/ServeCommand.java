/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.faultwright.language.server.ProcedureLanguageServer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(name = "serve", mixinStandardHelpOptions = true,
        description = {"Speaks the Language Server Protocol on standard input and output, for editors that do too.",
            "A message that cannot be read is told in a sentence on the error output; the next ones are read."},
        footer = {"", "Exit status: 0 when the editor asked for \"shutdown\" and then \"exit\", 1 when it left without \"shutdown\" or the input "
            + "ended without it, 2 when the call was wrong."})
final class ServeCommand implements Callable<Integer> {
    /** Held here: a logger that nobody holds forgets whom it tells. */
    private static final Logger PROTOCOL = Logger.getLogger("org.eclipse.lsp4j");

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        Handler sentences = new Sentences(spec.commandLine().getErr());
        PROTOCOL.setUseParentHandlers(false);
        PROTOCOL.addHandler(sentences);
        try {
            return ProcedureLanguageServer.serve(System.in, System.out);
        } finally {
            PROTOCOL.removeHandler(sentences);
        }
    }

    /** What the protocol's library has to say, in one sentence each. */
    private static final class Sentences extends Handler {
        private final PrintWriter err;

        Sentences(PrintWriter err) {
            this.err = err;
        }

        @Override
        public void publish(LogRecord record) {
            if (record.getLevel().intValue() < Level.WARNING.intValue()) {
                return;
            }
            boolean message = record.getLoggerName() != null && record.getLoggerName().endsWith("StreamMessageProducer")
                    || String.valueOf(record.getMessage()).contains("could not be parsed");
            String why = reason(record.getThrown() == null ? record.getMessage() : record.getThrown().getMessage());
            err.println("faultwright: " + (message ? "A message of the editor cannot be read and is left out (" + why + ")."
                    : "A request of the editor was not carried out (" + why + "); please report it."));
            err.flush();
        }

        /** The first line, without the names of classes before it. */
        private static String reason(String words) {
            String line = String.valueOf(words).strip().split("\\R", 2)[0].replaceFirst("^(?:[\\w$]+\\.)+[\\w$]+: ", "").strip();
            return line.endsWith(".") ? line.substring(0, line.length() - 1) : line;
        }

        @Override
        public void flush() {
            err.flush();
        }

        @Override
        public void close() {
            err.flush();
        }
    }
}

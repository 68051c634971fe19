/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.stream.Stream;

/** What a call of the command gives back; never a stack trace. */
record CommandResult(int status, String out, String err) {
    static CommandResult call(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = Faultwright.run(new PrintWriter(out), new PrintWriter(err), Stream.of(arguments).map(Object::toString).toArray(String[]::new));
        assertFalse((out.toString() + err).contains("\tat "), "a stack trace in " + out + err);
        return new CommandResult(status, out.toString(), err.toString());
    }
}

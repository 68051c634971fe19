/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.util.concurrent.Callable;
import org.faultwright.language.server.ProcedureLanguageServer;
import picocli.CommandLine.Command;

@Command(name = "serve", mixinStandardHelpOptions = true,
        description = "Speaks the Language Server Protocol on standard input and output, for editors that do too.")
final class ServeCommand implements Callable<Integer> {
    @Override
    public Integer call() {
        return ProcedureLanguageServer.serve(System.in, System.out);
    }
}

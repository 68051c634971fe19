/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.checking.OrderReport;
import org.faultwright.procedure.Procedure;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "order", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Holds the order of the steps against the best one by the fault table and the times.")
final class OrderCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders with files ending in .procedure.")
    private List<Path> named;

    @Option(names = "--write", description = "Change the text to the better order; comments stay.")
    private boolean write;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        FileChecker checking = new FileChecker(Optional.empty());
        boolean found = false;
        int procedures = 0;
        for (Path file : ProcedureFiles.below(named)) {
            if (checking.read(file) instanceof Procedure procedure) {
                procedures++;
                if (procedure.problems().isEmpty()) {
                    found |= study(file, procedure, out);
                    out.flush();
                } else {
                    found = true;
                    spec.commandLine().getErr().println("faultwright: " + file + " is not studied, because it has words that cannot be read, the first in line "
                            + procedure.problems().get(0).at().line() + "; see faultwright check.");
                }
            }
        }
        if (procedures == 0) {
            throw new CannotProceed("There are only libraries in " + named.stream().map(Path::toString).collect(Collectors.joining(", "))
                    + "; an order is that of a procedure.");
        }
        return found ? Faultwright.FINDINGS : Faultwright.CLEAN;
    }

    /** @return whether there is a better order that has not been written */
    private boolean study(Path file, Procedure procedure, PrintWriter out) {
        ProposedChange report = OrderReport.of(new Subject(procedure, Optional.empty()));
        out.println(procedure.name() + ": " + report.outcome());
        report.reasons().forEach(line -> out.println("  " + line));
        if (report.change().isEmpty()) {
            return false;
        }
        if (write) {
            TextFiles.replace(file, report.change().get().applied());
            out.println("  " + file + " changed.");
        }
        return !write;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.faultwright.language.beginning.Beginning;
import org.faultwright.language.beginning.UnusableTable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "new", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Writes a new procedure or library with remarks, to be written over. A file that is there is never touched.",
            "  faultwright new FanStill.procedure                     a procedure from nothing",
            "  faultwright new QuayBench.procedure --library          a library from nothing",
            "  faultwright new FanStill.procedure --codes codes.csv   from a table with the columns code and meaning",
            "  faultwright new FanStill.procedure --faults table.csv  from a table with the column fault, perhaps cases and",
            "                                                         remedy, and a column for each step with what it shows"})
final class NewCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "The file to write; it is called like the procedure or library.")
    private Path file;

    @ArgGroup(exclusive = true)
    private From from = new From();

    @Spec
    private CommandSpec spec;

    /** What the text is written from; nothing where none is given. */
    private static final class From {
        @Option(names = "--library", description = "Write a library instead of a procedure.")
        private boolean library;

        @Option(names = "--codes", paramLabel = "TABLE", description = "Begin from a table of codes (CSV).")
        private Path codes;

        @Option(names = "--faults", paramLabel = "TABLE", description = "Begin from a fault table (CSV).")
        private Path faults;
    }

    @Override
    public Integer call() {
        String called = file.getFileName() == null ? "" : file.getFileName().toString();
        Path target = called.endsWith(ProcedureFiles.EXTENSION) ? file : file.resolveSibling(called + ProcedureFiles.EXTENSION);
        String name = target.getFileName().toString().replaceFirst("\\.procedure$", "");
        if (!Beginning.isName(name)) {
            throw new CannotProceed("\"" + name + "\" cannot be the name of a procedure; use letters and digits, "
                    + "a letter first, as in FanStill.procedure.");
        }
        Beginning beginning = beginning(name);
        Texts.create(target, beginning.text());
        beginning.remarks().forEach(remark -> spec.commandLine().getErr().println("faultwright: " + remark));
        spec.commandLine().getOut().println("Written: " + target + ". Next: faultwright check " + target);
        return Faultwright.CLEAN;
    }

    private Beginning beginning(String name) {
        Path table = from.codes != null ? from.codes : from.faults;
        try {
            if (from.codes != null) {
                return Beginning.fromCodes(name, bytes(table));
            }
            if (from.faults != null) {
                return Beginning.fromFaults(name, bytes(table));
            }
        } catch (UnusableTable unusable) {
            throw new CannotProceed(table + ": " + unusable.getMessage());
        }
        return from.library ? Beginning.library(name) : Beginning.procedure(name);
    }

    private static byte[] bytes(Path table) {
        if (!Files.isReadable(table) || Files.isDirectory(table)) {
            throw new CannotProceed("There is no readable file " + table + "; check the spelling and where you are.");
        }
        try {
            return Files.readAllBytes(table);
        } catch (IOException unreadable) {
            throw new CannotProceed("The file " + table + " cannot be read (" + unreadable.getMessage() + ").");
        }
    }
}

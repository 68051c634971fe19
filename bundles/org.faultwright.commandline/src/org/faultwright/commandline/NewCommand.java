/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.faultwright.language.beginning.Beginning;
import org.faultwright.language.beginning.HeadedTable;
import org.faultwright.language.beginning.SheetGrid;
import org.faultwright.language.beginning.TableFile;
import org.faultwright.language.beginning.TableKind;
import org.faultwright.language.beginning.UnusableTable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "new", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Writes a new procedure or library with remarks, to be written over. A file that is there is never touched.",
            "  faultwright new FanStill.procedure",
            "      a procedure from nothing",
            "  faultwright new QuayBench.procedure --library",
            "      a library from nothing",
            "  faultwright new FanStill.procedure --codes codes.csv",
            "      from a table with the columns code and meaning",
            "  faultwright new FanStill.procedure --faults table.csv",
            "      from a table with the column fault, perhaps cases and remedy, and a",
            "      column for each step with what it shows",
            "  faultwright new FanStill.procedure --steps list.xlsx",
            "      from a list with the column step, perhaps kind, time, expects and at",
            "  faultwright new QuayBench.procedure --ranges data.csv",
            "      a library with an instrument, from a table with the columns quantity,",
            "      up to and accuracy, perhaps from, resolution, input",
            "A table is a CSV or XLSX file with a heading over each column."})
final class NewCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "The file to write; it is called like the procedure or library.")
    private Path file;

    @ArgGroup(exclusive = true)
    private From from = new From();

    @Option(names = "--column", paramLabel = "PART=HEADING", description = "Which column holds what, where its heading says something else: "
            + "--column \"code=Error no.\".")
    private Map<String, String> columns = new LinkedHashMap<>();

    @Option(names = "--sheet", paramLabel = "NAME", description = "The sheet of the workbook (default: the first).")
    private Optional<String> sheet = Optional.empty();

    @Option(names = "--heading", paramLabel = "LINE", defaultValue = "1",
            description = "Which of the lines with a word in them holds the headings (default: ${DEFAULT-VALUE}); 0 where none does, then they are \"Column A\" and so on.")
    private int heading;

    @Spec
    private CommandSpec spec;

    /** What the text is written from; nothing where none is given. */
    private static final class From {
        @Option(names = "--library", description = "Write a library instead of a procedure.")
        private boolean library;

        @Option(names = "--codes", paramLabel = "TABLE", description = "Begin from a table of codes (CSV or XLSX).")
        private Path codes;

        @Option(names = "--faults", paramLabel = "TABLE", description = "Begin from a fault table (CSV or XLSX).")
        private Path faults;

        @Option(names = "--steps", paramLabel = "TABLE", description = "Begin from a list of steps (CSV or XLSX).")
        private Path steps;

        @Option(names = "--ranges", paramLabel = "TABLE", description = "Begin a library from an instrument's ranges (CSV or XLSX).")
        private Path ranges;

        private Optional<TableKind> kind() {
            return Optional.ofNullable(codes != null ? TableKind.CODES : faults != null ? TableKind.FAULTS : steps != null ? TableKind.STEPS
                    : ranges != null ? TableKind.RANGES : null);
        }

        private Path table() {
            return codes != null ? codes : faults != null ? faults : steps != null ? steps : ranges;
        }
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
        TextFiles.create(target, beginning.text());
        beginning.remarks().forEach(remark -> spec.commandLine().getErr().println("faultwright: " + remark));
        spec.commandLine().getOut().println("Written: " + target + ". Next: faultwright check " + target);
        return Faultwright.CLEAN;
    }

    private Beginning beginning(String name) {
        Optional<TableKind> kind = from.kind();
        if (kind.isEmpty()) {
            if (!columns.isEmpty() || sheet.isPresent()) {
                throw new CannotProceed("There is no table to take columns from; name one after --codes, --faults, --steps or --ranges.");
            }
            return from.library ? Beginning.library(name) : Beginning.procedure(name);
        }
        Path file = from.table();
        try {
            HeadedTable table = HeadedTable.of(sheet(TableFile.read(bytes(file))), heading);
            return Beginning.from(kind.get(), name, table, kind.get().columns(table, columns));
        } catch (UnusableTable unusable) {
            throw new CannotProceed(file + ": " + unusable.getMessage());
        }
    }

    private SheetGrid sheet(List<SheetGrid> sheets) {
        if (heading < 0) {
            throw new CannotProceed("--heading " + heading + " is no line; the first one is 1, and 0 stands for none.");
        }
        return sheet.map(name -> sheets.stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow(() -> new CannotProceed(
                "There is no sheet \"" + name + "\"; the sheets are " + String.join(", ", sheets.stream().map(one -> '"' + one.name() + '"').toList()) + ".")))
                .orElse(sheets.get(0));
    }

    private static byte[] bytes(Path table) {
        if (!Files.isReadable(table) || Files.isDirectory(table)) {
            throw CannotProceed.missing(table);
        }
        try {
            return Files.readAllBytes(table);
        } catch (IOException unreadable) {
            throw CannotProceed.unreadable(table, unreadable);
        }
    }
}

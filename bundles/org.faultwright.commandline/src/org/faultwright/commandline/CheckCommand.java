/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.RuleSet;
import org.faultwright.analysis.Severity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "check", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Says what is wrong in procedures and libraries, and what to do about it.")
final class CheckCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders with files ending in .procedure.")
    private List<Path> named;

    @Option(names = "--json", description = "Print the findings as JSON.")
    private boolean json;

    @Option(names = "--fail-on", paramLabel = "SEVERITY", defaultValue = "warning",
            description = "Exit with 1 from this severity on: ${COMPLETION-CANDIDATES} (default: warning). "
                    + "Lesser findings are still printed.")
    private Severity least;

    @Option(names = "--as-of", paramLabel = "DATE",
            description = "Hold calibration dates against this day, such as 2026-11-25; without it they are left alone.")
    private LocalDate today;

    @Option(names = "--quick", description = "Leave out what takes longest: what is studied over all faults, and the search for a better order.")
    private boolean quick;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        List<Path> files = ProcedureFiles.below(named);
        Checking checking = new Checking(quick ? RuleSet.quick() : RuleSet.all(), Optional.ofNullable(today));
        PrintWriter out = spec.commandLine().getOut();
        TextFindings text = new TextFindings(out);
        List<Finding> all = new ArrayList<>();
        Stream<Path> each = files.size() > 1 ? files.parallelStream() : files.stream();
        each.map(file -> offered(checking.check(file), checking)).forEachOrdered(found -> {
            all.addAll(found);
            if (!json) {
                text.print(found);
                out.flush();
            }
        });
        if (json) {
            JsonFindings.print(all, files.size(), out);
        } else {
            out.println(summary(files.size(), all));
        }
        boolean heeded = all.stream().anyMatch(finding -> finding.severity().compareTo(least) <= 0);
        return heeded ? Faultwright.FINDINGS : Faultwright.CLEAN;
    }

    /** A fix is offered when it was tried with every rule; a quick check offers none. */
    private List<Finding> offered(Checking.Checked checked, Checking checking) {
        return quick ? checked.findings().stream().map(finding -> finding.withFixes(List.of())).toList()
                : checking.tried(checked).findings();
    }

    private static String summary(int files, List<Finding> findings) {
        return counted(files, "file", "files") + " checked: "
                + (findings.isEmpty() ? "nothing found" : Severity.counted(findings)) + ".";
    }

    static String counted(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }
}

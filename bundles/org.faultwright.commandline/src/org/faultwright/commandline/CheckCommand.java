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
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.kept.KeptResults;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "check", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Says what is wrong in procedures and libraries, and what to do about it. Libraries that are used are checked too.")
final class CheckCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders with files ending in .procedure.")
    private List<Path> named;

    @ArgGroup
    private Form form = new Form();

    /** For other programs, in one form. */
    private static final class Form {
        @Option(names = "--json", description = "Print the findings as JSON.")
        private boolean json;

        @Option(names = "--sarif", description = "Print the findings as a log for tools that read SARIF 2.1.0 (OASIS).")
        private boolean sarif;

        boolean isText() {
            return !json && !sarif;
        }
    }

    @Option(names = "--fail-on", paramLabel = "SEVERITY", defaultValue = "warning",
            description = "Exit with 1 from this severity on: ${COMPLETION-CANDIDATES} (default: warning). "
                    + "Lesser findings are still printed.")
    private Severity least;

    @Option(names = "--as-of", paramLabel = "DATE",
            description = "Hold calibration dates against this day, such as 2026-11-25; without it they are left alone.")
    private LocalDate today;

    @Option(names = "--quick", description = "Leave out what takes longest: what is studied over all faults, and the search for a better order.")
    private boolean quick;

    @Option(names = "--no-cache", description = {"Check everything anew, and keep nothing.",
            "Otherwise what was found is kept in the cache folder of your account and printed again while the text, its libraries and pictures, "
                    + "the rules and this program are the same."})
    private boolean anew;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        List<Path> files = ProcedureFiles.below(named);
        FileChecker checking = new FileChecker(quick ? RuleSet::quick : RuleSet::all, Optional.ofNullable(today));
        PrintWriter out = spec.commandLine().getOut();
        TextFindings text = new TextFindings(out);
        List<Finding> all = new ArrayList<>();
        Set<Path> used = new TreeSet<>();
        Consumer<List<Finding>> print = found -> {
            all.addAll(found);
            if (form.isText()) {
                text.print(found);
                out.flush();
            }
        };
        KeptResults kept = anew ? KeptResults.none() : checking.kept(quick ? "quick" : "every rule, with fixes that were tried");
        Function<Path, KeptResults.Answer> check = file -> checking.check(file, kept, checked -> offered(checked, checking));
        ParallelFiles.each(files, check, answer -> {
            answer.libraries().forEach(library -> used.add(place(Path.of(library))));
            print.accept(answer.findings());
        });
        files.forEach(file -> used.remove(place(file)));
        List<Path> libraries = used.stream().map(CheckCommand::shortest).toList();
        ParallelFiles.each(libraries, check, answer -> print.accept(answer.findings()));
        kept.sweep();
        if (form.sarif) {
            SarifFindings.print(all, out);
        } else if (form.json) {
            JsonFindings.print(all, files.size() + libraries.size(), out);
        } else {
            out.println(summary(files.size(), libraries.size(), all));
        }
        boolean heeded = all.stream().anyMatch(finding -> finding.severity().compareTo(least) <= 0);
        return heeded ? Faultwright.FINDINGS : Faultwright.CLEAN;
    }

    /** A fix is offered when it was tried with every rule; a quick check offers none. */
    private FileChecker.Checked offered(FileChecker.Checked checked, FileChecker checking) {
        return quick ? new FileChecker.Checked(checked.file(), checked.subject(),
                checked.findings().stream().map(finding -> finding.withFixes(List.of())).toList()) : checking.tried(checked);
    }

    private static Path place(Path file) {
        return file.toAbsolutePath().normalize();
    }

    /** As seen from here where it lies below, else whole. */
    private static Path shortest(Path file) {
        Path here = Path.of("").toAbsolutePath();
        return file.startsWith(here) ? here.relativize(file) : file;
    }

    private static String summary(int files, int libraries, List<Finding> findings) {
        return Phrases.counted(files, "file", "files") + " checked"
                + (libraries == 0 ? "" : ", and " + Phrases.counted(libraries, "library", "libraries") + " that " + (files == 1 ? "it uses" : "they use")) + ": "
                + (findings.isEmpty() ? "nothing found" : Severity.counted(findings)) + ".";
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.faultwright.analysis.Phrases;
import org.faultwright.language.TextFormatter;
import org.faultwright.procedure.Document;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "format", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Lays procedures out evenly; never changes what they say, and keeps every comment.")
final class FormatCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders with files ending in .procedure.")
    private List<Path> named;

    @Option(names = "--dry-run", description = "Only say which files would change; exit with 1 if any would.")
    private boolean look;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        FileChecker checking = new FileChecker(java.util.Optional.empty());
        int changed = 0;
        int unreadable = 0;
        for (Path file : ProcedureFiles.below(named)) {
            Document document = checking.read(file);
            if (!document.problems().isEmpty()) {
                unreadable++;
                spec.commandLine().getErr().println("faultwright: " + file
                        + " cannot be read in full and is left as it is; see faultwright check.");
                continue;
            }
            String before = document.source().content();
            String after = TextFormatter.format(before);
            if (!after.equals(before)) {
                changed++;
                if (!look) {
                    TextFiles.replace(file, after);
                }
                out.println((look ? "would change " : "changed ") + file);
            }
        }
        out.println(Phrases.counted(changed, "file", "files") + (look ? " would change." : " changed."));
        return unreadable > 0 || look && changed > 0 ? Faultwright.FINDINGS : Faultwright.CLEAN;
    }
}

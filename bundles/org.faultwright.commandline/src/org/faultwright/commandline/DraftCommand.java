/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.draft.TriedDraft;
import org.faultwright.procedure.Procedure;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "draft", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Writes a first draft of the steps from the fault table of a procedure, in the order of the least expected time.",
            "It is checked in full first, and nothing is written that has an error. Its words, times and limits are yours to complete."})
final class DraftCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "A procedure with faults that say what they show.")
    private Path file;

    @Option(names = "--into", paramLabel = "FILE", description = "Write the draft into a new file instead of printing it.")
    private Path into;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        if (!Files.isReadable(file) || Files.isDirectory(file)) {
            throw CannotProceed.missing(file);
        }
        if (into != null && Files.exists(into)) {
            throw new CannotProceed(into + " is there already; name a new file after --into.");
        }
        FileChecker checking = new FileChecker(Optional.empty());
        if (!(checking.read(file) instanceof Procedure procedure)) {
            throw new CannotProceed(file + " is a library; a draft is made from a procedure with faults.");
        }
        TriedDraft.Draft draft = checking.draft(procedure);
        draft.remarks().forEach(remark -> spec.commandLine().getErr().println("faultwright: " + remark));
        if (draft.text().isEmpty()) {
            return Faultwright.FINDINGS;
        }
        PrintWriter out = spec.commandLine().getOut();
        if (into == null) {
            out.print(draft.text().get());
        } else {
            TextFiles.create(into, Fix.inLinesAs(procedure.source().content(), draft.text().get()));
            out.println("The draft is in " + into + ".");
        }
        return Faultwright.CLEAN;
    }
}

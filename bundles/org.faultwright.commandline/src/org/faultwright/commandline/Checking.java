/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Checker;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.FixRun;
import org.faultwright.analysis.FixTrial;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleSet;
import org.faultwright.analysis.faults.TriedDraft;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/** Reads files and runs the rules over them; shared by the commands. */
final class Checking {
    /** One file with what was found in it. */
    record Checked(Path file, Document document, List<Finding> findings) {
    }

    /** How many fixes of one file a check tries; "faultwright fix" tries all. */
    private static final int MOST_TRIED = 40;

    private final ProcedureReader reader = ProcedureReader.overFiles();
    private final Checker checker;

    Checking(Optional<LocalDate> today) {
        this(RuleSet.all(), today);
    }

    Checking(List<Rule> rules, Optional<LocalDate> today) {
        checker = new Checker(rules, today);
    }

    Document read(Path file) {
        try {
            return reader.read(file);
        } catch (IOException unreadable) {
            throw new CannotProceed("The file " + file + " cannot be read (" + unreadable.getMessage() + ").");
        }
    }

    /** Tries fixes with every rule that is run here, over the files as they are on disk. */
    FixTrial trial() {
        return new FixTrial(reader::read, checker);
    }

    /** Applies fixes to a text one after the other, each tried with every rule that is run here. */
    FixRun fixing(Document document) {
        return new FixRun(reader::read, checker, document);
    }

    /** A first draft of the steps, checked with every rule that is run here. */
    TriedDraft.Draft draft(Procedure procedure) {
        return TriedDraft.of(procedure, reader::read, checker);
    }

    /** Everything found in a text, in the libraries it uses as well. */
    List<Finding> all(Document document) {
        return checker.check(document);
    }

    /** A text that is not on disk, or not yet. */
    Document read(SourceText text) {
        return reader.read(text);
    }

    /** The same findings with those fixes alone that were tried and hold. */
    Checked tried(Checked checked) {
        boolean any = checked.findings().stream().anyMatch(finding -> !finding.fixes().isEmpty());
        return any ? new Checked(checked.file(), checked.document(), trial().tried(checked.findings(), MOST_TRIED)) : checked;
    }

    /** The findings of the file itself; what is wrong in a library it uses is reported with that library. */
    Checked check(Path file) {
        Document document = read(file);
        List<Finding> own = checker.check(document).stream()
                .filter(finding -> finding.at().source().name().equals(document.source().name())).toList();
        return new Checked(file, document, own);
    }
}

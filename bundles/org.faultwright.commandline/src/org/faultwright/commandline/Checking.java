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
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;

/** Reads files and runs the rules over them; shared by the commands. */
final class Checking {
    /** One file with what was found in it. */
    record Checked(Path file, Document document, List<Finding> findings) {
    }

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

    /** The findings of the file itself; what is wrong in a library it uses is reported with that library. */
    Checked check(Path file) {
        Document document = read(file);
        List<Finding> own = checker.check(document).stream()
                .filter(finding -> finding.at().source().name().equals(document.source().name())).toList();
        return new Checked(file, document, own);
    }
}

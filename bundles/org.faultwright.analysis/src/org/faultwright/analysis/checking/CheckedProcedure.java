/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Procedure;

/** A procedure with all that every rule found in it and in the libraries it uses. {@link FullCheck} makes it. */
public final class CheckedProcedure {
    private final Procedure procedure;
    private final List<Finding> findings;
    private final List<Finding> inLibraries;
    private final Subject subject;

    CheckedProcedure(Procedure procedure, List<Finding> findings, List<Finding> inLibraries, Subject subject) {
        this.procedure = procedure;
        this.findings = findings;
        this.inLibraries = inLibraries;
        this.subject = subject;
    }

    public Procedure procedure() {
        return procedure;
    }

    /** With what the rules worked out, such as the walks of the faults. Only one thread may use it at a time. */
    public Subject subject() {
        return subject;
    }

    /** What was found in the procedure's own text, in reading order. */
    public List<Finding> findings() {
        return findings;
    }

    /** What was found in the texts of its libraries, and of theirs. */
    public List<Finding> inLibraries() {
        return inLibraries;
    }

    /** The errors that stand in its own text, then those in its libraries. */
    public List<Finding> errors() {
        return Stream.concat(findings.stream(), inLibraries.stream()).filter(finding -> finding.severity() == Severity.ERROR).toList();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.compare.MatchedProcedures;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;

/**
 * A folder of procedures that are published together.
 *
 * @param title      what to call it: the folder's or the library's name
 * @param procedures in the order they are listed
 * @param files      names of the files that stand beside the page, so that it links only to what is there
 * @param libraries  the libraries of the folder itself, with what was found in them
 * @param since      the procedures of the last release, where they are known
 * @param asOf       the day that due dates and the age of sources are held against, where one was given
 * @param sourceAge  after how many months a source is old
 * @param leftOut    procedures that were to be published and were refused
 * @param made       by what and when the pages are made, where they are to say so
 */
public record ProcedureFolder(String title, List<Publication> procedures, Set<String> files,
        List<CheckedLibrary> libraries, Optional<EarlierRelease> since, Optional<LocalDate> asOf,
        int sourceAge, List<LeftOut> leftOut, Optional<Imprint> made) {
    /** In months: from then on a source is old, where nothing else is said. */
    public static final int FIVE_YEARS = 60;

    /** A library with its own findings. */
    public record CheckedLibrary(Library library, List<Finding> findings) {
    }

    /** A procedure that is not published. @param why such as {@code 2 open errors, the first at line 7: …} */
    public record LeftOut(Procedure procedure, String why) {
    }

    /** @param program such as {@code Faultwright 0.1.0} */
    public record Imprint(String program, LocalDate on) {
    }

    /** Where nothing was left out. */
    public ProcedureFolder(String title, List<Publication> procedures, Set<String> files, List<CheckedLibrary> libraries, Optional<EarlierRelease> since,
            Optional<LocalDate> asOf, int sourceAge) {
        this(title, procedures, files, libraries, since, asOf, sourceAge, List.of(), Optional.empty());
    }

    public ProcedureFolder(String title, List<Publication> procedures, Set<String> files) {
        this(title, procedures, files, List.of(), Optional.empty(), Optional.empty(), FIVE_YEARS);
    }

    /** The same with other files beside the page. */
    public ProcedureFolder with(Set<String> there) {
        return new ProcedureFolder(title, procedures, Set.copyOf(there), libraries, since, asOf, sourceAge, leftOut, made);
    }

    /** The same, saying what it does not have and when it was made. */
    public ProcedureFolder without(List<LeftOut> refused, Imprint by) {
        return new ProcedureFolder(title, procedures, files, libraries, since, asOf, sourceAge, List.copyOf(refused), Optional.of(by));
    }

    /** Which procedure of the last release each of today is, those left out among them; empty where no release is known. */
    public Optional<MatchedProcedures> compared() {
        return since.map(release -> MatchedProcedures.of(release.procedures(), Stream.concat(procedures.stream().map(Publication::procedure),
                leftOut.stream().map(LeftOut::procedure)).toList()));
    }
}

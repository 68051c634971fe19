/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.page.PlainText;

/** A procedure that may be published, with what the rules said about it. */
public final class Publication {
    private static final int SHORT_DIGEST = 12;

    private final CheckedProcedure checked;
    private final String digest;
    private final Map<Class<?>, Object> shared = new ConcurrentHashMap<>();

    private Publication(CheckedProcedure checked) {
        this.checked = checked;
        this.digest = ContentDigest.of(checked.procedure());
    }

    /** @throws PublishingRefused if there are open errors, in the procedure or in a library it uses, and drafts are refused */
    public static Publication of(CheckedProcedure checked, Drafts drafts) throws PublishingRefused {
        Publication publication = new Publication(checked);
        List<Finding> errors = publication.errors();
        if (!errors.isEmpty() && drafts == Drafts.REFUSED) {
            Finding first = errors.get(0);
            int inLibraries = (int) errors.stream().filter(error -> !publication.isOwn(error)).count();
            throw new PublishingRefused(PlainText.line(checked.procedure().name().text()) + " has " + errors.size()
                    + (errors.size() == 1 ? " error" : " errors")
                    + (inLibraries == 0 ? "" : inLibraries == errors.size() ? " in its libraries" : ", " + inLibraries + " of them in its libraries")
                    + ", the first at " + first.at() + " (" + first.rule() + "): remove them, or ask for a draft.", new ProcedureFolder.LeftOut(checked.procedure(), (errors.size() == 1 ? "1 open error" : errors.size()
                            + " open errors") + ", the first at " + publication.place(first) + ": " + first.message()));
        }
        return publication;
    }

    public Procedure procedure() {
        return checked.procedure();
    }

    /** The procedure with what the rules worked out. Only one thread may use it at a time. */
    public Subject subject() {
        return checked.subject();
    }

    /** What several forms need of one publication, made when it is asked for first. */
    public <T> T shared(Class<T> what, Function<Publication, T> make) {
        return what.cast(shared.computeIfAbsent(what, first -> make.apply(this)));
    }

    /** What was found in the procedure's own text, and behind it the errors of its libraries: their other findings are theirs to mend. */
    public List<Finding> findings() {
        return Stream.concat(checked.findings().stream(), errors().stream().filter(error -> !isOwn(error))).toList();
    }

    public List<Finding> of(Severity severity) {
        return findings().stream().filter(finding -> finding.severity() == severity).toList();
    }

    /** Every open error, of the procedure first, then of its libraries. */
    public List<Finding> errors() {
        return checked.errors();
    }

    private boolean isOwn(Finding finding) {
        return finding.at().source() == procedure().name().at().source();
    }

    /** Where a finding stands: such as {@code line 11}, with the name of the file where that is not the procedure's own. */
    public String place(Finding finding) {
        return isOwn(finding) ? "line " + finding.at().line() : placeInFile(finding);
    }

    /** Such as {@code line 11 of House.procedure}: without its folder, so that a page is the same wherever the text lies. */
    public static String placeInFile(Finding finding) {
        return "line " + finding.at().line() + " of " + finding.at().source().fileName();
    }

    /** Whether errors are open, so that every page must say draft. */
    public boolean hasErrors() {
        return !errors().isEmpty();
    }

    public Revision.Status status() {
        return procedure().revision().map(Revision::status).orElse(Revision.Status.DRAFT);
    }

    public Optional<LocalDate> dated() {
        return procedure().revision().flatMap(Revision::dated);
    }

    /** The SHA-256 of the text and its libraries, 64 hexadecimal digits. */
    public String digest() {
        return digest;
    }

    public String shortDigest() {
        return digest.substring(0, SHORT_DIGEST);
    }

    /** The title, or the name where there is none; on one line. */
    public String title() {
        String title = PlainText.line(procedure().title());
        return title.isEmpty() ? PlainText.line(procedure().name().text()) : title;
    }

    /** Such as {@code Revision 4, draft}. */
    public String revision() {
        return procedure().revision().map(revision -> "Revision " + revision.number() + ", " + words(revision.status()))
                .orElse("No revision, draft");
    }

    private static String words(Revision.Status status) {
        return status.name().toLowerCase(Locale.ROOT);
    }
}

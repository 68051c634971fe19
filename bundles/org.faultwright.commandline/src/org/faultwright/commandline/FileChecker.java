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
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.FixRun;
import org.faultwright.analysis.checking.FixTrial;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.analysis.draft.TriedDraft;
import org.faultwright.language.FileLibraryFinder;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.kept.KeptResults;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/** Reads files and runs the rules over them; shared by the commands. */
final class FileChecker {
    /**
     * One file with what was found in it.
     *
     * @param subject its document, with what rules have computed of it
     */
    record Checked(Path file, Subject subject, List<Finding> findings) {
        Document document() {
            return subject.document();
        }
    }

    /** How many fixes of one file a check tries; "faultwright fix" tries all. */
    private static final int MOST_TRIED = 40;

    private final FileLibraryFinder finder = new FileLibraryFinder();
    private final Supplier<List<Rule>> rules;
    private final Optional<LocalDate> today;
    private Working working;

    /** What reads and checks, made when the first text is read: the grammar takes longer to load than what is kept takes to print. */
    private record Working(ProcedureReader reader, Checker checker) {
    }

    private synchronized Working working() {
        if (working == null) {
            working = new Working(new ProcedureReader(finder), new Checker(rules.get(), today));
        }
        return working;
    }

    FileChecker(Optional<LocalDate> today) {
        this(RuleSet::all, today);
    }

    FileChecker(Supplier<List<Rule>> rules, Optional<LocalDate> today) {
        this.rules = rules;
        this.today = today;
    }

    Document read(Path file) {
        try {
            return working().reader().read(file);
        } catch (IOException unreadable) {
            throw CannotProceed.unreadable(file, unreadable);
        }
    }

    /** What was found the last time. @param way what is run, in a word */
    KeptResults kept(String way) {
        return KeptResults.usual(FileChecker.class, way, today, finder);
    }

    /** What is found in the file itself, as {@link #check} finds it, or what was found before where nothing has changed since. */
    KeptResults.Answer check(Path file, KeptResults kept, UnaryOperator<Checked> then) {
        SourceText text = text(file);
        return kept.of(text).orElseGet(() -> kept.anew(text, working().reader(), document -> then.apply(checked(file, document)).findings()));
    }

    private static SourceText text(Path file) {
        try {
            return ProcedureReader.text(file);
        } catch (IOException unreadable) {
            throw CannotProceed.unreadable(file, unreadable);
        }
    }

    /** Tries fixes with every rule that is run here, over the files as they are on disk. */
    FixTrial trial() {
        return new FixTrial(working().reader()::read, working().checker());
    }

    /** Applies fixes to a text one after the other, each tried with every rule that is run here. */
    FixRun fixing(Document document) {
        return new FixRun(working().reader()::read, working().checker(), document);
    }

    /** A first draft of the steps, checked with every rule that is run here. */
    TriedDraft.Draft draft(Procedure procedure) {
        return TriedDraft.of(procedure, working().reader()::read, working().checker());
    }

    /** Everything found in a text, in the libraries it uses as well. */
    List<Finding> all(Document document) {
        return working().checker().check(document);
    }

    /** A text that is not on disk, or not yet. */
    Document read(SourceText text) {
        return working().reader().read(text);
    }

    /** The same findings with those fixes alone that were tried and hold. */
    Checked tried(Checked checked) {
        boolean any = checked.findings().stream().anyMatch(finding -> !finding.fixes().isEmpty());
        return any ? new Checked(checked.file(), checked.subject(), trial().of(checked.subject()).tried(checked.findings(), MOST_TRIED)) : checked;
    }

    /** The findings of the file itself; what is wrong in a library it uses is reported with that library. */
    Checked check(Path file) {
        return checked(file, read(file));
    }

    private Checked checked(Path file, Document document) {
        Subject subject = working().checker().subject(document);
        return new Checked(file, subject, working().checker().check(subject).stream()
                .filter(finding -> finding.at().source().name().equals(document.source().name())).toList());
    }
}

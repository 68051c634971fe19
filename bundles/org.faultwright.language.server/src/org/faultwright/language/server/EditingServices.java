/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.checking.Assessment;
import org.faultwright.analysis.checking.ChangingCheck;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.FixRun;
import org.faultwright.analysis.checking.FixTrial;
import org.faultwright.analysis.checking.FullCheck;
import org.faultwright.analysis.checking.OrderReport;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.analysis.draft.DraftReport;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.language.FileLibraryFinder;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.kept.KeptResults;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceText;

/**
 * Keeps the texts that are being edited and reads and checks them at each change. The workbench asks
 * this object directly, the language server passes its answers on; a library that is open for editing
 * is used as it stands in the editor. May be shared between threads.
 */
public final class EditingServices {
    /** Of more texts than these, nobody writes in turn. */
    private static final int MOST_WRITTEN = 32;
    /** What a cell of the fault table can get wrong, whatever else is still to be written. */
    private static final Set<String> OF_THE_TABLE = Set.of("fault-signature-outcome-unknown", "signature-shares-not-100", "step-shown-twice",
            "duplicate-name", "negative-amount");

    private final Map<String, SourceText> beingEdited = new ConcurrentHashMap<>();
    /** What a text was read from, and what was checked of it, is larger than all else that is known of it. */
    private final Map<String, ProcedureReader.Changing> changing = ofTheLastWritten();
    private final Map<String, ChangingCheck> checks = ofTheLastWritten();
    private final Map<String, TypingCalm> calm = new ConcurrentHashMap<>();
    private final FileLibraryFinder onDisk = new FileLibraryFinder();
    private final ProcedureReader reader = new ProcedureReader(this::library);
    private final Checker quick;
    private final Checker forAPause;
    private final Checker every;
    private final List<Rule> ofTheTable = RuleSet.quick().stream().filter(rule -> OF_THE_TABLE.contains(rule.header().id())).toList();
    private final FullCheck undated = new FullCheck(Optional.empty());
    private final Optional<LocalDate> today;
    private KeptResults kept;

    public EditingServices() {
        this(Optional.empty());
    }

    /** @param today the day that calibration dates are held against; absent leaves them alone */
    public EditingServices(Optional<LocalDate> today) {
        this.today = today;
        quick = new Checker(RuleSet.quick(), today);
        forAPause = new Checker(RuleSet.forAPause(), today);
        every = new Checker(RuleSet.all(), today);
    }

    /**
     * Reads and checks a text as it now stands in the editor, with the rules that are quick enough for every key. What is found
     * outside the declaration or step that is being written, and was not there before, waits for a pause.
     *
     * @param file the path of its file, by which libraries are found
     */
    public OpenText update(String file, String content) {
        SourceText source = new SourceText(file, content);
        beingEdited.put(key(file), source);
        Document document = changing.computeIfAbsent(key(file), f -> reader.changing()).read(source);
        Subject subject = quick.subject(document);
        Assessment assessed = checks.computeIfAbsent(key(file), f -> quick.changing()).assess(subject);
        List<Finding> found = ofFile(source, assessed.findings());
        List<Finding> told = calm.computeIfAbsent(key(file), f -> new TypingCalm()).whileWriting(document, found, ofFile(source, assessed.waiting()));
        return new OpenText(document, subject, told, found, false);
    }

    private static <T> Map<String, T> ofTheLastWritten() {
        return Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<String, T> eldest) {
                return size() > MOST_WRITTEN;
            }
        });
    }

    /** Reads a text with the libraries as they stand now, without checking or keeping it. */
    public Document document(SourceText source) {
        return reader.read(source);
    }

    /** Reads a text and checks it with every rule, without keeping it. */
    public OpenText read(SourceText source) {
        return withEveryRule(readQuickly(source));
    }

    /**
     * What every rule found in a text of a folder the last time, in this start of the program or an earlier one; absent where anything that it
     * depends on has changed since.
     */
    public Optional<List<Finding>> kept(SourceText source) {
        return kept().of(source).map(KeptResults.Answer::findings);
    }

    /** Reads a text of a folder and checks it with every rule, and keeps what is found. */
    public List<Finding> anew(SourceText source) {
        return kept().anew(source, reader, document -> withEveryRule(quickly(document)).findings()).findings();
    }

    /** Makes room where much was kept; for when a folder has been checked. */
    public void sweep() {
        kept().sweep();
    }

    private synchronized KeptResults kept() {
        if (kept == null) {
            kept = KeptResults.usual(EditingServices.class, "every rule", today, this::library);
        }
        return kept;
    }

    /** The same text with what the rules find that take longer; for a pause in writing. */
    public OpenText withEveryRule(OpenText text) {
        if (text.isFull()) {
            return text;
        }
        synchronized (text.subject()) {
            List<Finding> more = ofFile(text.source(), forAPause.check(text.subject()));
            List<Finding> all = Stream.concat(text.found().stream(), more.stream()).sorted(Checker.READING_ORDER).toList();
            Optional.ofNullable(calm.get(key(text.source().name()))).ifPresent(held -> held.pause(text.source(), all));
            return new OpenText(text.document(), text.subject(), all, all, true);
        }
    }

    /**
     * Those fixes of a finding that were tried: with any of them the finding is gone, and nothing new is found in a full check.
     * This takes one full check for each fix, so ask for it when a fix is wanted.
     */
    public List<Fix> fixes(Finding finding) {
        return finding.fixes().isEmpty() ? List.of()
                : new FixTrial(reader::read, every).holding(finding, every.check(reader.read(finding.at().source())));
    }

    /** What a full check would find in a text after a change, and does not find in it as it stands. This takes two full checks. */
    public List<Finding> added(Fix change) {
        SourceText before = change.edits().get(0).at().source();
        return new FixTrial(reader::read, every).added(change, every.check(reader.read(before)));
    }

    // ---- the fault table

    /** The fault table of a text with what was found in it so far; absent for a library. */
    public Optional<FaultSheet> faultSheet(OpenText text) {
        if (!text.isFull()) {
            // whoever studies the text in a pause holds it for longer than a table may take to be seen
            return FaultSheet.of(new Subject(text.document(), Optional.empty()), text.findings());
        }
        synchronized (text.subject()) {
            return FaultSheet.of(text.subject(), text.findings());
        }
    }

    /**
     * Why a change of the fault table must not be written: the changed text cannot be read there, or says what no step shows. That a table is not
     * finished is no reason. Absent where it may be written.
     *
     * @param text as it stands, to which the change belongs
     */
    public Optional<String> against(OpenText text, Fix change) {
        Document changed = reader.read(new SourceText(text.source().name(), change.applied()));
        Set<String> unread = text.document().problems().stream().map(ReadingProblem::message).collect(Collectors.toSet());
        if (changed.problems().size() > text.document().problems().size()) {
            return changed.problems().stream().map(ReadingProblem::message).filter(message -> !unread.contains(message)).findFirst()
                    .or(() -> Optional.of("The changed text could not be read."));
        }
        Checker checker = new Checker(ofTheTable, Optional.empty());
        List<String> before = checker.check(text.document()).stream().map(Finding::message).toList();
        return checker.check(changed).stream().filter(finding -> finding.severity() == Severity.ERROR).map(Finding::message)
                .filter(message -> !before.contains(message)).findFirst();
    }

    /** A first draft of the steps, tried with every rule. This takes several full checks. */
    public ProposedChange draft(Procedure procedure) {
        return DraftReport.of(procedure, reader::read, every);
    }

    /** A better order of the steps, tried with every rule. This takes several full checks. */
    public ProposedChange betterOrder(OpenText procedure) {
        synchronized (procedure.subject()) {
            return OrderReport.of(procedure.subject());
        }
    }

    /**
     * A procedure with what every rule finds in it and in its libraries, for a card or an export. It is held against no day: what is printed
     * does not depend on when.
     */
    public CheckedProcedure forPublishing(Procedure procedure) {
        return undated.check(procedure);
    }

    /** The same with what was found so far, for a card that is looked at while it is written: it waits for no rule. */
    public CheckedProcedure forLooking(OpenText text, Procedure procedure) {
        return undated.soFar(procedure, text.found());
    }

    /** Reads a text and checks nothing, for whoever only wants to know what it names. */
    public OpenText unchecked(SourceText source) {
        Document document = reader.read(source);
        return new OpenText(document, quick.subject(document), List.of(), List.of(), false);
    }

    /** For applying fixes to a text one after the other, each tried on the text that the one before it left. */
    public FixRun fixing(SourceText source) {
        return new FixRun(reader::read, every, reader.read(source));
    }

    /** Reads a text and checks it with the quick rules, without keeping it. */
    OpenText readQuickly(SourceText source) {
        return quickly(reader.read(source));
    }

    private OpenText quickly(Document document) {
        Subject subject = quick.subject(document);
        List<Finding> found = ofFile(document.source(), quick.check(subject));
        return new OpenText(document, subject, found, found, false);
    }

    private static List<Finding> ofFile(SourceText source, List<Finding> findings) {
        return findings.stream().filter(finding -> finding.at().source().name().equals(source.name())).toList();
    }

    /** The text is no longer being edited; from now on its file counts. */
    public void close(String file) {
        beingEdited.remove(key(file));
        changing.remove(key(file));
        checks.remove(key(file));
        calm.remove(key(file));
    }

    private Optional<SourceText> library(String name, String fromFile) {
        Optional<Path> file = onDisk.file(name, fromFile);
        return file.map(path -> beingEdited.get(key(path.toString()))).or(() -> onDisk.find(name, fromFile));
    }

    private static String key(String file) {
        return Path.of(file).toAbsolutePath().normalize().toString();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.faultwright.analysis.Assessment;
import org.faultwright.analysis.ChangingCheck;
import org.faultwright.analysis.CheckedProcedure;
import org.faultwright.analysis.Checker;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.FixTrial;
import org.faultwright.analysis.FullCheck;
import org.faultwright.analysis.RuleSet;
import org.faultwright.analysis.Subject;
import org.faultwright.language.FileLibraryFinder;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/**
 * Keeps the texts that are being edited and reads and checks them at each change. The workbench asks
 * this object directly, the language server passes its answers on; a library that is open for editing
 * is used as it stands in the editor. May be shared between threads.
 */
public final class EditingServices {
    private final Map<String, SourceText> beingEdited = new ConcurrentHashMap<>();
    private final Map<String, ProcedureReader.Changing> changing = new ConcurrentHashMap<>();
    private final Map<String, ChangingCheck> checks = new ConcurrentHashMap<>();
    private final Map<String, Calm> calm = new ConcurrentHashMap<>();
    private final FileLibraryFinder onDisk = new FileLibraryFinder();
    private final ProcedureReader reader = new ProcedureReader(this::library);
    private final Checker quick;
    private final Checker forAPause;
    private final Checker every;
    private final FullCheck undated = new FullCheck(Optional.empty());

    public EditingServices() {
        this(Optional.empty());
    }

    /** @param today the day that calibration dates are held against; absent leaves them alone */
    public EditingServices(Optional<LocalDate> today) {
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
        List<Finding> told = calm.computeIfAbsent(key(file), f -> new Calm()).whileWriting(document, found, ofFile(source, assessed.waiting()));
        return new OpenText(document, subject, told, found, false);
    }

    /** Reads a text and checks it with every rule, without keeping it. */
    public OpenText read(SourceText source) {
        return withEveryRule(readQuickly(source));
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

    /**
     * A procedure with what every rule finds in it and in its libraries, for a card or an export. It is held against no day: what is printed
     * does not depend on when.
     */
    public CheckedProcedure forPublishing(Procedure procedure) {
        return undated.check(procedure);
    }

    /** Reads a text and checks it with the quick rules, without keeping it. */
    OpenText readQuickly(SourceText source) {
        Document document = reader.read(source);
        Subject subject = quick.subject(document);
        List<Finding> found = ofFile(source, quick.check(subject));
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

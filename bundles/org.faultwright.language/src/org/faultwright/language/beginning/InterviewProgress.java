/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.draft.TriedDraft;
import org.faultwright.language.TextFormatter;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/**
 * How far the answers of an interview reach.
 *
 * @param text     the text that they make
 * @param isWhole  whether it is a draft that a full check finds no error in
 * @param remarks  what the author should know, or why it is not whole yet, each a sentence
 * @param findings of the text, where it is whole
 */
public record InterviewProgress(String text, boolean isWhole, List<String> remarks, List<Finding> findings) {
    /** How the draft says which steps nothing leads to. */
    private static final String NOT_NEEDED = "The draft does not need ";

    public InterviewProgress {
        remarks = List.copyOf(remarks);
        findings = List.copyOf(findings);
    }

    /** Tries a draft from the answers; takes up to a second or two. */
    public static InterviewProgress of(Interview asked) {
        String text = InterviewText.text(asked, Set.of());
        if (asked.causes().isEmpty()) {
            return new InterviewProgress(text, false, List.of("What can it be? A draft needs one fault at least."), List.of());
        }
        List<String> missing = missing(asked);
        if (!missing.isEmpty()) {
            return new InterviewProgress(text, false, missing, List.of());
        }
        TriedDraft.Draft draft = draft(asked.name(), text);
        Set<String> spare = InterviewText.ACTS.stream().filter(act -> draft.remarks().stream().anyMatch(remark -> remark.startsWith(NOT_NEEDED)
                && remark.matches(".*\\b" + act + "\\b.*"))).collect(Collectors.toSet());
        TriedDraft.Draft leaner = draft.text().isEmpty() || spare.isEmpty() ? draft : draft(asked.name(), InterviewText.text(asked, spare));
        TriedDraft.Draft taken = leaner.text().isPresent() ? leaner : draft;
        if (taken.text().isEmpty()) {
            return new InterviewProgress(text, false, taken.remarks(), List.of());
        }
        return checked(asked.name(), TextFormatter.format(taken.text().get()), taken.remarks());
    }

    private static TriedDraft.Draft draft(String name, String text) {
        Procedure read = (Procedure) Beginning.READER.read(new SourceText(name + ".procedure", text));
        return TriedDraft.of(read, Beginning.READER::read, new Checker());
    }

    /** Checks the text of a library. */
    public static InterviewProgress of(BenchInterview asked) {
        return checked(asked.name(), asked.text(), List.of());
    }

    private static InterviewProgress checked(String name, String text, List<String> remarks) {
        List<Finding> found = new Checker().check(Beginning.READER.read(new SourceText(name + ".procedure", text)));
        List<String> errors = found.stream().filter(finding -> finding.severity() == Severity.ERROR)
                .map(finding -> "Line " + finding.at().line() + ": " + finding.message()).distinct().toList();
        return new InterviewProgress(text, errors.isEmpty(), errors.isEmpty() ? remarks : errors, found);
    }

    /** What the check would find as well, in words of the questions. */
    private static List<String> missing(Interview asked) {
        List<FaultSign.Reading> readings = asked.signs().stream().filter(FaultSign.Reading.class::isInstance).map(FaultSign.Reading.class::cast).toList();
        Stream<String> limits = readings.stream().flatMap(reading -> LimitWords.problem(reading.quantity(), reading.expects(), asked.meter().ranges())
                .map(problem -> "\"" + reading.words() + "\": " + problem).stream());
        Stream<String> voltages = Stream.concat(asked.store().map(Interview.Store::most).stream(),
                readings.stream().filter(reading -> reading.quantity().endsWith("voltage")).map(FaultSign.Reading::most))
                .filter(most -> !most.isBlank() && InterviewText.voltage(most).isEmpty())
                .map(most -> "\"" + most.strip() + "\" is no voltage; write the highest one that is met there, such as 400 V.");
        return Stream.of(limits, voltages, readings.stream().filter(reading -> reading.isOn() && reading.isOpen() && !asked.dangers().containsKey(Danger.SHOCK)
                        && (InterviewText.voltage(reading.most()).isEmpty() || !reading.quantity().endsWith("voltage")))
                .map(reading -> "\"" + reading.words() + "\" is read while the unit is open and switched on. Say the highest voltage that is met there, or, under "
                        + "\"What can hurt?\", that there is dangerous voltage inside.")).flatMap(one -> one).toList();
    }

    /** How many of the findings are of this kind. */
    public long count(Severity severity) {
        return findings.stream().filter(finding -> finding.severity() == severity).count();
    }
}

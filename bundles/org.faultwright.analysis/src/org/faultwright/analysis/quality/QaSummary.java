/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.quality;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.paths.PathReport;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.Testability;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * What somebody who checks completeness and units wants to know of one procedure, on one page.
 *
 * @param bySeverity  how many findings there are of each severity
 * @param byRule      how many findings each rule has, by its id, the most first
 * @param units       how often each unit is written, by its symbol, the most frequent first
 * @param limits      limits and bands, and for how many of them a source is named
 * @param sources     how many limits and code tables rest on each document, as named, the most first
 * @param unsourced   the steps with a limit or band for which no source is named
 * @param codes       codes of the indicators that steps read, and how many of them have an outcome of their own
 * @param open        what has not been tried or handled, by name
 * @param paths       what all paths come to; absent for a text without steps
 * @param faults      one line for each fault
 * @param groups      the faults that nothing tells apart, with what would
 * @param testability the fractions of detection and isolation; absent without faults
 * @param examples    all examples, and those that go as they say
 * @param outcomes    outcomes of steps with a choice, and those that some example takes
 * @param conclusions conclusions, and those that some example reaches
 * @param notes       the notes that are read, with how many steps read each
 * @param times       expected and worst time over all faults
 * @param untimed     how many steps state no time
 * @param madeLive    where a unit that stands open is made live
 */
public record QaSummary(Map<Severity, Integer> bySeverity, Map<String, Integer> byRule, Map<String, Integer> units,
        Share limits, Map<String, Integer> sources, List<Step> unsourced, Share codes, Open open,
        Optional<PathReport> paths, List<FaultLine> faults, List<GroupLine> groups,
        Optional<Testability> testability, Share examples, Share outcomes, Share conclusions, List<NoteUse> notes,
        TimeStudy.Figure times, int untimed, List<MadeLive> madeLive) {
    /** So many of all. */
    public record Share(int some, int all) {
        @Override
        public String toString() {
            return some + " of " + all;
        }
    }

    /**
     * @param weight     how often it is met, from 0 to 1
     * @param isFound    whether its walk through the tree comes to a conclusion that finds it
     * @param groupSize  how many faults remain possible when it is this one, itself counted
     * @param hasExample whether an example that goes as it says is a case of it
     * @param endsAt     the conclusions that find it at the end of its walk; each may name other faults too
     */
    public record FaultLine(Fault fault, Exact weight, boolean isFound, int groupSize, boolean hasExample,
            TimeStudy.Figure times, List<Step.Conclude> endsAt) {
        /** The conclusion that names most faults besides this one; absent where one names it alone. */
        public Optional<Step.Conclude> reportedWithOthers() {
            return endsAt.stream().filter(end -> end.finds().size() > 1).max(Comparator.comparingInt(end -> end.finds().size()));
        }
    }

    /**
     * What is still open.
     *
     * @param outcomes    outcomes of steps with a choice that no example takes
     * @param conclusions conclusions that no example reaches
     * @param codes       codes without an outcome of their own at a step that reads them
     * @param examples    examples that do not go as they say
     */
    public record Open(List<ExampleCoverage.StepOutcome> outcomes, List<Step.Conclude> conclusions, List<UnnamedCode> codes, List<Example> examples) {
    }

    /**
     * Faults that nothing tells apart.
     *
     * @param acknowledged whether one conclusion finds all of them
     * @param unused       steps that would tell some of them apart and that nothing leads to
     * @param silent       steps asked of which the table does not say what all of them show
     */
    public record GroupLine(List<Fault> faults, boolean acknowledged, List<Step> unused, List<Step> silent) {
    }

    /** @param steps how many steps tell the reader to read it */
    public record NoteUse(Note note, int steps) {
    }

    /**
     * @param findings what the checker has found in the procedure
     * @return absent for a library
     */
    public static Optional<QaSummary> of(Subject subject, List<Finding> findings) {
        return subject.procedure().map(procedure -> new QaCount(subject, procedure).summary(findings));
    }
}

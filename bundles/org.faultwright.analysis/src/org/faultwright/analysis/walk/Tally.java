/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.walk;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** Records of walks by one procedure, added up. */
public final class Tally {
    /**
     * How often a fault was met.
     *
     * @param prior what the text states; 1 where it states nothing
     * @param met   in the records; a conclusion that finds several faults counts for each in the parts that the text gives them
     */
    public record FaultCases(Fault fault, Exact prior, Exact met) {
        /**
         * The text and the records together: the parameter of a Dirichlet distribution over the faults after the records, whose prior has
         * the cases of the text as parameters (Gelman et al., Bayesian Data Analysis, 3rd edition, section 3.4, multinomial model).
         */
        public Exact together() {
            return prior.plus(met);
        }
    }

    /** How long a step took, in seconds. @param median of all visits, the lower of the middle two */
    public record Spent(Step step, int visits, int median) {
    }

    /** A result that the table does not let a fault show, in records that found that fault. */
    public record Unexpected(Fault fault, Suspects.Evidence result, int records) {
    }

    private final Procedure procedure;
    private final List<WalkRecord> records;
    private final Map<String, Exact> met = new LinkedHashMap<>();
    private final Map<Step, List<Integer>> spent = new LinkedHashMap<>();
    private final Map<Fault, Map<Suspects.Evidence, Integer>> unexpected = new LinkedHashMap<>();
    private final Map<Step.Conclude, Integer> unfound = new LinkedHashMap<>();
    private int unfinished;
    private int doubtful;

    public Tally(Procedure procedure, List<WalkRecord> records) {
        this.procedure = procedure;
        this.records = List.copyOf(records);
        Suspects suspects = Suspects.of(procedure);
        records.forEach(record -> {
            record.spent().forEach((step, seconds) -> spent.computeIfAbsent(step, none -> new ArrayList<>()).addAll(seconds));
            doubtful += record.doubtful();
            record.conclusion().ifPresentOrElse(end -> conclude(record, end, suspects), () -> unfinished++);
        });
    }

    private void conclude(WalkRecord record, Step.Conclude end, Suspects suspects) {
        List<Fault> found = suspects.faults().stream()
                .filter(fault -> end.finds().stream().anyMatch(name -> name.text().equals(fault.name().text()))).toList();
        if (found.isEmpty()) {
            unfound.merge(end, 1, Integer::sum);
            return;
        }
        Exact all = found.stream().map(Tally::stated).reduce(Exact.ZERO, Exact::plus);
        found.forEach(fault -> met.merge(fault.name().text(), all.signum() > 0 ? stated(fault).dividedBy(all) : Exact.ratio(1, found.size()), Exact::plus));
        if (found.size() == 1) {
            suspects.unexpected(found.get(0), record.walk().evidence()).forEach(result ->
                    unexpected.computeIfAbsent(found.get(0), none -> new LinkedHashMap<>()).merge(result, 1, Integer::sum));
        }
    }

    private static Exact stated(Fault fault) {
        return fault.cases().map(cases -> cases.value().max(Exact.ZERO)).orElse(Exact.ONE);
    }

    public int records() {
        return records.size();
    }

    public int unfinished() {
        return unfinished;
    }

    /** Readings that lay too near a limit to decide. */
    public int doubtful() {
        return doubtful;
    }

    /** In the order of the text. */
    public List<FaultCases> cases() {
        return procedure.faults().stream().map(fault -> new FaultCases(fault, stated(fault), met.getOrDefault(fault.name().text(), Exact.ZERO))).toList();
    }

    /** The conclusions that found no fault, with how many records ended there. */
    public Map<Step.Conclude, Integer> unfound() {
        return Collections.unmodifiableMap(unfound);
    }

    /** The procedure's own steps in the order of the text; one that performs a routine with all of the routine. */
    public List<Spent> spent() {
        return procedure.steps().stream().filter(spent::containsKey).map(step -> {
            List<Integer> seconds = spent.get(step).stream().sorted().toList();
            return new Spent(step, seconds.size(), seconds.get((seconds.size() - 1) / 2));
        }).toList();
    }

    /** The most frequent first. */
    public List<Unexpected> unexpected() {
        List<Unexpected> all = new ArrayList<>();
        unexpected.forEach((fault, results) -> results.forEach((result, count) -> all.add(new Unexpected(fault, result, count))));
        all.sort((a, b) -> Integer.compare(b.records(), a.records()));
        return List.copyOf(all);
    }

    /** The likelihood of a fault after the records, of 1, with its standard deviation (the beta distribution of one part of a Dirichlet one). */
    public Optional<double[]> shareOf(FaultCases one) {
        double sum = cases().stream().mapToDouble(any -> any.together().doubleValue()).sum();
        double mean = one.together().doubleValue() / sum;
        return sum > 0 ? Optional.of(new double[] { mean, Math.sqrt(mean * (1 - mean) / (sum + 1)) }) : Optional.empty();
    }
}

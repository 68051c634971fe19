/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * What a unit still can have after some results: the cases of each fault, times the share of each result for that fault (Bayes). A
 * result whose share nobody states is taken as equally likely among those that the fault can show, as in the time to expect.
 */
public final class Suspects {
    /** One result. */
    public record Evidence(Step step, String outcome) {
    }

    /** A fault that explains all results. @param share its part of 1 among those that do */
    public record Suspect(Fault fault, double share) {
    }

    /** How far the remedies of a fault were done when a step was asked. */
    public enum Remedied { NO, IN_PART, YES }

    private final LinkedSteps tree;
    private final FaultTable table;
    private final List<StateGraph.Behaviour> behaviours;

    private Suspects(FaultWalks walks) {
        this.tree = walks.tree();
        this.table = walks.table();
        this.behaviours = walks.behaviours();
    }

    public static Suspects of(Procedure procedure) {
        return new Suspects(FaultWalks.in(new Subject(procedure, Optional.empty())).orElseThrow());
    }

    public List<Fault> faults() {
        return table.faults();
    }

    /** The remedies that are steps of the procedure. */
    private List<Integer> remedies(Fault fault) {
        return tree.numbers(fault.remedies());
    }

    /**
     * The outcomes that the fault can show at a step, each with its share of 1; all of them in equal parts where nothing is known.
     *
     * @param remedied with the step itself counted as done, where it is a remedy
     */
    public Map<String, Exact> shares(Fault fault, Step step, Remedied remedied) {
        int count = remedies(fault).size();
        int all = (1 << Math.min(count, 30)) - 1;
        // Any one remedy but not all of them stands for every part.
        int done = remedied == Remedied.NO ? 0 : remedied == Remedied.YES ? all : 1;
        List<StateGraph.ShownResult> shown = behaviours.get(table.faults().indexOf(fault)).at(tree.number(step.name().text()).orElseThrow(), done);
        boolean known = shown.stream().allMatch(one -> one.share().isPresent());
        Map<String, Exact> shares = new LinkedHashMap<>();
        shown.forEach(one -> shares.put(one.arrow().key(), known ? one.share().orElseThrow() : Exact.ratio(1, shown.size())));
        return shares;
    }

    /** Whether the fault says nothing of the step, so that each outcome is as likely as any. */
    public boolean isOpen(Fault fault, Step step, Remedied remedied) {
        Map<String, Exact> shares = shares(fault, step, remedied);
        return shares.size() == step.outcomes().size() && shares.values().stream().distinct().count() == 1;
    }

    /** Those that explain all results, the likeliest first; none where no fault of the table does. */
    public List<Suspect> after(List<Evidence> results) {
        List<Suspect> weighed = new ArrayList<>();
        for (Fault fault : table.faults()) {
            double weight = fault.cases().map(cases -> Math.max(0, cases.value().doubleValue())).orElse(1.0);
            weighed.add(new Suspect(fault, weight * likelihood(fault, results)));
        }
        double sum = weighed.stream().mapToDouble(Suspect::share).sum();
        return weighed.stream().filter(one -> one.share() > 0).map(one -> new Suspect(one.fault(), one.share() / sum))
                .sorted(Comparator.comparing(Suspect::share, Comparator.reverseOrder())).toList();
    }

    /** A result that came before, with the same remedies done, tells nothing new. */
    private double likelihood(Fault fault, List<Evidence> results) {
        Set<List<Object>> told = new HashSet<>();
        double likelihood = 1;
        for (AskedStep one : asked(fault, results)) {
            if (told.add(List.of(one.result(), one.done()))) {
                likelihood *= share(fault, one).doubleValue();
            }
        }
        return likelihood;
    }

    /** The results that the fault cannot show, by the table: nobody expected them of a unit that has it. */
    public List<Evidence> unexpected(Fault fault, List<Evidence> results) {
        return asked(fault, results).stream().filter(one -> share(fault, one).signum() == 0).map(AskedStep::result).distinct().toList();
    }

    /** A result of a step with a choice. @param done how many remedies of the fault were done before it */
    private record AskedStep(Evidence result, int done, Remedied remedied) {
    }

    private Exact share(Fault fault, AskedStep asked) {
        return shares(fault, asked.result().step(), asked.remedied()).getOrDefault(asked.result().outcome(), Exact.ZERO);
    }

    private List<AskedStep> asked(Fault fault, List<Evidence> results) {
        List<Integer> remedies = remedies(fault);
        Set<Integer> done = new LinkedHashSet<>();
        List<AskedStep> asked = new ArrayList<>();
        for (Evidence one : results) {
            int before = done.size();
            tree.number(one.step().name().text()).stream().filter(remedies::contains).forEach(done::add);
            if (one.step().outcomes().size() > 1) {
                asked.add(new AskedStep(one, before, done.isEmpty() ? Remedied.NO : done.size() == remedies.size() ? Remedied.YES : Remedied.IN_PART));
            }
        }
        return asked;
    }
}

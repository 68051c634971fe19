/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** Faults against steps: which outcomes each step can show for each fault, and how often each fault is met. */
public final class FaultTable {
    private static final Exact HUNDRED = Exact.of(100);

    private final List<Fault> faults;
    private final List<Exact> weights;
    private final List<Step> steps;
    private final Map<String, Map<String, FaultSignature>> cells = new HashMap<>();
    /** What a sound unit shows, of the steps for which the text says it; a step that judges a repair is not among them. */
    private final Map<String, FaultSignature> normal = new HashMap<>();

    private FaultTable(Procedure procedure) {
        Map<String, Fault> named = new LinkedHashMap<>();
        procedure.faults().forEach(fault -> named.putIfAbsent(fault.name().text(), fault));
        this.faults = List.copyOf(named.values());
        this.weights = normalised(faults);
        this.steps = procedure.steps().stream().filter(step -> !step.outcomes().isEmpty()).toList();
        this.steps.stream().filter(step -> step.outcomes().size() > 1 && !RepairSteps.verifies(step, procedure.scope()))
                .forEach(step -> Results.normal(step, procedure.scope())
                        .ifPresent(outcome -> normal.put(step.name().text(), FaultSignature.certain(outcome.key()))));
        for (Fault fault : faults) {
            Map<String, FaultSignature> row = new HashMap<>();
            for (Showing showing : fault.shows()) {
                procedure.step(showing.step()).map(step -> cell(step, showing)).filter(cell -> !cell.isSilent())
                        .ifPresent(cell -> row.putIfAbsent(showing.step().text(), cell));
            }
            cells.put(fault.name().text(), row);
        }
    }

    public static FaultTable of(Procedure procedure) {
        return new FaultTable(procedure);
    }

    /**
     * The table with every step that faults show something at, those that nobody has written yet and those without outcomes among them, with the
     * outcomes that a draft would give them.
     */
    public static FaultTable completed(Procedure procedure) {
        return of(new DraftSteps(procedure).completed());
    }

    /** The table of a subject that is a procedure, computed once. */
    public static Optional<FaultTable> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(FaultTable.class, s -> of(procedure)));
    }

    /** Negative weights count as none; where nothing is left, all faults are taken as equally frequent. */
    private static List<Exact> normalised(List<Fault> faults) {
        List<Exact> raw = faults.stream()
                .map(fault -> fault.cases().map(w -> w.value().max(Exact.ZERO)).orElse(Exact.ONE)).toList();
        Exact sum = raw.stream().reduce(Exact.ZERO, Exact::plus);
        return sum.signum() > 0 ? raw.stream().map(w -> w.dividedBy(sum)).toList()
                : raw.stream().map(w -> Exact.ratio(1, raw.size())).toList();
    }

    private static FaultSignature cell(Step step, Showing showing) {
        Map<String, Optional<Exact>> shares = new LinkedHashMap<>();
        Optional<Exact> left = undistributed(showing);
        for (Showing.Possible possible : showing.possible()) {
            Optional<Outcome> outcome = Results.outcome(step, possible);
            Optional<Exact> share = showing.possible().size() == 1 ? Optional.of(HUNDRED)
                    : possible.share().or(() -> left);
            outcome.ifPresent(o -> shares.merge(o.key(), share, (a, b) -> a.flatMap(x -> b.map(x::plus))));
        }
        return scaled(shares);
    }

    /** What each result without a share has, where some have one: an equal part of the rest. */
    private static Optional<Exact> undistributed(Showing showing) {
        long without = showing.possible().stream().filter(p -> p.share().isEmpty()).count();
        if (without == 0 || without == showing.possible().size()) {
            return Optional.empty();
        }
        Exact given = showing.possible().stream().flatMap(p -> p.share().stream()).reduce(Exact.ZERO, Exact::plus);
        return Optional.of(HUNDRED.minus(given).max(Exact.ZERO).dividedBy(Exact.of(without)));
    }

    private static FaultSignature scaled(Map<String, Optional<Exact>> shares) {
        Map<String, Optional<Exact>> known = new LinkedHashMap<>();
        Exact sum = shares.values().stream().flatMap(Optional::stream).reduce(Exact.ZERO, Exact::plus);
        shares.forEach((key, share) -> known.put(key,
                sum.signum() > 0 ? share.map(s -> s.dividedBy(sum)) : Optional.empty()));
        known.values().removeIf(share -> share.isPresent() && share.get().signum() <= 0);
        return known.size() == 1 ? FaultSignature.certain(known.keySet().iterator().next()) : new FaultSignature(known);
    }

    public List<Fault> faults() {
        return faults;
    }

    public int size() {
        return faults.size();
    }

    /** How often the fault is met, from 0 to 1; all together 1. */
    public Exact weight(int fault) {
        return weights.get(fault);
    }

    public Exact weight(Fault fault) {
        return weights.get(faults.indexOf(fault));
    }

    /** The steps that have outcomes, in the order written. */
    public List<Step> steps() {
        return steps;
    }

    /** What the fault shows there: as stated, else as a sound unit, for a fault of which anything is stated. */
    public FaultSignature cell(Fault fault, Step step) {
        FaultSignature stated = stated(fault, step);
        return stated.isSilent() && !saysNothingOf(fault) ? normal.getOrDefault(step.name().text(), FaultSignature.SILENT) : stated;
    }

    /** What the author has written of the fault there. */
    public FaultSignature stated(Fault fault, Step step) {
        return cells.getOrDefault(fault.name().text(), Map.of()).getOrDefault(step.name().text(), FaultSignature.SILENT);
    }

    /** Whether the fault shows there what a sound unit shows, because nothing else is stated. */
    public boolean follows(Fault fault, Step step) {
        return stated(fault, step).isSilent() && !cell(fault, step).isSilent();
    }

    /** Whether no fault is stated to show anything there. */
    public boolean isSilentAbout(Step step) {
        return faults.stream().allMatch(fault -> stated(fault, step).isSilent());
    }

    public boolean saysNothingOf(Fault fault) {
        return cells.getOrDefault(fault.name().text(), Map.of()).isEmpty();
    }

    /** Whether one of these steps, asked once, is sure to tell the two faults apart. */
    public boolean apart(Fault one, Fault other, List<Step> asked) {
        return asked.stream().anyMatch(step -> cell(one, step).excludes(cell(other, step)));
    }
}

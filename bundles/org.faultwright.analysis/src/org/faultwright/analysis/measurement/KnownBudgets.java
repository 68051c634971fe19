/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Subject;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.measure.DecisionRule;
import org.faultwright.quantity.measure.MeasurementBudget;
import org.faultwright.quantity.measure.UncertaintyContribution;

/**
 * The budgets of the limits of a text, handed on from one state of it to the next while it is written: a limit in a block that a key left
 * alone is the same object, and its budget depends on nothing but itself, the range, what is allowed for and the decision rule. May be shared
 * between threads.
 */
public final class KnownBudgets {
    private static final int MOST = 20_000;

    private record KnownBudget(MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule, MeasurementBudget budget) {
        boolean isFor(MeterRange other, List<UncertaintyContribution> allowed, DecisionRule stated) {
            return range == other && extras.equals(allowed) && rule.equals(stated);
        }
    }

    private final Map<Limit, List<KnownBudget>> known;

    private KnownBudgets(Map<Limit, List<KnownBudget>> known) {
        this.known = known;
    }

    /** Those of a subject, none of them known where no other state of its text was checked before. */
    public static KnownBudgets of(Subject subject) {
        return subject.shared(KnownBudgets.class, any -> none());
    }

    /** Of a text that is looked at for the first time. */
    static KnownBudgets none() {
        return new KnownBudgets(new IdentityHashMap<>());
    }

    /** The same for the next state of the text. */
    public synchronized KnownBudgets handedOn() {
        return known.size() > MOST ? none() : new KnownBudgets(new IdentityHashMap<>(known));
    }

    /** Two threads that ask for the same one at the same time may both compute it; nobody waits for what somebody else asks for. */
    MeasurementBudget of(Limit limit, MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule) {
        return find(limit, range, extras, rule).orElseGet(() -> keep(limit, new KnownBudget(range, extras, rule, MeasurementBudget.of(limit, range, extras, rule))));
    }

    private synchronized Optional<MeasurementBudget> find(Limit limit, MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule) {
        return known.getOrDefault(limit, List.of()).stream().filter(one -> one.isFor(range, extras, rule)).map(KnownBudget::budget).findFirst();
    }

    private synchronized MeasurementBudget keep(Limit limit, KnownBudget one) {
        List<KnownBudget> more = new ArrayList<>(known.getOrDefault(limit, List.of()));
        more.add(one);
        known.put(limit, List.copyOf(more));
        return one.budget();
    }
}

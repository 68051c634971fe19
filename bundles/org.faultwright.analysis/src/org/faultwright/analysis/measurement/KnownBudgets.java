/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.measure.DecisionRule;
import org.faultwright.quantity.measure.MeasurementBudget;
import org.faultwright.quantity.measure.UncertaintyContribution;

/**
 * The budgets of limits that were studied before, in the text that is being written or in another one: a budget depends on nothing but the limit, the
 * range, what is allowed for and the decision rule, and one bench has a few meters and reads the same rails again and again. May be shared between threads.
 */
public final class KnownBudgets {
    /** Some ten megabytes; with more of them it begins anew. */
    private static final int MOST = 2_000;
    private static final int MOST_OF_ONE = 16;

    private record KnownBudget(Limit limit, MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule, MeasurementBudget budget) {
        boolean isFor(Limit other, MeterRange read, List<UncertaintyContribution> allowed, DecisionRule stated) {
            return range == read && (limit == other || limit.equals(other)) && extras.equals(allowed) && rule.equals(stated);
        }
    }

    /** By what is written of the limit. */
    private final Map<String, List<KnownBudget>> known = new ConcurrentHashMap<>();

    /** Those of a subject, none of them known where nothing was checked before. */
    public static KnownBudgets of(Subject subject) {
        return subject.shared(KnownBudgets.class, any -> new KnownBudgets());
    }

    /** Two threads that ask for the same one at the same time may both compute it; nobody waits for what somebody else asks for. */
    MeasurementBudget of(Limit limit, MeterRange range, List<UncertaintyContribution> extras, DecisionRule rule) {
        for (KnownBudget one : known.getOrDefault(limit.spelling(), List.of())) {
            if (one.isFor(limit, range, extras, rule)) {
                return one.budget();
            }
        }
        KnownBudget one = new KnownBudget(limit, range, extras, rule, MeasurementBudget.of(limit, range, extras, rule));
        if (known.size() >= MOST) {
            known.clear();
        }
        known.merge(limit.spelling(), List.of(one), KnownBudgets::some);
        return one.budget();
    }

    /** The newest first: where a meter was described anew, nobody asks for the old one again. */
    private static List<KnownBudget> some(List<KnownBudget> before, List<KnownBudget> more) {
        return Stream.concat(more.stream(), before.stream()).limit(MOST_OF_ONE).toList();
    }
}

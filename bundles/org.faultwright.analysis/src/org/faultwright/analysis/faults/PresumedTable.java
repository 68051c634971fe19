/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * The fault table with its gaps filled, for the study of orders alone. Authors write down what a fault shows
 * on its way through their own order and say nothing of steps it does not come to. What such a step
 * would show is taken to be what it shows when it has nothing to do with the fault: the reading that is
 * expected; else the result that most faults show; else, of two, the one that no fault claims.
 */
public final class PresumedTable {
    private static final int MOST_OFTEN = 2;

    private final FaultTable table;
    private final boolean modest;
    /** By the step itself: comparing two is as long as their texts. */
    private final Map<Step, Optional<String>> ordinary = Collections.synchronizedMap(new IdentityHashMap<>());

    public PresumedTable(FaultTable table) {
        this(table, false);
    }

    private PresumedTable(FaultTable table, boolean modest) {
        this.table = table;
        this.modest = modest;
    }

    /** One that leaves open what could only be guessed from what most faults show. */
    public static PresumedTable modest(FaultTable table) {
        return new PresumedTable(table, true);
    }

    public FaultSignature cell(Fault fault, Step step) {
        FaultSignature cell = table.cell(fault, step);
        return cell.isSilent() ? presumed(step).map(FaultSignature::certain).orElse(cell) : cell;
    }

    /** What the step shows for faults of which the table does not say it; absent where nothing can be presumed. */
    public Optional<String> presumed(Step step) {
        return ordinary.computeIfAbsent(step, modest ? this::unclaimed : this::find);
    }

    private Optional<String> find(Step step) {
        List<String> keys = step.outcomes().stream().filter(outcome -> !(outcome.head() instanceof Outcome.AnythingElse))
                .map(Outcome::key).filter(key -> !key.equals(Step.DOUBTFUL)).toList();
        if (keys.contains(Step.WITHIN)) {
            return Optional.of(Step.WITHIN);
        }
        if (keys.contains(Step.ALL_WITHIN)) {
            return Optional.of(Step.ALL_WITHIN);
        }
        Map<String, Long> claims = table.faults().stream().map(fault -> table.cell(fault, step)).filter(FaultSignature::isCertain)
                .map(cell -> cell.outcomes().iterator().next())
                .collect(Collectors.groupingBy(key -> key, Collectors.counting()));
        long most = claims.values().stream().mapToLong(Long::longValue).max().orElse(0);
        List<String> leading = keys.stream().filter(key -> claims.getOrDefault(key, 0L) == most).toList();
        if (most >= MOST_OFTEN && leading.size() == 1) {
            return Optional.of(leading.get(0));
        }
        List<String> unclaimed = keys.stream().filter(key -> table.faults().stream()
                .noneMatch(fault -> table.cell(fault, step).outcomes().contains(key))).toList();
        return keys.size() == 2 && unclaimed.size() == 1 ? Optional.of(unclaimed.get(0)) : Optional.empty();
    }

    /**
     * What a unit without such a fault shows, without guessing by what most faults show: the reading that is expected, else the only
     * outcome that no fault claims.
     */
    private Optional<String> unclaimed(Step step) {
        List<String> keys = step.outcomes().stream().map(Outcome::key).toList();
        Optional<String> expected = List.of(Step.WITHIN, Step.ALL_WITHIN).stream().filter(keys::contains).findFirst();
        List<String> left = step.outcomes().stream().filter(outcome -> !(outcome.head() instanceof Outcome.AnythingElse)).map(Outcome::key)
                .filter(key -> !key.equals(Step.DOUBTFUL) && table.faults().stream().noneMatch(fault -> table.cell(fault, step).outcomes()
                        .contains(key))).toList();
        return expected.or(() -> left.size() == 1 ? Optional.of(left.get(0)) : Optional.empty());
    }

    /** The share of each outcome, in the order of the step's outcomes; where nothing is known all are alike. */
    public List<Exact> shares(Fault fault, Step step) {
        FaultSignature cell = cell(fault, step);
        List<String> keys = step.outcomes().stream().map(Outcome::key).toList();
        List<String> possible = new ArrayList<>(cell.isSilent() ? keys : cell.outcomes());
        return keys.stream().map(key -> !possible.contains(key) ? Exact.ZERO
                : cell.hasShares() ? cell.shares().get(key).orElseThrow() : Exact.ratio(1, possible.size())).toList();
    }
}

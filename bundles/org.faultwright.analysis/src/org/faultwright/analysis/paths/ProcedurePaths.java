/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.faultwright.analysis.OnDemand;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;

/** Every path and state of one procedure, computed as far as it is asked for and then kept. */
public final class ProcedurePaths {
    /**
     * Up to this many states bounds are counted exactly; past it a bounded way is taken as open, which
     * finds every path there is and perhaps some that its bound rules out.
     */
    public static final int MOST_COUNTED = 200_000;

    private final StepMap map;
    private final Routes routes;
    private final Map<String, ConditionStates> byCondition = new ConcurrentHashMap<>();
    private final int mostStates;
    private final OnDemand<BenchStates> bench = new OnDemand<>();
    private final OnDemand<UnitVoltage> voltage = new OnDemand<>();

    private ProcedurePaths(Procedure procedure, int mostCounted, int mostStates) {
        this.map = StepMap.of(procedure);
        this.mostStates = mostStates;
        Routes counted = Routes.of(map, true, mostCounted);
        this.routes = counted.states().isComplete() ? counted : Routes.of(map, false, mostStates);
    }

    public static ProcedurePaths of(Procedure procedure) {
        return new ProcedurePaths(procedure, MOST_COUNTED, Exploration.MOST_STATES);
    }

    static ProcedurePaths of(Procedure procedure, int mostCounted, int mostStates) {
        return new ProcedurePaths(procedure, mostCounted, mostStates);
    }

    /** Those of the procedure under check; absent for a library. */
    public static Optional<ProcedurePaths> of(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(ProcedurePaths.class, any -> of(procedure)));
    }

    public StepMap map() {
        return map;
    }

    /** The paths, conditions left aside. */
    public Routes routes() {
        return routes;
    }

    /** Whether a place can be come to at all. */
    public boolean reaches(InlinedStep place) {
        return routes.reached(place);
    }

    /** The values of a condition at every place; absent for one without values. */
    public Optional<ConditionStates> states(Condition condition) {
        if (condition.values().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(byCondition.computeIfAbsent(condition.name().text(), name -> explored(condition)));
    }

    private ConditionStates explored(Condition condition) {
        if (countsRepeats()) {
            ConditionStates counted = ConditionStates.of(map, condition, true, mostStates);
            if (counted.isComplete()) {
                return counted;
            }
        }
        return ConditionStates.of(map, condition, false, mostStates);
    }

    /** What can be live, charged, open and isolated at the same time, at every place. */
    public BenchStates bench() {
        return bench.get(() -> BenchStates.of(this, countsRepeats(), mostStates));
    }

    /** What the unit carries, as far as its points say. */
    UnitVoltage voltage() {
        return voltage.get(() -> UnitVoltage.found(this));
    }

    /** Whether every bound was counted rather than taken as open. */
    public boolean countsRepeats() {
        return routes.states().countsRepeats();
    }

    /** Whether no bound on states was reached in the paths. */
    public boolean isComplete() {
        return routes.states().isComplete();
    }

    /** Every state with all conditions together, up to {@link Exploration#MOST_STATES}. */
    public Exploration together() {
        return Exploration.of(map, map.conditions(), countsRepeats(), mostStates, Explorer.Arrivals.NOBODY);
    }

    /** A shortest path to a step of the procedure itself; absent when there is none. */
    public Optional<List<PathStep>> pathTo(Name step) {
        return map.place(step).flatMap(routes.states()::path);
    }
}

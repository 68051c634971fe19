/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Publication;
import org.faultwright.quantity.Exact;

/** What a unit most likely has, and by which steps each fault is found; the most often met first, then the soonest found. */
public final class LikelyFaults {
    /**
     * A fault on its way through the steps.
     *
     * @param weight  how often it is met, as a part of 1
     * @param path    the shortest path to a conclusion that finds it; empty where none does
     * @param seconds the expected time to it; absent where nothing bounds it
     */
    public record Case(Fault fault, Exact weight, List<PathStep> path, Optional<Exact> seconds) {
    }

    private final Procedure procedure;
    private final List<Case> cases;
    private final Optional<TimeStudy> times;

    private LikelyFaults(Procedure procedure, List<Case> cases, Optional<TimeStudy> times) {
        this.procedure = procedure;
        this.cases = cases;
        this.times = times;
    }

    static LikelyFaults of(Procedure procedure) {
        return of(new Subject(procedure, Optional.empty()), procedure);
    }

    /** Out of the walks that the rules have made, where they have. */
    static LikelyFaults of(Publication publication) {
        return of(publication.subject(), publication.procedure());
    }

    private static LikelyFaults of(Subject subject, Procedure procedure) {
        List<Case> cases = new ArrayList<>();
        Optional<FaultWalks> walks = FaultWalks.in(subject);
        Optional<TimeStudy> times = TimeStudy.in(subject);
        if (walks.isPresent() && times.isPresent()) {
            FaultTable table = walks.get().table();
            for (Fault fault : table.faults()) {
                List<PathStep> path = walks.get().of(fault).endings().stream().filter(FaultWalk.Ending::finds)
                        .map(FaultWalk.Ending::path).findFirst().orElse(List.of());
                cases.add(new Case(fault, table.weight(fault), path, times.get().of(fault).expected()));
            }
        }
        cases.sort(Comparator.comparing(Case::weight, Comparator.reverseOrder())
                .thenComparing(one -> one.seconds().orElse(Exact.of(Integer.MAX_VALUE))));
        return new LikelyFaults(procedure, List.copyOf(cases), times);
    }

    /** How long it takes over all faults; absent where nothing is known of them. */
    public Optional<TimeStudy.Figure> inAll() {
        return times.map(TimeStudy::inAll);
    }

    /** The most likely first. */
    public List<Case> cases() {
        return cases;
    }

    /** The steps by which each fault is found, the likeliest first. */
    List<List<Step>> paths() {
        Map<String, Step> steps = new HashMap<>();
        procedure.steps().forEach(step -> steps.putIfAbsent(step.name().text(), step));
        return cases.stream().map(one -> one.path().stream().map(step -> steps.get(step.step())).filter(Objects::nonNull).toList()).toList();
    }
}

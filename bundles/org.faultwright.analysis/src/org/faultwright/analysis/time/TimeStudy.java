/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.trace.FaultBehaviour;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.analysis.trace.StateGraph;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * How long it takes from the beginning to a conclusion. Times are those the steps state; a step without
 * one counts as taking none and is listed.
 */
public final class TimeStudy {
    /**
     * @param expected  in seconds; absent where it may go on for ever. A result whose share nobody states is taken as
     *                  equally likely among those from which a conclusion that finds the fault can still be reached
     * @param worst     in seconds, over every way that the table allows to such a conclusion (to any, where none finds
     *                  it); absent where no bound on repeats holds it
     * @param worstPath the longest way; empty where there is none
     * @param assumed   whether the expected time rests on shares that nobody states
     */
    public record Figure(Optional<Exact> expected, Optional<Exact> worst, List<PathStep> worstPath, boolean assumed) {
    }

    private final Map<String, Figure> byFault = new LinkedHashMap<>();
    private final List<Step> untimed;
    private final Figure inAll;
    private final Figure anyPath;

    private TimeStudy(Subject subject, Procedure procedure) {
        FaultTable table = FaultTable.in(subject).orElseThrow();
        StepTimes times = new StepTimes(subject.scope());
        FaultWalks walks = FaultWalks.in(subject).orElseThrow();
        walks.all().forEach(walk -> byFault.put(walk.fault().name().text(), figure(walk, times)));
        LinkedSteps tree = walks.tree();
        StateGraph any = new StateGraph(tree, FaultBehaviour.anything(tree));
        this.anyPath = figure(new Duration(any, times, move -> move.to().filter(any::isEnding).isPresent()));
        this.inAll = table.size() == 0 ? anyPath : inAll(table);
        this.untimed = procedure.steps().stream().filter(times.untimed()::contains).toList();
    }

    /** The times of a subject that is a procedure, computed once. */
    public static Optional<TimeStudy> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(TimeStudy.class, s -> new TimeStudy(s, procedure)));
    }

    public static TimeStudy of(Procedure procedure) {
        return in(new Subject(procedure, Optional.empty())).orElseThrow();
    }

    private static Figure figure(FaultWalk walk, StepTimes times) {
        StateGraph all = walk.states();
        return figure(new Duration(all, times, move -> move.to().filter(walk::findsAt).isPresent()));
    }

    private static Figure figure(Duration duration) {
        Duration.Expected expected = duration.expected();
        Duration.Worst worst = duration.worst();
        return new Figure(expected.seconds(), worst.seconds(), worst.path(), expected.assumed());
    }

    private Figure inAll(FaultTable table) {
        Optional<Exact> expected = Optional.of(Exact.ZERO);
        Optional<Figure> worst = Optional.empty();
        List<Figure> figures = new ArrayList<>(byFault.values());
        for (int i = 0; i < figures.size(); i++) {
            Figure figure = figures.get(i);
            Exact weight = table.weight(i);
            expected = expected.flatMap(sum -> figure.expected().map(own -> sum.plus(own.times(weight))));
            if (worst.isEmpty() || isLonger(figure, worst.get())) {
                worst = Optional.of(figure);
            }
        }
        return new Figure(expected, worst.orElseThrow().worst(), worst.get().worstPath(),
                figures.stream().anyMatch(Figure::assumed));
    }

    private static boolean isLonger(Figure one, Figure other) {
        return other.worst().isPresent()
                && one.worst().map(time -> time.compareTo(other.worst().get()) > 0).orElse(true);
    }

    /** Over all faults by their weights; without any fault as {@link #anyPath()}. The worst is that of the slowest fault. */
    public Figure inAll() {
        return inAll;
    }

    public Figure of(Fault fault) {
        return byFault.get(fault.name().text());
    }

    /** Over every way through the tree, whether a fault explains it or not. */
    public Figure anyPath() {
        return anyPath;
    }

    /** The steps met that state no time and should. */
    public List<Step> untimed() {
        return untimed;
    }
}

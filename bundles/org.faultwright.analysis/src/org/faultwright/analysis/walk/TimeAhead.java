/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.walk;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.time.TimeToGo;
import org.faultwright.analysis.time.TimeToGo.Range;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.quantity.Exact;

/**
 * How long it still takes from where a walk stands to a conclusion, by the times that the steps state: to the end of the routine that it is in,
 * and from there on. A step that states its time counts with that, whatever its routine takes. Only for one thread.
 */
public final class TimeAhead {
    private static final Range NOTHING = new Range(Exact.ZERO, Optional.of(Exact.ZERO));
    private static final Range UNKNOWN = new Range(Exact.ZERO, Optional.empty());

    private final Procedure procedure;
    private final Map<String, TimeToGo> known = new HashMap<>();

    private TimeAhead(Procedure procedure) {
        this.procedure = procedure;
    }

    public static TimeAhead of(Procedure procedure) {
        return new TimeAhead(procedure);
    }

    /** In seconds, the step itself included; nothing at an end. @param walk of the same procedure */
    public Range from(Walk walk) {
        if (walk.isEnd()) {
            return NOTHING;
        }
        Range sum = NOTHING;
        StepGraph graph = procedure;
        for (Step caller : walk.callers()) {
            sum = sum(sum, after(graph, caller));
            Optional<Exact> own = Walk.time(caller);
            if (own.isPresent()) {
                return sum(sum, new Range(own.get(), own));
            }
            graph = walk.inside(caller);
        }
        return sum(sum, from(graph, walk.step()).orElse(UNKNOWN));
    }

    /** From behind a step on, whatever it shows. */
    private Range after(StepGraph graph, Step step) {
        List<Range> ways = step.outcomes().stream().flatMap(TimeAhead::targets).flatMap(target -> graph.isExit(target) ? Stream.of(NOTHING)
                : graph.step(target).flatMap(next -> from(graph, next)).stream()).toList();
        Optional<Exact> most = ways.stream().map(Range::most).reduce((a, b) -> a.flatMap(x -> b.map(x::max))).orElse(Optional.of(Exact.ZERO));
        return new Range(ways.stream().map(Range::least).reduce(Exact::min).orElse(Exact.ZERO), most);
    }

    private static Stream<Name> targets(Outcome outcome) {
        return Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream());
    }

    private Optional<Range> from(StepGraph graph, Step step) {
        String name = graph == procedure ? "" : graph.name().text();
        return known.computeIfAbsent(name, one -> TimeToGo.of(graph, procedure.scope())).from(step);
    }

    private static Range sum(Range one, Range other) {
        return new Range(one.least().plus(other.least()), one.most().flatMap(a -> other.most().map(a::plus)));
    }
}

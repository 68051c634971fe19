/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Writes the routines of a procedure out, breadth first and without recursion of its own. */
final class StepMapBuilder {
    /** Routines that perform routines can double with every level; past this many places they are left closed. */
    static final int MOST_PLACES = 50_000;
    /** So are routines that stand deeper than this in one another. */
    static final int MOST_LEVELS = 100;

    private final Procedure procedure;
    private final Scope scope;
    private final List<InlinedStep> places = new ArrayList<>();
    private final List<List<Arrow>> arrows = new ArrayList<>();
    private final List<InlinedStep> tooLarge = new ArrayList<>();
    private final Deque<Frame> waiting = new ArrayDeque<>();
    private int promised;

    StepMapBuilder(Procedure procedure) {
        this.procedure = procedure;
        this.scope = procedure.scope();
    }

    StepMap build() {
        Frame whole = open(procedure, Optional.empty(), Optional.empty());
        while (!waiting.isEmpty()) {
            Frame frame = waiting.remove();
            List.copyOf(frame.steps.values()).forEach(place -> leadOn(place, frame));
        }
        return new StepMap(procedure, scope, places, ways(), whole.first(), tooLarge);
    }

    /** A step graph that is being written out once. */
    private static final class Frame {
        final StepGraph graph;
        final Optional<InlinedStep> caller;
        final Optional<Frame> outer;
        final Map<String, InlinedStep> steps = new LinkedHashMap<>();
        final Map<String, InlinedStep> returns = new HashMap<>();
        final Map<InlinedStep, Routine> performed = new HashMap<>();

        Frame(StepGraph graph, Optional<InlinedStep> caller, Optional<Frame> outer) {
            this.graph = graph;
            this.caller = caller;
            this.outer = outer;
        }

        int level() {
            return outer.map(frame -> frame.level() + 1).orElse(0);
        }

        boolean isInside(StepGraph other) {
            for (Optional<Frame> frame = Optional.of(this); frame.isPresent(); frame = frame.get().outer) {
                if (frame.get().graph == other) {
                    return true;
                }
            }
            return false;
        }

        Optional<InlinedStep> first() {
            return graph.first().map(step -> steps.get(step.name().text()));
        }
    }

    /** A way before it has its number. */
    private record Arrow(Optional<Outcome> outcome, Optional<InlinedStep> to, Optional<InlinedStep> otherwise) {
    }

    private Frame open(StepGraph graph, Optional<InlinedStep> caller, Optional<Frame> outer) {
        Frame frame = new Frame(graph, caller, outer);
        for (Step step : graph.steps()) {
            if (!frame.steps.containsKey(step.name().text())) {
                frame.steps.put(step.name().text(), open(step, frame));
            }
        }
        waiting.add(frame);
        return frame;
    }

    private InlinedStep open(Step step, Frame frame) {
        Optional<Routine> routine = toWriteOut(step, frame);
        boolean fits = routine.map(found -> promised + found.steps().size() <= MOST_PLACES).orElse(false)
                && frame.level() < MOST_LEVELS;
        InlinedStep place = place(step, frame.caller, Optional.empty(), fits);
        if (fits) {
            promised += routine.get().steps().size();
            frame.performed.put(place, routine.get());
        } else if (routine.isPresent()) {
            tooLarge.add(place);
        }
        return place;
    }

    private InlinedStep place(Step step, Optional<InlinedStep> caller, Optional<Name> exit, boolean writtenOut) {
        InlinedStep place = new InlinedStep(places.size(), step, caller, exit, writtenOut);
        places.add(place);
        arrows.add(new ArrayList<>());
        return place;
    }

    private Optional<Routine> toWriteOut(Step step, Frame frame) {
        if (!(step instanceof Step.Perform perform)) {
            return Optional.empty();
        }
        return perform.routine().flatMap(scope::routine).filter(routine -> !frame.isInside(routine));
    }

    private void leadOn(InlinedStep place, Frame frame) {
        if (!place.isWrittenOut()) {
            place.step().outcomes().forEach(outcome -> lead(place, outcome, frame));
            return;
        }
        Frame inner = open(frame.performed.get(place), Optional.of(place), Optional.of(frame));
        arrows.get(place.index()).add(new Arrow(Optional.empty(), inner.first(), Optional.empty()));
    }

    private void lead(InlinedStep from, Outcome outcome, Frame frame) {
        Optional<InlinedStep> to = outcome.target().flatMap(target -> target(target, frame));
        Optional<InlinedStep> otherwise = outcome.repeat().flatMap(repeat -> target(repeat.otherwise(), frame));
        arrows.get(from.index()).add(new Arrow(Optional.of(outcome), to, otherwise));
    }

    private Optional<InlinedStep> target(Name target, Frame frame) {
        InlinedStep step = frame.steps.get(target.text());
        if (step != null) {
            return Optional.of(step);
        }
        return frame.graph.isExit(target) && frame.caller.isPresent()
                ? Optional.of(comingBack(target, frame, frame.caller.get())) : Optional.empty();
    }

    private InlinedStep comingBack(Name exit, Frame frame, InlinedStep caller) {
        InlinedStep known = frame.returns.get(exit.text());
        if (known != null) {
            return known;
        }
        InlinedStep back = place(caller.step(), caller.caller(), Optional.of(exit), false);
        frame.returns.put(exit.text(), back);
        Results.byKey(caller.step(), exit.text()).or(() -> Results.byKey(caller.step(), "anything else"))
                .ifPresent(outcome -> lead(back, outcome, frame.outer.orElseThrow()));
        return back;
    }

    private List<Transition> ways() {
        List<Transition> ways = new ArrayList<>();
        for (InlinedStep place : places) {
            arrows.get(place.index()).forEach(arrow -> ways.add(
                    new Transition(ways.size(), place, arrow.outcome(), arrow.to(), arrow.otherwise())));
        }
        return ways;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;

/**
 * The places on a card that a reader looks at on the way to a fault, one after the other: the steps of every routine on the way
 * too, and the step that was left for a routine again when its end sends the reader back.
 */
public final class ReadingWay {
    private static final int DEEPEST = 8;

    private final CardPlan plan;
    private final List<PlacedStep> read = new ArrayList<>();

    private ReadingWay(CardPlan plan) {
        this.plan = plan;
    }

    /** Empty where no step finds the fault. Through a routine it is the shortest way to the exit that the path leaves it by. */
    public static List<PlacedStep> of(CardPlan plan, LikelyFaults.Case one) {
        ReadingWay way = new ReadingWay(plan);
        List<PlacedStep> own = plan.sections().get(0).steps();
        one.path().forEach(on -> own.stream().filter(placed -> placed.step().name().text().equals(on.step())).findFirst()
                .ifPresent(placed -> way.read(placed, placed.run(), placed.step(), on.outcome(), 0)));
        return List.copyOf(way.read);
    }

    /** @param box where the step stands or in whose box it does */
    private void read(PlacedStep box, StepRun run, Step step, String exit, int depth) {
        Optional<StepRun> inPlace = inPlace(box, run, step);
        if (inPlace.isPresent()) {
            if (step == box.step()) {
                read.add(box);
            }
            RoutineWay.shortest(inPlace.get().graph(), exit).forEach(on -> read(box, inPlace.get(), on.step(), on.by().key(), depth + 1));
            return;
        }
        Optional<PlacedStep> placed = run.placed(step);
        placed.ifPresent(read::add);
        placed.flatMap(plan::section).filter(section -> depth < DEEPEST).ifPresent(section -> {
            List<PlacedStep> steps = section.steps();
            RoutineWay.shortest(section.graph(), exit).forEach(on -> steps.stream().filter(next -> next.step() == on.step())
                    .forEach(next -> read(next, next.run(), next.step(), on.by().key(), depth + 1)));
            read.add(placed.get());
        });
    }

    /** The run of the routine that the step performs, where that stands in the box. */
    private Optional<StepRun> inPlace(PlacedStep box, StepRun run, Step step) {
        return plan.inside(box).stream().flatMap(inner -> Stream.iterate(Optional.of(inner.run()), Optional::isPresent,
                within -> within.get().caller().map(PlacedStep::run))).flatMap(Optional::stream)
                .filter(within -> within.caller().filter(by -> by.step() == step && by.run() == run).isPresent()).findFirst();
    }
}

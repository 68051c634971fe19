/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.card.TypesetPlan;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whoever follows the arrows of the card stands at the number that the bench page shows. */
class PrintedNumbersTest {
    private static final int WALKS = 30;

    static Stream<Publication> published() {
        return Stream.concat(Stream.of(Samples.everything()), Samples.demos().stream().map(Samples::demo));
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_show_the_numbers_of_the_card(Publication publication) {
        CardPlan plan = TypesetPlan.of(publication);
        String tree = Samples.string("tree-json", publication);
        int moves = 0;
        for (int seed = 0; seed < WALKS; seed++) {
            try (WalkScript script = new WalkScript()) {
                moves += walk(plan, script, script.start(tree), new Random(seed));
            }
        }
        assertTrue(moves >= 2 * WALKS, "moves: " + moves);
    }

    private static int walk(CardPlan plan, WalkScript script, JsonObject begun, Random random) {
        PlacedStep at = plan.placed(plan.procedure(), plan.procedure().first().orElseThrow()).orElseThrow();
        Deque<PlacedStep> cameFrom = new ArrayDeque<>();
        JsonObject state = begun;
        int moves = 0;
        while (true) {
            assertEquals(at.label(), state.get("number").getAsString(), state.get("label").getAsString());
            if (state.get("end").getAsBoolean()) {
                return moves;
            }
            moves++;
            if (state.get("canEnter").getAsBoolean()) {
                // a routine in the box of a routine in a box goes on with its letters: there the card has come already
                if (state.get("label").getAsString().endsWith(at.step().name().text())) {
                    at = entered(plan, at, cameFrom);
                }
                state = script.enter();
                continue;
            }
            List<Outcome> once = at.step().outcomes().stream().filter(outcome -> outcome.repeat().isEmpty() && outcome.target().isPresent()).toList();
            if (once.isEmpty()) {
                return moves;
            }
            Outcome outcome = once.get(random.nextInt(once.size()));
            Optional<PlacedStep> next = followed(at, outcome.target().get(), cameFrom);
            if (next.isEmpty()) {
                return moves;
            }
            at = next.get();
            state = script.take(outcome.key(), Optional.empty());
        }
    }

    private static PlacedStep entered(CardPlan plan, PlacedStep at, Deque<PlacedStep> cameFrom) {
        if (!plan.inside(at).isEmpty()) {
            return plan.inside(at).get(0);
        }
        cameFrom.push(at);
        var routine = plan.section(at).orElseThrow().graph();
        return plan.placed(routine, routine.first().orElseThrow()).orElseThrow();
    }

    /** Where the arrow leads; empty where a step is left that may be left so a few times only. */
    private static Optional<PlacedStep> followed(PlacedStep from, Name name, Deque<PlacedStep> cameFrom) {
        StepRun.Target target = from.run().target(name);
        if (target instanceof StepRun.To to) {
            return to.left().stream().anyMatch(left -> left.by().repeat().isPresent()) ? Optional.empty() : Optional.of(to.step());
        }
        if (!(target instanceof StepRun.Back back) || back.left().stream().anyMatch(left -> left.by().repeat().isPresent())) {
            return Optional.empty();
        }
        PlacedStep caller = cameFrom.pop();
        Optional<Outcome> by = caller.step().outcomes().stream().filter(outcome -> outcome.key().equals(back.exit())).findFirst();
        return by.filter(outcome -> outcome.repeat().isEmpty()).flatMap(Outcome::target).flatMap(next -> followed(caller, next, cameFrom));
    }
}

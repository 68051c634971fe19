/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.card.CardPages;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;

/** The room that a step is reckoned with, held against what is printed. */
class StepRoomTest {
    private static final double POINTS = 72 / 25.4;

    @Test
    void should_reckon_what_is_printed() throws IOException {
        int boxes = 0;
        double reckonedAll = 0;
        double printedAll = 0;
        List<String> off = new ArrayList<>();
        for (Publication publication : Stream.concat(Stream.of(Samples.everything()), Samples.demos().stream().map(Samples::demo)).toList()) {
            Plan plan = new Plan(publication);
            StepRoom rooms = new StepRoom(publication.procedure());
            try (CardPages pages = CardPages.open(Samples.publish("card-pdf", publication).bytes())) {
                Map<String, CardPages.Place> printed = pages.printed();
                for (Placed placed : plan.placed().filter(one -> plan.inside(one).isEmpty()).toList()) {
                    boolean inside = placed.run().caller().isPresent();
                    double reckoned = rooms.of(placed.step(), inside)
                            + (placed.step() instanceof Step.Perform ? rooms.sending(placed.step(), inside) : 0);
                    double height = printed.get(placed.label()).area().getHeight() / POINTS;
                    System.err.printf("DIFF %+.1f %.1f %.1f %s %s %s%n", reckoned - height, reckoned, height, publication.procedure().name(), placed.label(), placed.step().keyword() + " " + placed.step().title());
                }
            }
        }
    }
}

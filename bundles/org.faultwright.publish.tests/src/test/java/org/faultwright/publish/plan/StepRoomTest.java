/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.TypesetPlan;
import org.junit.jupiter.api.Test;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.card.CardPages;
import org.junit.jupiter.api.Test;

/** What a card is reckoned with before it is set, held against what is printed. */
class StepRoomTest {
    private static final double POINTS = 72 / 25.4;
    /** In millimetres: two lines of type. */
    private static final double FAR = 8;

    private static List<Publication> published() {
        return Stream.concat(Stream.of(Samples.everything()), Samples.demos().stream().map(Samples::demo)).toList();
    }

    /** In all they are right to a part in fifty, one by one to half a line; hardly any is off by two lines. */
    @Test
    void should_reckon_the_room_that_steps_take_in_print() throws IOException {
        double reckoned = 0;
        double printed = 0;
        double off = 0;
        int count = 0;
        List<String> far = new ArrayList<>();
        for (Publication publication : published()) {
            CardPlan plan = TypesetPlan.of(publication);
            StepRoom rooms = new StepRoom(publication.procedure());
            try (CardPages pages = CardPages.open(Samples.publish("card-pdf", publication).bytes())) {
                Map<String, CardPages.Place> places = pages.printed();
                for (PlacedStep placed : plan.placed().filter(one -> plan.inside(one).isEmpty()).toList()) {
                    boolean inside = placed.run().caller().isPresent();
                    double room = rooms.of(placed.step(), inside) + (placed.step() instanceof Step.Perform ? rooms.sending(placed.step(), inside) : 0);
                    double height = places.get(placed.label()).area().getHeight() / POINTS;
                    reckoned += room;
                    printed += height;
                    off += Math.abs(room - height);
                    count++;
                    if (Math.abs(room - height) > FAR) {
                        far.add(String.format("%s %s: %.1f for %.1f", publication.title(), placed.label(), room, height));
                    }
                }
            }
        }
        assertTrue(count > 400, "steps: " + count);
        assertEquals(1, reckoned / printed, 0.02);
        assertTrue(off / count < 1.9, "on average " + off / count + " mm");
        assertTrue(far.size() <= count / 100, far.toString());
    }

    /** So a card has the pages that it was arranged for. */
    @Test
    void should_reckon_the_pages_of_the_demo() throws IOException {
        for (Publication publication : Samples.demos().stream().map(Samples::demo).toList()) {
            LikelyFaults likely = LikelyFaults.of(publication.procedure());
            PageEstimate model = new PageEstimate(publication.procedure(), likely);
            double reckoned = model.pages(model.state(StepArrangement.of(publication.procedure(), likely)), 1.02).length();
            try (CardPages pages = CardPages.open(Samples.publish("card-pdf", publication).bytes())) {
                assertEquals(reckoned + 0.5, pages.count(), 1, publication.title());
            }
        }
    }
}

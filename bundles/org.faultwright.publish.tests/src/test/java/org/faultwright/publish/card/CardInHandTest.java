/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Map;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.page.Paper;
import org.junit.jupiter.api.Test;

/** A card while its text is written. */
class CardInHandTest {
    private static final String TEXT = """
            procedure P "P" begin at A
            fault One "One" { cases 9 shows A yes }
            fault Two "Two" { cases 1 shows A no }
            check A "Dark?" { yes -> B no -> C }
            do B "Fit a lamp" { then -> One }
            do C "Fit a fuse" { then -> Two }
            """;

    private static Publication typed(String from, String to) {
        return Samples.text(TEXT.replace(from, to));
    }

    @Test
    void should_show_the_places_that_are_published() throws IOException {
        Publication publication = Samples.everything();
        try (CardPages shown = new CardInHand().of(publication); CardPages published = CardPages.open(TypesetPlan.printed(publication, Paper.A4))) {
            assertEquals(published.count(), shown.count());
            assertEquals(published.places().keySet(), shown.places().keySet());
        }
    }

    /** The same type on the same spot, though nothing is tagged and nothing packed. */
    @Test
    void should_look_as_it_prints() throws IOException {
        CardInHand hand = new CardInHand();
        hand.of(Samples.everything()).close();
        Publication again = Samples.everything();
        try (CardPages shown = hand.of(again); CardPages published = CardPages.open(TypesetPlan.printed(again, Paper.A4))) {
            assertEquals(published.printed(), shown.printed());
            for (int page = 0; page < published.count(); page++) {
                var one = published.picture(page, 40);
                var other = shown.picture(page, 40);
                for (int y = 0; y < one.getHeight(); y++) {
                    for (int x = 0; x < one.getWidth(); x++) {
                        assertEquals(one.getRGB(x, y), other.getRGB(x, y), page + ": " + x + ", " + y);
                    }
                }
            }
        }
    }

    /** Cases that are written otherwise change the order, but not under the eyes of whoever writes. */
    @Test
    void should_keep_the_steps_where_they_stood_until_a_pause() throws IOException {
        CardInHand hand = new CardInHand();
        Map<String, CardPages.Place> before = places(hand.of(typed("", "")));
        Publication other = typed("cases 1 ", "cases 99 ");

        assertEquals(before, places(hand.of(other)));
        CardPages settled = hand.settled(other).orElseThrow();
        assertNotEquals(before, places(settled));
        assertTrue(hand.settled(other).isEmpty());
    }

    @Test
    void should_look_for_places_anew_where_a_step_has_come() throws IOException {
        CardInHand hand = new CardInHand();
        hand.of(typed("", "")).close();
        Publication longer = typed("do C", "do D \"Fit a plug\" { then -> Two } do C");
        assertTrue(places(hand.of(longer)).containsKey("D"));
        assertTrue(hand.settled(longer).isEmpty());
    }

    private static Map<String, CardPages.Place> places(CardPages pages) {
        try (pages) {
            return pages.places();
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.eclipse.core.runtime.Platform;
import org.junit.jupiter.api.Test;

/** Where the card goes, by the size of the window and of its letters. */
class WritingPerspectiveTest {
    @Test
    void should_show_the_card_beside_the_text_where_both_have_room() {
        assertTrue(WritingPerspective.hasRoomForACard(1500, 8));
        assertTrue(WritingPerspective.hasRoomForACard(1920, 8));
    }

    @Test
    void should_leave_the_width_to_the_text_on_a_small_screen_and_with_large_letters() {
        assertFalse(WritingPerspective.hasRoomForACard(1024, 8));
        assertFalse(WritingPerspective.hasRoomForACard(1366, 8));
        assertFalse(WritingPerspective.hasRoomForACard(1500, 12));
    }

    /** The second width is that of a letter at 150 %. */
    @Test
    void should_put_the_shelf_below_where_a_usual_line_has_no_room_beside_it() {
        assertTrue(WritingPerspective.hasRoomForTheShelf(1024, 8));
        assertTrue(WritingPerspective.hasRoomForTheShelf(1366, 12));
        assertFalse(WritingPerspective.hasRoomForTheShelf(1024, 12));
        assertFalse(WritingPerspective.hasRoomForTheShelf(640, 8));
    }

    @Test
    void should_call_usual_what_95_of_100_lines_of_the_demo_are() throws IOException {
        List<URL> texts = Collections.list(Platform.getBundle("org.faultwright.workbench").findEntries("procedures-demo", "*.procedure", true));
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (URL text : texts) {
            try (InputStream bytes = text.openStream()) {
                bytes.transferTo(all);
            }
        }
        int[] lengths = all.toString(StandardCharsets.UTF_8).lines().mapToInt(String::length).sorted().toArray();
        double within = IntStream.of(lengths).filter(length -> length <= WritingPerspective.USUAL_LINE).count() / (double) lengths.length;

        assertEquals(0.95, within, 0.01);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.index;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;

class IndexHtmlTest {
    private static String index(Set<String> files, Publication... publications) {
        return new String(new IndexHtml().publish(new ProcedureFolder("Slipway", List.of(publications), files)).bytes(),
                StandardCharsets.UTF_8);
    }

    @Test
    void should_lead_from_every_complaint_to_the_card() {
        String page = index(Set.of("EdnorColdPlate.html"), Samples.everything());
        Samples.everything().procedure().complaints().forEach(complaint -> assertTrue(page.contains(
                complaint.value().replace("\"", "&quot;")), complaint.value()));
        // two complaints, the title of the procedure, and the word card
        assertEquals(4, page.split("href=\"EdnorColdPlate.html\"", -1).length - 1);
    }

    @Test
    void should_link_only_to_files_that_are_there() {
        assertFalse(index(Set.of(), Samples.everything()).contains("href"));
        String page = index(Set.of("EdnorColdPlate.pdf", "Another.html"), Samples.everything());
        assertEquals(1, page.split("href=", -1).length - 1);
        assertTrue(page.contains("href=\"EdnorColdPlate.pdf\""));
    }

    @Test
    void should_order_complaints_as_words_and_not_as_codes() {
        String page = index(Set.of(), Samples.text("procedure P complaints \"Zebra\", \"apple\", \"\u00C4pple\", \"Banana\""));
        assertTrue(page.indexOf("apple") < page.indexOf("\u00C4pple"));
        assertTrue(page.indexOf("\u00C4pple") < page.indexOf("Banana"));
        assertTrue(page.indexOf("Banana") < page.indexOf("Zebra"));
    }

    @Test
    void should_say_what_is_not_released_and_what_is_open() {
        String page = index(Set.of(), Samples.text("procedure P check A \"?\" { yes -> Nowhere }"),
                Samples.text("procedure Q revision 3 draft conclude End { finds nothing }"));
        assertTrue(page.contains("open error"), page);
        assertTrue(page.contains("Revision 3, draft"), page);
        assertTrue(page.contains("not released"), page);
    }
}

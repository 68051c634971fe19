/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.faultwright.analysis.Finding;
import org.junit.jupiter.api.Test;

/** Half a line says little about the rest of the text, and what was found before stays told. */
class TypingCalmTest {
    private static final Path DEMO = Path.of("../../procedures-demo/OllenbyFaintLabels.procedure");
    private static final int EVERY = 37;

    /** Generous; the benchmark prints what it is. */
    private static final int MOST = 8;

    private static List<String> keys(OpenText text) {
        return text.findings().stream().map(finding -> finding.rule() + ": " + finding.message()).toList();
    }

    @Test
    void should_find_little_more_in_half_a_line_than_in_the_whole_text() throws IOException {
        String text = Files.readString(DEMO);
        EditingServices services = new EditingServices();
        List<String> known = keys(services.update(DEMO.toString(), text));
        long extra = 0;
        int keys = 0;
        int start = 0;
        for (int line = 0; start < text.length(); line++) {
            int end = text.indexOf('\n', start);
            if (line % EVERY == EVERY / 2 && end > start) {
                services.update(DEMO.toString(), text.substring(0, start) + text.substring(end));
                for (int typed = start + 1; typed < end; typed++) {
                    String half = text.substring(0, typed) + text.substring(end);
                    List<String> more = new ArrayList<>(keys(services.update(DEMO.toString(), half)));
                    known.forEach(more::remove);
                    assertTrue(more.size() <= MOST, () -> more + " in\n" + half);
                    extra += more.size();
                    keys++;
                }
            }
            start = end + 1;
        }
        assertTrue(keys > 50, "only " + keys + " keys");
        assertTrue(extra <= 2L * keys, extra + " more findings at " + keys + " keys");
    }

    @Test
    void should_tell_in_a_pause_what_it_did_not_tell_while_writing() throws IOException {
        String text = Files.readString(DEMO);
        EditingServices services = new EditingServices();
        services.update(DEMO.toString(), text);
        int name = text.indexOf("fault ") + "fault ".length();
        String renamed = text.substring(0, name) + "Q" + text.substring(name);

        OpenText writing = services.update(DEMO.toString(), renamed);
        OpenText paused = services.withEveryRule(writing);

        List<String> outside = unknown(paused);
        assertTrue(!outside.isEmpty());
        assertTrue(unknown(writing).isEmpty(), () -> unknown(writing).toString());
        assertEquals(outside, unknown(services.withEveryRule(new EditingServices().update(DEMO.toString(), renamed))));
    }

    private static List<String> unknown(OpenText text) {
        return text.findings().stream().filter(finding -> finding.rule().equals("unknown-name")).map(Finding::message).toList();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the help pages show of the language can be read as it stands there. */
class HelpExamplesTest {
    /** Its lines are pieces of steps; they are compared with whole texts where the language is tested. */
    private static final String PIECES = "how-do-i-say.md";
    private static final Path HELP = Path.of("..", "org.faultwright.workbench", "help");
    private static final Pattern BLOCK = Pattern.compile("(?ms)^```procedure\n(.*?)^```");

    @Test
    void should_read_every_example_of_the_help() throws IOException {
        int read = 0;
        try (Stream<Path> pages = Files.list(HELP)) {
            for (Path page : pages.filter(page -> Files.isRegularFile(page) && !page.endsWith(PIECES)).sorted().toList()) {
                for (String block : BLOCK.matcher(Files.readString(page).replace("\r\n", "\n")).results()
                        .map(found -> found.group(1)).toList()) {
                    assertEquals(List.of(), Texts.procedure("procedure Shown \"Shown\"\n" + block).problems(), page + ": " + block);
                    read++;
                }
            }
        }
        assertTrue(read >= 3, read + " examples read");
    }
}

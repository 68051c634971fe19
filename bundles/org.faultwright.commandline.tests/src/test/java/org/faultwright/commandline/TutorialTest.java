/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Follows the tutorial word for word: what it says to add is added, what it says to change is changed, and after each
 * part the check finds what the page says, neither more nor less. The list after "says:" is written by this test with
 * {@code -Dfaultwright.renew=true}; read it, for the words around it are by hand.
 */
class TutorialTest {
    private static final Path PAGE = Path.of("..", "org.faultwright.workbench", "help", "tutorial.md");
    private static final String NAME = "HarrowickFanStill.procedure";
    private static final String CHECKED = "`faultwright check " + NAME + "` says:";

    @TempDir
    private Path folder;

    private String text = "";
    private final List<List<Finding>> found = new ArrayList<>();

    @Test
    void should_find_after_each_part_what_the_page_says() throws IOException {
        String page = Files.readString(PAGE).replace("\r\n", "\n");
        String now = followed(page);
        if (Boolean.getBoolean("faultwright.renew")) {
            Files.writeString(PAGE, now);
        }

        assertEquals(now, Files.readString(PAGE).replace("\r\n", "\n"));
        assertTrue(found.size() >= 7, found.size() + " parts");
        assertEquals(List.of(), found.get(found.size() - 1), "the last part leaves nothing to find");
        assertTrue(found.get(0).stream().allMatch(finding -> finding.severity().name().equals("ADVICE")), "the first part is whole");
    }

    @Test
    void should_end_in_a_printed_card() throws IOException {
        followed(Files.readString(PAGE).replace("\r\n", "\n"));
        Path cards = folder.resolve("cards");
        StringWriter said = new StringWriter();
        int status = Faultwright.run(new PrintWriter(said), new PrintWriter(said), "publish", folder.resolve(NAME).toString(),
                "--into", cards.toString());

        assertEquals(0, status, said.toString());
        try (Stream<Path> files = Files.list(cards)) {
            List<String> names = files.map(file -> file.getFileName().toString()).toList();
            assertTrue(names.stream().anyMatch(name -> name.endsWith(".pdf")), names.toString());
            assertTrue(names.stream().anyMatch(name -> name.endsWith(".html")), names.toString());
            assertTrue(names.stream().anyMatch(name -> name.endsWith(".tree.json")), names.toString());
        }
        StringWriter order = new StringWriter();
        Faultwright.run(new PrintWriter(order), new PrintWriter(order), "order", folder.resolve(NAME).toString());
        assertTrue(order.toString().contains("no better order"), order.toString());
    }

    /** The page with its lists as they are now. */
    private String followed(String page) throws IOException {
        StringBuilder now = new StringBuilder();
        Iterator<String> lines = page.lines().iterator();
        boolean listed = false;
        while (lines.hasNext()) {
            String line = lines.next();
            if (listed && (line.startsWith("- ") || line.isEmpty())) {
                continue;
            }
            listed = line.equals(CHECKED);
            now.append(line).append('\n');
            if (line.equals("```procedure add")) {
                text = (text.isEmpty() ? "" : text.stripTrailing() + "\n\n") + block(lines, now);
            } else if (line.equals("```procedure change")) {
                change(block(lines, now));
            } else if (listed) {
                now.append('\n').append(told()).append('\n');
            }
        }
        return now.toString().strip() + "\n";
    }

    private static String block(Iterator<String> lines, StringBuilder now) {
        StringBuilder block = new StringBuilder();
        for (String line = lines.next(); !line.equals("```"); line = lines.next()) {
            block.append(line).append('\n');
            now.append(line).append('\n');
        }
        now.append("```\n");
        return block.toString();
    }

    private void change(String block) {
        for (String one : block.split("\n\n")) {
            String[] sides = one.split("\nbecomes\n");
            assertEquals(2, sides.length, one);
            String old = sides[0].stripTrailing();
            int at = text.indexOf(old);
            assertTrue(at >= 0, "there is no\n" + old);
            assertEquals(-1, text.indexOf(old, at + 1), "there is more than one\n" + old);
            text = text.replace(old, sides[1].stripTrailing());
        }
    }

    private String told() throws IOException {
        Path file = Files.writeString(folder.resolve(NAME), text);
        List<Finding> findings = new FileChecker(Optional.empty()).check(file).findings();
        found.add(findings);
        if (findings.isEmpty()) {
            return "- nothing found.\n";
        }
        StringBuilder told = new StringBuilder();
        for (Finding finding : findings) {
            told.append("- ").append(TextFindings.word(finding.severity())).append(", line ").append(finding.at().line())
                    .append(" (`").append(finding.rule()).append("`): ").append(finding.message()).append('\n');
        }
        return told.toString();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whole texts: a sketch of the whole language, and what the project ships. */
class SketchTest {
    private static final Map<String, String> LIBRARIES = Map.of("HarbourBench", Reading.resource("HarbourBench.procedure"));

    static List<Path> demo() {
        return Reading.demo();
    }

    private static Procedure sketch() {
        return (Procedure) Reading.document(Reading.resource("OllenbyFaintLabels.procedure"), LIBRARIES);
    }

    @Test
    void should_read_the_sketch_without_a_problem() {
        Procedure sketch = sketch();

        assertEquals(List.of(), sketch.problems());
        assertEquals(13, sketch.steps().size());
        assertEquals(1, sketch.libraries().size());
        assertEquals(List.of(), sketch.libraries().get(0).problems());
    }

    @Test
    void should_point_at_the_words_of_every_name() {
        List<Name> names = DocumentMeaning.names(sketch());

        assertTrue(names.size() > 100, "names examined: " + names.size());
        for (Name name : names) {
            String words = name.at().text().replace("\"", "").replaceAll("\\s+", " ");
            assertEquals(name.text(), words.equals("then") ? "done" : words);
        }
    }

    @Test
    void should_keep_every_place_within_its_text() {
        List<SourceRange> ranges = DocumentMeaning.ranges(sketch());

        assertTrue(ranges.size() > 300, "places examined: " + ranges.size());
        for (SourceRange range : ranges) {
            assertTrue(range.offset() >= 0 && range.end() <= range.source().content().length());
            assertEquals(range.text().strip(), range.text(), "no white space around");
        }
    }

    @ParameterizedTest
    @MethodSource("demo")
    void should_read_what_the_project_ships_without_a_problem(Path file) throws Exception {
        Document document = ProcedureReader.overFiles().read(file);

        assertEquals(List.of(), document.problems());
        assertEquals(document.uses().size(), document.libraries().stream()
                .filter(library -> document.uses().stream().anyMatch(use -> use.text().equals(library.name().text()))).count());
    }

    @ParameterizedTest
    @MethodSource("demo")
    void should_read_the_same_from_text_with_other_line_ends(Path file) {
        String text = Reading.content(file);

        assertEquals(DocumentMeaning.of(Reading.document(text)), DocumentMeaning.of(Reading.document(text.replace("\n", "\r\n"))));
        assertEquals(DocumentMeaning.of(Reading.document(text)), DocumentMeaning.of(Reading.document("\uFEFF" + text)));
    }

    @Test
    void should_read_alike_in_several_threads_at_once() {
        ProcedureReader reader = ProcedureReader.overFiles();
        List<Path> files = Reading.demo();
        List<String> alone = files.stream().map(file -> DocumentMeaning.of(reader.read(new SourceText(file.toString(), Reading.content(file)))))
                .toList();

        List<String> together = files.parallelStream()
                .map(file -> DocumentMeaning.of(reader.read(new SourceText(file.toString(), Reading.content(file))))).toList();

        assertEquals(alone, together);
    }
}

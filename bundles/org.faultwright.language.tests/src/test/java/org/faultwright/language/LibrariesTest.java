/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How a library is found by the name that uses it. */
@Timeout(120)
class LibrariesTest {
    private static final String USER = "procedure X uses Bench check A \"a\" { yes -> A }";

    @TempDir
    private Path folder;

    private Path write(String file, String text) throws IOException {
        Path path = folder.resolve(file);
        Files.createDirectories(path.getParent());
        return Files.writeString(path, text);
    }

    private static List<String> titles(Document document) {
        return document.libraries().stream().map(library -> library.title()).toList();
    }

    private static String bench(String title) {
        return "library Bench \"" + title + "\"";
    }

    @ParameterizedTest
    @ValueSource(strings = {"a/b/Bench", "a/b/library/Bench", "a/Bench", "a/library/Bench", "Bench", "library/Bench"})
    void should_find_a_library_in_the_folder_its_library_or_one_above(String place) throws IOException {
        Path user = write("a/b/X.procedure", USER);
        write(place + ".procedure", bench("found"));

        assertEquals(List.of("found"), titles(ProcedureReader.overFiles().read(user)));
    }

    @Test
    void should_take_the_nearest() throws IOException {
        Path user = write("a/b/X.procedure", USER);
        write("Bench.procedure", bench("far"));
        write("a/library/Bench.procedure", bench("near"));

        assertEquals(List.of("near"), titles(ProcedureReader.overFiles().read(user)));
    }

    @Test
    void should_look_upward_for_eight_levels_only() throws IOException {
        write("Bench.procedure", bench("found"));

        assertEquals(List.of("found"), titles(ProcedureReader.overFiles().read(write("1/2/3/4/5/6/7/X.procedure", USER))));
        assertEquals(List.of(), titles(ProcedureReader.overFiles().read(write("1/2/3/4/5/6/7/8/X.procedure", USER))));
    }

    @Test
    void should_leave_a_library_out_that_is_not_there() throws IOException {
        Document document = ProcedureReader.overFiles().read(write("X.procedure", USER));

        assertEquals(List.of(), document.libraries());
        assertEquals(List.of(), document.problems());
        assertEquals("Bench", document.uses().get(0).at().text());
    }

    @Test
    void should_leave_a_procedure_out_that_is_used_like_a_library() throws IOException {
        write("Bench.procedure", "procedure Bench");

        assertEquals(List.of(), ProcedureReader.overFiles().read(write("X.procedure", USER)).libraries());
    }

    @Test
    void should_find_libraries_by_the_address_of_a_file_too() throws IOException {
        Path user = write("X.procedure", USER);
        write("Bench.procedure", bench("found"));

        Document document = ProcedureReader.overFiles().read(new SourceText(user.toUri().toString(), USER));

        assertEquals(List.of("found"), titles(document));
        assertEquals(folder.resolve("Bench.procedure").toUri().toString(), document.libraries().get(0).source().name());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "untitled:1", "X", "file:", "http://x/y", "\0", "file:///%zz"})
    void should_search_nowhere_for_a_text_that_was_never_saved(String name) {
        assertEquals(List.of(), ProcedureReader.overFiles().read(new SourceText(name, "procedure X uses NoSuchBench")).libraries());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "../Bench", "a/Bench", "Bench.procedure", "C:Bench", "Bench\0", "/etc/Bench"})
    void should_not_be_led_out_of_the_folders_by_a_name(String library) throws IOException {
        write("a/Bench.procedure", bench("found"));

        assertEquals(Optional.empty(), new FileLibraryFinder().find(library, folder.resolve("b/X.procedure").toString()));
    }

    @Test
    void should_list_what_libraries_use_in_turn_nearest_first_and_once() {
        Document document = Reading.document("procedure X uses A, B", Map.of("A", "library A uses C, D", "B", "library B uses D, E",
                "C", "library C uses E", "D", "library D", "E", "library E"));

        assertEquals(List.of("A", "B", "C", "D", "E"), document.libraries().stream().map(library -> library.name().text()).toList());
    }

    @Test
    void should_end_where_libraries_use_one_another_in_a_circle() {
        Map<String, String> circle = Map.of("A", "library A uses B", "B", "library B uses C, B", "C", "library C uses A");

        assertEquals(3, Reading.document("procedure X uses A", circle).libraries().size());
    }

    @Test
    void should_not_list_a_library_among_what_it_uses_itself() {
        Document document = new ProcedureReader((library, from) -> Optional.of(new SourceText(library, "library " + library + " uses A, B")))
                .read(new SourceText("A", "library A uses A, B"));

        assertEquals(List.of("B"), document.libraries().stream().map(library -> library.name().text()).toList());
    }

    @Test
    void should_end_where_every_library_uses_another_one() {
        ProcedureReader reader = new ProcedureReader((library, from) -> Optional.of(new SourceText(library,
                "library " + library + " uses " + library + "a, " + library + "b")));

        int found = reader.read(new SourceText("x", "procedure X uses L")).libraries().size();

        assertTrue(found >= 200 && found <= 400, "found " + found);
    }

    @Test
    void should_read_a_library_again_when_its_file_has_changed() throws IOException {
        Path user = write("X.procedure", USER);
        Path bench = write("Bench.procedure", bench("old"));
        ProcedureReader reader = ProcedureReader.overFiles();
        assertEquals(List.of("old"), titles(reader.read(user)));

        Files.writeString(bench, bench("new"));
        Files.setLastModifiedTime(bench, FileTime.fromMillis(System.currentTimeMillis() + 5000));

        assertEquals(List.of("new"), titles(reader.read(user)));
    }

    @Test
    void should_give_the_very_same_library_to_every_user() throws IOException {
        write("Bench.procedure", bench("shared"));
        ProcedureReader reader = ProcedureReader.overFiles();

        Document one = reader.read(write("X.procedure", USER));
        Document other = reader.read(write("Y.procedure", USER));

        assertTrue(one.libraries().get(0) == other.libraries().get(0));
    }

    @Test
    void should_tell_where_a_file_leaves_utf_8() throws IOException {
        Path file = folder.resolve("X.procedure");
        Files.write(file, "procedure X \"Gr\u00FC\u00DFe\"".getBytes(StandardCharsets.ISO_8859_1));

        Document document = ProcedureReader.overFiles().read(file);

        assertEquals("From here on the file is not in UTF-8; save it as UTF-8 and check this place.",
                document.problems().get(0).message());
        assertEquals(15, document.problems().get(0).at().offset());
    }
}

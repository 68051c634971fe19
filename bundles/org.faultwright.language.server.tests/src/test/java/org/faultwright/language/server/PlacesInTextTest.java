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
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.ThingKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlacesInTextTest {
    private static final String TEXT = """
            // Caf\u00e9 at the harbour has three of them.
            procedure GrindsSlowly "Coffee mill grinds slowly"
            equipment "Brenholt M1 mill" boards "M1-A"
            complaints "slow", "smells hot"

            part Fuse "Fuse F1, 2 A" number "XB-12/7" stock 2
            point Rail "Motor rail, plus side"
            instrument Pen "Pen meter" { }
            indicator Lamp "Red lamp" {
                2 blinks means "Motor too hot"
                4 blinks means "Rail missing"
                source "sheet 3"
            }
            note Spin warning {
                hazard "The disc goes on turning"
            }
            routine Try "Try it" {
                exits good
                check Run "Let it run. Does it sound even?" {
                    yes -> good
                }
            }
            fault Blown "Fuse blown" {
                shows Look dark
            }
            observe Count "Count the blinks" at Lamp {
                2 blinks -> Cool
            }
            do Cool "Let it cool; check the fuse /* not the lamp */" { // \u03a9 nothing
                then -> End
            }
            """;

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "FUSE                | EVERYTHING  | part 6; fault 23; step 29",
        "cafe                | EVERYTHING  | comment 1",
        "CAF\u00c9           | EVERYTHING  | comment 1",
        "cafe\u0301          | EVERYTHING  | comment 1",
        "xb-12               | EVERYTHING  | part number 6",
        "xb-12               | PARTS       | part number 6",
        "fuse                | FAULTS      | fault 23",
        "fuse f1             | EVERYTHING  | part 6",
        "blinks              | CODES       | code 10; code 11; step 27",
        "hot                 | CODES       | code 10",
        "turning             | NOTES       | note 15",
        "even                | STEPS       | step 19",
        "smells              | TITLES      | complaint 4",
        "brenholt blown      | EVERYTHING  | fault 23",
        "brenholt fuse       | EVERYTHING  | part 6; fault 23; step 29",
        "mill lamp           | EVERYTHING  | indicator 9; step 26; step 29",
        "brenholt mill       | EVERYTHING  | equipment 3",
        "spin turning        | EVERYTHING  | note 14; note 15",
        "'\"too hot\"'        | EVERYTHING  | code 10",
        "'\"hot too\"'        | EVERYTHING  | ''",
        "ohm                 | EVERYTHING  | ''",
        "\u2126 nothing      | EVERYTHING  | comment 29",
        "'not the lamp'      | STEPS       | step 29",
        "''                  | EVERYTHING  | ''",
        "''                  | PARTS       | part 6",
        "''                  | CODES       | indicator 9; code 10; code 11",
        "''                  | STEPS       | step 19; step 26; step 29",
        "''                  | COMMENTS    | comment 1",
        "''                  | INSTRUMENTS | instrument 8",
        "''                  | POINTS      | point 7"})
    void should_find(String typed, SearchScope sought, String expected) {
        assertEquals(expected, PlacesInText.of(new SourceText("/x/Mill.procedure", TEXT), WantedWords.of(typed), sought).stream()
                .map(place -> place.kind().word() + " " + place.at().line()).collect(Collectors.joining("; ")));
    }

    @Test
    void should_select_the_words_as_they_are_written() {
        FoundPlace cafe = PlacesInText.of(new SourceText("Mill.procedure", TEXT), WantedWords.of("cafe at"), SearchScope.EVERYTHING).get(0);
        FoundPlace ligature = PlacesInText.of(new SourceText("M", "// o\ufb00ice hours"), WantedWords.of("ice h"), SearchScope.EVERYTHING).get(0);

        assertEquals("Caf\u00e9", cafe.at().text());
        assertEquals("ice", ligature.at().text());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\"", "{{{{", "part", "fault fault fault \"", "/* never closed part X", "\r\r\n", "routine R \"t\" { check check {"})
    void should_find_in_damaged_texts(String text) {
        for (SearchScope sought : SearchScope.values()) {
            PlacesInText.of(new SourceText("Broken.procedure", text), WantedWords.of("part"), sought);
            PlacesInText.of(new SourceText("Broken.procedure", text), WantedWords.of(""), sought);
        }
        assertEquals(text.contains("part"), !PlacesInText.of(new SourceText("x", text), WantedWords.of("part"), SearchScope.EVERYTHING).isEmpty());
    }

    /** Against searching each line by itself: whatever a line holds is found, and a line that holds none is not. */
    @Test
    void should_find_in_the_demo_what_a_plain_search_of_its_lines_finds() throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(Path.of("..", "..", "procedures-demo"))) {
            files = all.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
        Random chance = new Random(11);
        int places = 0;
        for (Path file : files) {
            SourceText source = new SourceText(file.toString(), Files.readString(file));
            List<String> lines = source.content().lines().toList();
            for (int round = 0; round < 60; round++) {
                String[] words = lines.get(chance.nextInt(lines.size())).split("[^\\p{IsAlphabetic}]+");
                String word = words.length == 0 ? "" : words[words.length - 1];
                if (!word.isEmpty()) {
                    List<Integer> expected = Stream.iterate(1, line -> line + 1).limit(lines.size())
                            .filter(line -> lines.get(line - 1).toLowerCase(Locale.ROOT).contains(word.toLowerCase(Locale.ROOT))).toList();
                    List<FoundPlace> found = PlacesInText.of(source, WantedWords.of(word), SearchScope.EVERYTHING);
                    assertEquals(expected, found.stream().map(place -> place.at().line()).sorted().toList(), word + " in " + file);
                    found.forEach(place -> assertEquals(word.toLowerCase(Locale.ROOT), place.at().text().toLowerCase(Locale.ROOT)));
                    places += found.size();
                }
            }
        }
        assertTrue(files.size() > 8 && places > 1_000, places + " places");
    }

    /** The kinds are told without parsing; the outline comes from the parser. */
    @Test
    void should_list_the_declarations_of_the_demo_as_the_parser_reads_them() throws IOException {
        Path file = Path.of("..", "..", "procedures-demo", "OllenbyFaintLabels.procedure");
        SourceText source = new SourceText(file.toString(), Files.readString(file));
        List<OutlineItem> outline = Outline.of(new EditingServices().read(source).document());

        for (SearchScope sought : List.of(SearchScope.FAULTS, SearchScope.PARTS, SearchScope.POINTS)) {
            ThingKind kind = sought == SearchScope.FAULTS ? ThingKind.FAULT : sought == SearchScope.PARTS ? ThingKind.PART : ThingKind.POINT;
            assertEquals(outline.stream().filter(item -> item.kind() == kind).map(OutlineItem::label).toList(),
                    PlacesInText.of(source, WantedWords.of(""), sought).stream().map(FoundPlace::name).toList());
        }
    }

    @Test
    void should_find_where_something_of_a_library_is_used() throws IOException {
        EditingServices services = new EditingServices();
        Path folder = Path.of("..", "..", "procedures-demo").toRealPath();
        Path file = folder.resolve("library/HarbourBench.procedure");
        OpenText library = services.unchecked(new SourceText(file.toString(), Files.readString(file)));
        Name declared = library.nameAt(library.content().indexOf("HandMeter")).orElseThrow().declared().orElseThrow();
        Path user = folder.resolve("OllenbyFaintLabels.procedure");
        OpenText text = services.unchecked(new SourceText(user.toString(), Files.readString(user)));

        assertEquals("instrument, declared here", PlacesInText.naming(library, declared).get(0).what());
        List<FoundPlace> uses = PlacesInText.naming(text, declared);
        assertEquals(text.content().split("using HandMeter").length - 1, uses.size());
        assertTrue(!uses.isEmpty() && uses.stream().allMatch(use -> use.what().equals("step") && use.at().text().equals("HandMeter")),
                uses.toString());
    }
}

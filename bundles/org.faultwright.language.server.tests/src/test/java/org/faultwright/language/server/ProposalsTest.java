/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.procedure.ThingKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProposalsTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "dark  -> RailVoltage; dark -> Rail; RailVoltage",
        "within  -> Replace; within -> Rep; Replace",
        "at Rail using; at Ra; Rail",
        "using HandMeter; using Han; HandMeter",
        "finds Blown; finds Bl; Blown",
        "yes -> Found; yes -> Bl; Blown",
    })
    void should_propose_the_name_that_fits_the_place(String words, String typed, String expected) {
        Cursor cursor = Cursor.after(words, typed);

        List<String> labels = labels(cursor);

        assertTrue(labels.contains(expected), () -> typed + " got " + labels);
    }

    @Test
    void should_write_a_whole_measurement_with_blanks_in_reading_order() {
        Cursor cursor = Cursor.after("begin at SeeIt\n", "begin at SeeIt\n\nmeas");

        Proposal whole = Proposals.at(cursor.text(), cursor.offset()).stream()
                .filter(one -> one.kind() == ThingKind.STEP && one.keyword().equals("measure")).findFirst().orElseThrow();

        assertTrue(whole.insert().contains("${1:"), whole.insert());
        assertTrue(whole.insert().contains("->"), whole.insert());
        assertFalse(whole.plainInsert().contains("${"), whole.plainInsert());
        assertEquals("meas", cursor.text().content().substring(whole.from(), whole.to()));
    }

    @Test
    void should_not_throw_at_any_place_of_a_text() {
        OpenText text = Cursor.open(Cursor.LAMP);

        for (int offset = 0; offset <= text.content().length(); offset += 7) {
            for (Proposal one : Proposals.at(text, offset)) {
                assertTrue(one.from() <= one.to() && one.to() <= text.content().length(), one.toString());
            }
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "dc voltage at; dc volt; dc voltage",
        "dc voltage at; dc ; dc voltage",
        "dc voltage at; ac voltage r; ac voltage rms",
        "24 V +/-; 24 m; mV",
        "24 V +/-; 24m; mV",
        "24 V +/-; at le; at least",
        "takes 2 min; takes 2 mi; min",
        "using HandMeter; us; using",
        "using HandMeter; using HandMeter ran; range",
        "verifies repair; ver; verifies repair",
        "verifies repair; verifies re; verifies repair",
        "finds nothing; finds noth; finds nothing",
        "light -> NotSeen; light -> NotSeen at m; most",
        "shows  SeeIt dark; shows SeeIt dark o; or",
        "accuracy 0.5 % of reading; accuracy 0.5 % of rea; reading",
        "+ 2 digits; + 2 dig; digits",
        "carries up to; carries u; up",
        "starts off; starts o; off",
        "perform; perf; perform",
    })
    void should_propose_what_is_half_typed(String words, String typed, String expected) {
        Cursor cursor = words.equals("perform") ? Cursor.after("begin at SeeIt\n", "begin at SeeIt\n\n" + typed) : Cursor.after(words, typed);

        assertTrue(labels(cursor).contains(expected), () -> typed + " got " + labels(cursor));
    }

    @Test
    void should_write_over_all_the_words_of_what_is_half_typed() {
        Cursor cursor = Cursor.after("dc voltage at", "dc volt");

        Proposal proposal = Proposals.at(cursor.text(), cursor.offset()).stream().filter(one -> one.label().equals("dc voltage")).findFirst().orElseThrow();

        assertEquals("dc volt", cursor.text().content().substring(proposal.from(), proposal.to()));
    }

    /** Every word of the language and every name that is told of elsewhere: a writer sees the rest of it from its first half on. */
    @Test
    void should_propose_the_words_of_the_demo_when_they_are_half_typed() throws IOException {
        Pattern token = Pattern.compile("//[^\\n]*|\"[^\"\\n]*\"?|([\\p{L}_]\\w+(?:-rms)?)|\\S");
        List<String> missed = new ArrayList<>();
        int tried = 0;
        int met = 0;
        for (Path file : demo()) {
            String text = Files.readString(file);
            EditingServices services = new EditingServices();
            Set<String> known = names(services.update(file.toString(), text));
            String before = "";
            for (Matcher word = token.matcher(text); word.find(); before = word.group()) {
                boolean declares = before.equals("exits") || Keywords.BEGINNINGS.contains(before) && !Set.of("uses", "otherwise").contains(before);
                if (word.group(1) == null || declares || !Keywords.ALL.contains(word.group()) && !known.contains(word.group()) || met++ % 23 != 0) {
                    continue;
                }
                tried++;
                int cursor = word.start() + word.group().length() / 2;
                String half = text.substring(0, cursor) + text.substring(word.end());
                String rest = text.substring(cursor, word.end());
                if (Proposals.at(services.update(file.toString(), half), cursor).stream()
                        .noneMatch(one -> one.label().startsWith(half.substring(one.from(), cursor).replaceAll("\\s+", " ") + rest))) {
                    missed.add(file.getFileName() + ": " + before + " " + word.group());
                }
            }
        }

        assertTrue(tried > 100, tried + " words");
        assertEquals(List.of(), missed);
    }

    private static List<Path> demo() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("..", "..", "procedures-demo"))) {
            return files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
    }

    private static Set<String> names(OpenText text) {
        Set<String> names = new HashSet<>();
        text.document().own().byKind().values().forEach(declared -> declared.forEach(one -> names.add(one.name().text())));
        text.document().graphs().forEach(graph -> graph.writtenSteps().forEach(step -> names.add(step.name().text())));
        return names;
    }

    @Test
    void should_propose_the_libraries_beside_a_text_and_no_procedure(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("OurBench.procedure"), "// ours\nlibrary OurBench \"Our bench\"\n");
        Files.writeString(folder.resolve("Other.procedure"), "procedure Other \"Another\"\n");
        String text = "procedure Mine \"Mine\"\nuses O";

        List<Proposal> proposals = Proposals.at(new EditingServices().update(folder.resolve("Mine.procedure").toString(), text), text.length());

        assertEquals(List.of("OurBench"), proposals.stream().map(Proposal::label).toList());
    }

    @Test
    void should_propose_what_begins_a_text_where_there_is_none() {
        assertEquals(List.of("library", "procedure"), at("").stream().sorted().toList());
        assertEquals(List.of("procedure"), at("// new\npro"));
    }

    @Test
    void should_propose_conditions_and_their_values_in_a_set_up_and_set_ups_for_the_unit() {
        String bench = "procedure P \"p\"\ncondition Supply { off, on }\ncondition Cover { fitted, removed }\nsetup dead \"d\" { Supply off }\n";
        assertEquals(List.of("Supply", "Cover"), at(bench + "setup open \"o\" { "));
        assertEquals(List.of("off", "on"), at(bench + "setup open \"o\" { Supply "));
        assertEquals(List.of("Supply", "Cover"), at(bench + "setup open \"o\" { Supply off, "));
        assertEquals(List.of("fitted", "removed"), at(bench + "setup open \"o\" { Supply off, Cover "));
        assertEquals(List.of("dead"), at(bench + "check Look \"l\" {\n    unit "));
    }

    private static List<String> at(String text) {
        return Proposals.at(Cursor.open(text), text.length()).stream().map(Proposal::label).toList();
    }

    private static List<String> labels(Cursor cursor) {
        return Proposals.at(cursor.text(), cursor.offset()).stream().map(Proposal::label).toList();
    }
}

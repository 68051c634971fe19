/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.examples.WalkedExample.Reading;
import org.faultwright.analysis.examples.WalkedExample.Result;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.ValueText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A walk that is kept as an example goes the same way again when the text is read. */
class WalkedExampleTest {
    private static final int WALKS_EACH = 40;
    private static final int LONGEST = 300;

    static Stream<Path> demos() throws IOException {
        try (Stream<Path> all = Files.list(Path.of("..", "..", "procedures-demo"))) {
            return all.filter(file -> file.toString().endsWith(".procedure")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("demos")
    void should_go_the_same_way_again(Path file) throws IOException {
        Procedure before = (Procedure) ProcedureReader.overFiles().read(file);
        Random random = new Random(20261126);
        int readings = 0;
        for (int i = 0; i < WALKS_EACH; i++) {
            List<Result> results = new ArrayList<>();
            Walk walk = walked(before, random, results);
            readings += (int) results.stream().filter(result -> result.reading().isPresent()).count();
            Fix fix = WalkedExample.of(before, "Walked \"once\" \\ more", results, (Step.Conclude) walk.step());

            Procedure after = (Procedure) ProcedureReader.overFiles().read(new SourceText(file.toString(), fix.applied()));

            assertEquals(before.problems().size(), after.problems().size(), fix.edits().get(0).replacement());
            List<ExampleRun> runs = ExampleCoverage.of(after).runs();
            ExampleRun run = runs.get(runs.size() - 1);
            assertEquals("Walked \"once\" \\ more", run.example().title().text());
            assertEquals(Optional.empty(), run.problem().map(ExampleRun.Problem::failure), fix.edits().get(0).replacement());
            assertEquals(Stream.concat(results.stream().map(result -> result.step().name().text() + " " + result.outcome().key()),
                    Stream.of(walk.label() + " ")).toList(), run.path().stream().map(WalkedExampleTest::told).toList());
        }
        assertTrue(readings > 0 || before.steps().stream().noneMatch(Step.Measure.class::isInstance), "no reading was ever entered");
    }

    private static String told(PathStep step) {
        return step.step() + " " + step.outcome();
    }

    private static Walk walked(Procedure procedure, Random random, List<Result> results) {
        Walk walk = Walk.start(procedure).orElseThrow();
        for (int moves = 0; !walk.isEnd(); moves++) {
            assertTrue(moves < LONGEST, "no end");
            if (walk.canEnter()) {
                walk = walk.entered();
                continue;
            }
            Step step = walk.step();
            Optional<ReadingEntry> entry = step instanceof Step.Measure && random.nextInt(4) > 0 ? ReadingEntry.of(procedure, step) : Optional.empty();
            Optional<Exact> base = entry.map(one -> near(one, random));
            Outcome outcome = base.flatMap(value -> entry.get().judge(step, value).outcome())
                    .orElseGet(() -> step.outcomes().get(random.nextInt(step.outcomes().size())));
            Optional<Reading> reading = base.filter(value -> entry.get().judge(step, value).outcome().isPresent())
                    .map(value -> new Reading(ValueText.of(value, entry.get().unit()), Optional.of(value)));
            int told = walk.evidence().size();
            boolean own = walk.callers().isEmpty();
            walk = walk.take(outcome, base);
            if (walk.evidence().size() > told) {
                Suspects.Evidence last = walk.evidence().get(told);
                results.add(new Result(last.step(), last.step().outcomes().stream().filter(one -> one.key().equals(last.outcome())).findFirst().orElseThrow(),
                        own ? reading : Optional.empty()));
            }
        }
        return walk;
    }

    private static Exact near(ReadingEntry entry, Random random) {
        List<Exact> ends = entry.bands().stream().map(ReadingEntry.Band::values).flatMap(values -> Stream.of(values.lower(), values.upper()))
                .flatMap(Optional::stream).map(Bound::value).map(entry::fromBase).toList();
        Exact near = ends.isEmpty() ? Exact.of(random.nextInt(20)) : ends.get(random.nextInt(ends.size()));
        Exact aside = List.of(Exact.ZERO, Exact.ratio(1, 100), Exact.ratio(-1, 100), Exact.of(2), Exact.of(-2)).get(random.nextInt(5));
        return entry.toBase(Exact.of(near.plus(aside).toDecimal(4)));
    }

    // ---- what is written

    private static final String TEXT = """
            procedure P "P"
            fault Dead "Dead" { shows Look dark, Volts below }
            fault Worn "Worn" { shows Look dim }
            point Rail "Rail" carries up to 30 V dc
            check Look "Look" { bright normal -> Again dim -> Again dark -> Volts anything else -> Done }
            check Again "Again" { yes normal -> Look at most 2 times, else Done no -> Done }
            measure Volts "Volts" { dc voltage at Rail expects 5 V +/- 5 % below -> Gone within -> Done above -> Done }
            conclude Gone "Gone" { finds Dead }
            conclude Done "Done" { finds nothing }
            """;

    private static Result result(Procedure procedure, String step, String outcome) {
        Step found = procedure.steps().stream().filter(one -> one.name().text().equals(step)).findFirst().orElseThrow();
        return new Result(found, found.outcomes().stream().filter(one -> one.key().equals(outcome)).findFirst().orElseThrow(), Optional.empty());
    }

    private static Result read(Procedure procedure, String step, String outcome, String words, String base) {
        return new Result(result(procedure, step, outcome).step(), result(procedure, step, outcome).outcome(),
                Optional.of(new Reading(words, Optional.ofNullable(base).map(Exact::of))));
    }

    private static String written(String text, String end, Result... results) {
        Procedure procedure = Texts.procedure(text);
        Step.Conclude conclude = (Step.Conclude) procedure.steps().stream().filter(one -> one.name().text().equals(end)).findFirst().orElseThrow();
        return WalkedExample.of(procedure, "T", List.of(results), conclude).edits().get(0).replacement();
    }

    @Test
    void should_keep_the_reading_and_name_the_fault() {
        Procedure p = Texts.procedure(TEXT);

        assertEquals("\nexample \"T\" of Dead {\n    Look dark, Volts 0.3 V\n    ends at Gone\n}\n",
                written(TEXT, "Gone", result(p, "Look", "dark"), read(p, "Volts", "below", "0.3 V", "0.3")));
    }

    @Test
    void should_tell_a_reading_by_its_result_where_the_text_alone_would_read_it_otherwise() {
        Procedure p = Texts.procedure(TEXT);

        assertEquals("\nexample \"T\" {\n    Look dark, Volts above\n    ends at Done\n}\n",
                written(TEXT, "Done", result(p, "Look", "dark"), read(p, "Volts", "above", "5.1 V", "5.1")));
        assertEquals("\nexample \"T\" {\n    Look dark, Volts OL\n    ends at Done\n}\n",
                written(TEXT, "Done", result(p, "Look", "dark"), read(p, "Volts", "above", "OL", null)));
    }

    @Test
    void should_say_nothing_of_what_a_sound_unit_shows_but_for_a_later_visit() {
        Procedure p = Texts.procedure(TEXT);

        assertEquals("\nexample \"T\" {\n    Look bright, Again yes, Look dim, Again no\n    ends at Done\n}\n",
                written(TEXT, "Done", result(p, "Look", "bright"), result(p, "Again", "yes"), result(p, "Look", "dim"), result(p, "Again", "no")));
        assertEquals("\nexample \"T\" {\n    ends at Done\n}\n", written(TEXT, "Done", result(p, "Look", "bright"), result(p, "Again", "yes")));
    }

    @Test
    void should_write_words_for_anything_else_and_keep_the_ends_of_lines() {
        Procedure p = Texts.procedure(TEXT);

        assertEquals("\r\nexample \"T\" {\r\n    Look \"something else\"\r\n    ends at Done\r\n}\r\n",
                written(TEXT.replace("\n", "\r\n"), "Done", result(p, "Look", "anything else")));
        assertEquals("\n\nexample", written(TEXT.stripTrailing(), "Done").substring(0, 9));
    }

    @Test
    void should_find_a_title_that_no_example_has() {
        Procedure p = Texts.procedure(TEXT + "example \"Gone\" { Look dark, Volts below ends at Gone }\nexample \"Gone, 2\" { Look dark, Volts below ends at Gone }\n");

        assertEquals("Gone, 3", WalkedExample.title(p, (Step.Conclude) p.steps().get(3)));
        assertEquals("Done", WalkedExample.title(p, (Step.Conclude) p.steps().get(4)));
    }
}

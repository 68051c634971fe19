/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo bench is the project's first customer; its README is held against what is really there. */
class DemoProceduresTest {
    private static final Path DEMO = Path.of("..", "..", "procedures-demo");
    private static final Pattern STEPS = Pattern.compile("^\\| `(\\w+)` \\| (\\d+) \\|", Pattern.MULTILINE);
    private static final Pattern FINDING = Pattern.compile("^\\| `(\\w+)` \\| `([\\w-]+)` \\| (advice|warning) \\|", Pattern.MULTILINE);
    private static final Pattern CLOSES = Pattern.compile("^closes by ", Pattern.MULTILINE);

    static Stream<Path> files() throws IOException {
        try (Stream<Path> all = Files.walk(DEMO)) {
            return all.filter(file -> file.toString().endsWith(".procedure")).sorted().toList().stream();
        }
    }

    static Stream<Path> procedures() throws IOException {
        return files().filter(file -> file.getParent().equals(DEMO));
    }

    @ParameterizedTest
    @MethodSource("files")
    void should_be_read_without_problems(Path file) throws IOException {
        assertEquals(List.of(), read(file).problems());
    }

    @ParameterizedTest
    @MethodSource("files")
    void should_have_only_the_findings_that_the_readme_tells_of(Path file) throws IOException {
        String told = FINDING.matcher(readme()).results().filter(row -> row.group(1).equals(name(file)))
                .map(row -> row.group(3) + " " + row.group(2)).sorted().collect(Collectors.joining("\n"));

        String found = new Checker().check(read(file)).stream()
                .map(finding -> finding.severity().name().toLowerCase(Locale.ROOT) + " " + finding.rule())
                .distinct().sorted().collect(Collectors.joining("\n"));

        assertEquals(told, found);
    }

    @ParameterizedTest
    @MethodSource("procedures")
    void should_end_each_way_to_conclude_in_some_example(Path file) throws IOException {
        assertEquals(List.of(), ExampleCoverage.of((Procedure) read(file)).unreached());
    }

    @ParameterizedTest
    @MethodSource("procedures")
    void should_state_the_time_of_every_step(Path file) throws IOException {
        assertEquals(List.of(), TimeStudy.of((Procedure) read(file)).untimed());
    }

    @Test
    void should_have_as_many_steps_as_the_readme_says() throws IOException {
        Map<String, Integer> told = new TreeMap<>();
        for (Matcher row = STEPS.matcher(readme()); row.find();) {
            told.put(row.group(1), Integer.valueOf(row.group(2)));
        }

        Map<String, Integer> counted = new TreeMap<>();
        for (Path file : procedures().toList()) {
            counted.put(name(file), ((Procedure) read(file)).namedSteps().size());
        }

        assertEquals(told, counted);
        assertTrue(counted.size() >= 7 && counted.values().stream().allMatch(steps -> steps >= 12 && steps <= 40),
                counted.toString());
    }

    @Test
    void should_have_as_many_instruments_and_closing_routines_as_the_readme_says() throws IOException {
        Library bench = (Library) read(DEMO.resolve("library").resolve("HarbourBench.procedure"));
        List<String> closing = procedures().map(DemoProceduresTest::read).map(Procedure.class::cast)
                .filter(one -> CLOSES.matcher(one.source().content()).find()).map(one -> one.name().text()).toList();

        assertTrue(readme().contains(bench.own().instruments().size() + " instruments with their accuracy statements"),
                "the library has " + bench.own().instruments().size() + " instruments");
        assertEquals(1, closing.size(), closing.toString());
        assertTrue(readme().contains("`" + closing.get(0) + "` has a routine of its own"), closing.toString());
    }

    @Test
    void should_have_a_showpiece_that_is_released_and_names_six_faults_or_more() throws IOException {
        List<Procedure> released = procedures().map(DemoProceduresTest::read).map(Procedure.class::cast)
                .filter(one -> one.revision().map(Revision::status).filter(Revision.Status.RELEASED::equals).isPresent()).toList();

        assertEquals(List.of("HavendyneColdIron"), released.stream().map(one -> one.name().text()).toList());
        assertTrue(released.get(0).faults().size() >= 6, released.get(0).faults().toString());
    }

    @Test
    void should_find_the_look_that_stands_too_late_and_save_what_the_readme_says() throws IOException {
        Finding advice = new Checker().check(read(DEMO.resolve("LundavikTillDrawer.procedure"))).stream()
                .filter(finding -> finding.rule().equals("better-order")).findFirst().orElseThrow();

        String saved = "25 min on average instead of 37.2 min";
        assertTrue(advice.message().contains(saved) && advice.message().contains("\"KeyLook\" first"), advice.message());
        assertTrue(readme().contains(saved), "the README tells other figures than " + advice.message());
    }

    /** What the README says of the instruments that were thought of first. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            BrinmoorDeadCharger    | BenchMeter range 200 mV                     | HandMeter range 600 mV | instrument-cannot-decide
            TarnholmWeakFlash      | DividerTap against Chassis using BenchMeter range 2 V | DividerTap against Chassis using HandMeter range 6 V | loading-eats-tolerance
            TarnholmWeakFlash      | BenchMeter range 20 ohm                     | HandMeter range 600 ohm | instrument-cannot-decide
            OrrisbyScaleReadsWrong | BenchMeter range 20 V                       | HandMeter range 6 V     | instrument-cannot-decide
            OrrisbyScaleReadsWrong | BenchMeter range 2 kohm                     | HandMeter range 600 ohm | instrument-cannot-decide
            HavendyneColdIron      | BenchMeter range 200 ohm                    | HandMeter range 600 ohm | instrument-cannot-decide
            """)
    void should_object_when_the_first_instrument_is_put_back(String file, String now, String first, String rule) throws IOException {
        Path path = DEMO.resolve(file + ".procedure");
        String text = Files.readString(path);
        assertTrue(text.contains(now), now);

        Document changed = ProcedureReader.overFiles().read(new SourceText(path.toString(), text.replace(now, first)));
        List<String> found = new Checker().check(changed).stream().map(Finding::rule).toList();

        assertTrue(found.contains(rule), found.toString());
    }

    private static Document read(Path file) {
        try {
            return ProcedureReader.overFiles().read(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static String readme() throws IOException {
        return Files.readString(DEMO.resolve("README.md"));
    }

    private static String name(Path file) {
        return file.getFileName().toString().replace(".procedure", "");
    }
}

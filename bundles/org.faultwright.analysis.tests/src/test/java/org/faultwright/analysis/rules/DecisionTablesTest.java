/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.quantity.Bands;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Units;
import org.junit.jupiter.api.Test;

/**
 * Bands against decision tables analysed by org.kie:kie-dmn-validation 10.2.0, an independent library: the
 * same gaps, and the same values in more than one band.
 */
class DecisionTablesTest {
    private static final Pattern INTERVAL = Pattern.compile("([\\[(])(-?[0-9.]+?|-inf)\\.\\.(-?[0-9.]+?|\\+inf)([\\])])");

    /** The tables are written in quarters, so that eighths tell all intervals apart. */
    private static final List<Exact> EIGHTHS = IntStream.rangeClosed(-24, 96)
            .mapToObj(eighths -> Exact.ratio(eighths, 8)).toList();

    private record Case(List<String> bands, String gaps, String overlaps) {
        String procedure() {
            String lines = bands.stream().map(Case::words).collect(Collectors.joining(" -> Done\n", "", " -> Done\n"));
            return "procedure Split \"Split\" measure Split \"Split\" { dc voltage\n" + lines
                    + "}\nconclude Done \"Done\" { finds nothing }";
        }

        private static String words(String band) {
            if (band.startsWith("<") || band.startsWith(">")) {
                String end = band.replaceAll("[<>= ]", "") + " V";
                return (band.startsWith("<=") ? "at most " : band.startsWith("<") ? "under " : band.startsWith(">=")
                        ? "at least " : "over ") + end;
            }
            Matcher ends = INTERVAL.matcher(band);
            assertTrue(ends.matches(), band);
            return (ends.group(1).equals("(") ? "over " : "") + ends.group(2) + " V .. "
                    + (ends.group(4).equals(")") ? "under " : "")
                    + ends.group(3) + " V";
        }
    }

    private static List<Case> cases() throws IOException {
        try (InputStream file = DecisionTablesTest.class.getResourceAsStream("decision-tables.txt")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8).lines().filter(line -> !line.startsWith("#"))
                    .map(line -> line.split("\\|", -1))
                    .map(parts -> new Case(Arrays.stream(parts[0].split(";")).map(String::strip).toList(), parts[1],
                    parts[2])).toList();
        }
    }

    private static List<Interval> intervals(String text) {
        return INTERVAL.matcher(text).results().map(found -> new Interval(
                end(found.group(2), found.group(1).equals("[")), end(found.group(3), found.group(4).equals("]")))).toList();
    }

    private static Optional<Bound> end(String value, boolean included) {
        return value.endsWith("inf") ? Optional.empty() : Optional.of(new Bound(Exact.of(value), included));
    }

    @Test
    void should_report_the_gaps_that_an_independent_library_finds() throws IOException {
        List<Case> cases = cases();
        assertEquals(120, cases.size());
        for (Case table : cases) {
            List<String> expected = intervals(table.gaps()).stream()
                    .map(gap -> "No band of \"Split\" takes " + IntervalText.of(gap, Units.named("V")) + ".").sorted().toList();
            List<String> found = Texts.findings("hole-between-bands", table.procedure()).stream()
                    .map(Finding::message).sorted().toList();
            assertEquals(expected, found, table.bands().toString());
        }
    }

    @Test
    void should_report_the_overlaps_that_an_independent_library_finds() throws IOException {
        for (Case table : cases()) {
            List<Interval> expected = intervals(table.overlaps());
            Subject subject = new Subject(Texts.document(table.procedure()), Optional.empty());
            Readings readings = Readings.of(subject).get(0);
            List<Exact> found = inAny(readings.partition().overlaps().stream().map(Bands.Overlap::values).toList());
            assertTrue(found.containsAll(inAny(expected)), table.bands().toString());
            // The library leaves out a single shared value where a third rule begins beside it; counting does not.
            assertEquals(EIGHTHS.stream().filter(value -> holding(value, readings) > 1).toList(), found, table.bands()
                    .toString());
            assertEquals(expected.isEmpty(), Texts.findings("overlapping-bands", table.procedure()).isEmpty(),
                    table.bands().toString());
        }
    }

    private static long holding(Exact value, Readings readings) {
        return readings.bands().stream().filter(band -> band.values().contains(value)).count();
    }

    private static List<Exact> inAny(List<Interval> intervals) {
        return EIGHTHS.stream().filter(value -> intervals.stream().anyMatch(interval -> interval.contains(value))).toList();
    }

    @Test
    void should_write_bands_anew_so_that_holes_and_overlaps_go() throws IOException {
        long tried = 0;
        for (Case table : cases()) {
            for (String rule : List.of("hole-between-bands", "overlapping-bands")) {
                List<Finding> before = Texts.findings(rule, table.procedure());
                for (Finding finding : before) {
                    for (String fixed : finding.fixes().stream().map(fix -> fix.applied()).toList()) {
                        List<String> left = Texts.findings(rule, fixed).stream().map(Finding::message).toList();
                        assertTrue(Stream.of(finding.message()).noneMatch(left::contains), () -> finding.message()
                                + "\n" + fixed);
                        tried++;
                    }
                }
            }
        }
        assertTrue(tried > 200, "only " + tried + " fixes were tried");
    }
}

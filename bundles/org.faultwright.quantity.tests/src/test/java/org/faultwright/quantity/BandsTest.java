/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

import org.junit.jupiter.api.Test;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class BandsTest {
    private static final Unit VOLT = Units.named("V");

    static Interval closed(String low, String high) {
        return Interval.from(Bound.including(Exact.of(low)), Bound.including(Exact.of(high)));
    }

    static Interval over(String low, String high) {
        return Interval.from(Bound.excluding(Exact.of(low)), Bound.including(Exact.of(high)));
    }

    private static List<String> holes(List<Interval> bands) {
        return Bands.partition(bands, Interval.EVERYTHING).holes().stream()
                .map(hole -> IntervalText.of(hole.values(), VOLT)).toList();
    }

    // Decision-table literature: 17–30 and 29–40 overlap at 29; 17–30 and 32–40 leave 31.
    @Test
    void should_name_an_overlap_and_a_gap() {
        Bands.Partition overlapping = Bands.partition(List.of(closed("17", "30"), closed("29", "40")), closed("17", "40"));
        assertEquals(List.of(new Bands.Overlap(closed("29", "30"), 0, 1)), overlapping.overlaps());
        assertTrue(overlapping.isComplete());

        Bands.Partition gap = Bands.partition(List.of(closed("32", "40"), closed("17", "30")), closed("17", "40"));
        assertEquals(1, gap.holes().size());
        assertTrue(gap.holes().get(0).values().contains(Exact.of(31)));
        assertEquals(OptionalInt.of(1), gap.holes().get(0).below());
        assertEquals(OptionalInt.of(0), gap.holes().get(0).above());
        assertTrue(gap.overlaps().isEmpty());
    }

    // The same four bands given to a decision-table analysis of another hand (kie-dmn-validation 10.2): holes [4.75] and (5.5..6].
    @Test
    void should_find_the_holes_that_a_decision_table_analysis_finds() {
        List<Interval> bands = List.of(Interval.below(Bound.excluding(Exact.of("4.75"))), over("4.75", "5.25"),
                over("5.25", "5.5"), Interval.above(Bound.excluding(Exact.of(6))));

        assertEquals(List.of("exactly 4.75 V", "5.5 V to 6 V, lower end excluded"), holes(bands));
    }

    @Test
    void should_see_bands_that_meet_as_neither_hole_nor_overlap() {
        Bands.Partition partition = Bands.partition(List.of(Interval.below(Bound.excluding(Exact.of(15))),
                Interval.from(Bound.including(Exact.of(15)), Bound.excluding(Exact.of(90))),
                Interval.above(Bound.including(Exact.of(90)))), Interval.EVERYTHING);

        assertTrue(partition.isComplete() && partition.overlaps().isEmpty());
    }

    @Test
    void should_report_one_shared_end() {
        Bands.Partition partition = Bands.partition(List.of(closed("0", "5"), closed("5", "10")), closed("0", "10"));
        assertEquals("exactly 5 V", IntervalText.of(partition.overlaps().get(0).values(), VOLT));
    }

    @Test
    void should_see_nothing_outside_what_is_shown() {
        assertTrue(Bands.partition(List.of(closed("0", "60")), closed("0", "60")).isComplete());
        assertEquals(2, Bands.partition(List.of(closed("1", "59")), closed("0", "60")).holes().size());
        assertEquals(List.of("every value"), holes(List.of()));
    }

    @Test
    void should_point_out_bands_without_a_value() {
        Bands.Partition partition = Bands.partition(List.of(closed("5", "4"), closed("0", "9")), closed("0", "9"));
        assertEquals(List.of(0), partition.empty());
        assertTrue(partition.isComplete());
    }

    @Test
    void should_take_thousands_of_equal_bands() {
        Bands.Partition partition = Bands.partition(new ArrayList<>(Collections.nCopies(20_000, closed("0", "1"))),
                closed("0", "1"));
        assertEquals(19_999, partition.overlaps().size());
    }

    @Provide
    Arbitrary<Interval> bands() {
        Arbitrary<Optional<Bound>> end = Combinators.combine(Arbitraries.integers().between(0, 8), Arbitraries.of(true, false))
                .as((place, included) -> new Bound(Exact.of(place), included)).optional(0.9);
        return Combinators.combine(end, end).as(Interval::new);
    }

    @Property(tries = 1000)
    void should_agree_with_counting_at_every_half_step(@ForAll("bands") Interval a, @ForAll("bands") Interval b,
            @ForAll("bands") Interval c, @ForAll("bands") Interval shown) {
        List<Interval> bands = List.of(a, b, c);
        Bands.Partition partition = Bands.partition(bands, shown);
        for (int half = -2; half <= 18; half++) {
            Exact value = Exact.ratio(half, 2);
            long count = bands.stream().filter(band -> band.contains(value)).count();
            boolean hole = partition.holes().stream().anyMatch(found -> found.values().contains(value));
            boolean overlap = partition.overlaps().stream().anyMatch(found -> found.values().contains(value));
            assertEquals(count == 0 && shown.contains(value), hole, "hole at " + value + " of " + bands);
            assertEquals(count > 1, overlap, "overlap at " + value + " of " + bands);
        }
        assertTrue(partition.overlaps().stream().allMatch(found -> bands.get(found.first()).contains(found.values())
                && bands.get(found.second()).contains(found.values()) && found.first() < found.second()));
    }
}

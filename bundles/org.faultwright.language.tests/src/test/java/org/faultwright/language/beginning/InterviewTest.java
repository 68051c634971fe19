/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.faultwright.analysis.Severity;
import org.faultwright.language.beginning.Interview.Cause;
import org.faultwright.language.beginning.Interview.Caution;
import org.faultwright.language.beginning.Interview.Meter;
import org.faultwright.language.beginning.Interview.Store;
import org.faultwright.language.beginning.Interview.Supply;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What is answered becomes a draft that has no error, or says why it is none yet. */
class InterviewTest {
    private static final List<ImportedLines.Code> CODES = List.of(new ImportedLines.Code("2 blinks", "Sensor open"), new ImportedLines.Code("\"E-07\"", "Too hot"));
    private static final List<FaultSign> SIGNS = List.of(
            new FaultSign.Codes("Lamp on the front", CODES, "Service sheet, page 4", true, "1"),
            new FaultSign.Reading("C12, plus side", "dc voltage", "24 V \u00b15%", "28 V", "Circuit, sheet 2", true, true, "2"),
            new FaultSign.Reading("Heater, plug J3", "resistance", "50 ohm .. 60 ohm", "", "", false, true, ""),
            new FaultSign.Look("Does the fan turn?", List.of("turns", "stands"), true, false, "1"));
    private static final List<Cause> CAUSES = List.of(
            new Cause("Sensor open", "6", "Fit a new sensor", "10", List.of("2 blinks")),
            new Cause("Heater open", "5", "Fit a new heater", "20", List.of("none", "", "above", "turns")),
            new Cause("Supply dead", "3", "Fit a new supply", "15", List.of("none", "below", "", "stands")),
            new Cause("Board fault", "", "", "", List.of("\"E-07\"")));

    private static Interview asked(List<Cause> causes, List<FaultSign> signs, Map<Danger, Caution> dangers, Optional<Store> store, boolean cover, Supply supply) {
        return new Interview("KettaCold", "Ketta W2 food warmer", "A, B", "Stays cold", List.of("lukewarm", "does not get \"hot\""), supply, cover, causes, signs,
                dangers, store, Meter.USUAL);
    }

    private static Map<Danger, Caution> all() {
        Map<Danger, Caution> all = new EnumMap<>(Danger.class);
        for (Danger danger : Danger.values()) {
            all.put(danger, new Caution(danger.what(), danger.avoid()));
        }
        return all;
    }

    @Test
    void should_become_a_draft_without_an_error_or_a_warning() {
        InterviewProgress grown = InterviewProgress.of(asked(CAUSES, SIGNS, Map.of(), Optional.empty(), true, Supply.ADAPTER));

        assertTrue(grown.isWhole(), grown.remarks().toString());
        assertEquals(0, grown.count(Severity.ERROR));
        assertEquals(List.of(), grown.findings().stream().filter(one -> one.severity() == Severity.WARNING && !one.rule().equals("unreachable-step")
                && !one.rule().equals("unused-reading")).map(one -> one.rule() + one.message()).toList(), grown.text());
        for (String said : List.of("\"Ketta W2 food warmer\" boards \"A\", \"B\"", "\"lukewarm\", \"does not get 'hot'\"", "2 blinks means \"Sensor open\"",
                "expects 24 V +/- 5 %", "cases 6", "-> HeaterOpen", "refers to")) {
            assertTrue(grown.text().replaceAll(" +", " ").contains(said), said + grown.text());
        }
    }

    @ParameterizedTest
    @EnumSource(Supply.class)
    void should_stay_without_an_error_whatever_can_hurt(Supply supply) {
        for (boolean cover : new boolean[] {true, false}) {
            for (Optional<Store> store : List.of(Optional.<Store>empty(), Optional.of(new Store("Across C1", "400")))) {
                InterviewProgress grown = InterviewProgress.of(asked(CAUSES, SIGNS, all(), store, cover, supply));

                assertTrue(grown.isWhole(), supply + " " + cover + store + grown.remarks() + grown.text());
                assertTrue(grown.text().contains("note MainsShock danger"));
            }
        }
    }

    @Test
    void should_say_what_is_missing_while_it_grows() {
        InterviewProgress grown = InterviewProgress.of(asked(List.of(), List.of(), Map.of(), Optional.empty(), true, Supply.MAINS));

        assertFalse(grown.isWhole());
        assertTrue(grown.remarks().get(0).startsWith("What can it be?"), grown.remarks().toString());
        assertTrue(grown.text().contains("complaints \"lukewarm\""), grown.text());
    }

    @Test
    void should_ask_for_the_voltage_where_a_live_unit_is_read() {
        List<FaultSign> signs = List.of(new FaultSign.Reading("C12", "dc voltage", "24 V +/- 5 %", "", "", true, true, ""));
        InterviewProgress grown = InterviewProgress.of(asked(List.of(CAUSES.get(3)), signs, Map.of(), Optional.empty(), true, Supply.MAINS));

        assertFalse(grown.isWhole());
        assertTrue(grown.remarks().get(0).contains("\"C12\" is read while"), grown.remarks().toString());
    }

    /** Taken for less than it is, it would make the cautions say less. */
    @Test
    void should_not_put_another_voltage_in_the_place_of_one_that_cannot_be_read() {
        InterviewProgress stored = InterviewProgress.of(asked(CAUSES, SIGNS, all(), Optional.of(new Store("Across C1", "1500 V dc")), true, Supply.MAINS));
        List<FaultSign> signs = List.of(new FaultSign.Reading("C12", "dc voltage", "24 V +/- 5 %", "about 1 kV", "", false, true, ""));
        InterviewProgress read = InterviewProgress.of(asked(CAUSES.subList(3, 4), signs, all(), Optional.empty(), true, Supply.MAINS));

        assertFalse(stored.isWhole());
        assertEquals(List.of("\"1500 V dc\" is no voltage; write the highest one that is met there, such as 400 V."), stored.remarks());
        assertFalse(read.isWhole());
        assertEquals(List.of("\"about 1 kV\" is no voltage; write the highest one that is met there, such as 400 V."), read.remarks());
    }

    @Test
    void should_make_a_draft_of_one_fault_that_nothing_shows() {
        InterviewProgress grown = InterviewProgress.of(asked(List.of(new Cause("Fuse blown", "", "", "", List.of())), List.of(), Map.of(), Optional.empty(), false, Supply.MAINS));

        assertTrue(grown.isWhole(), grown.remarks().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"24V \u00b15%|24 V +/- 5 %", "12 ohm..15 ohm|12 ohm .. 15 ohm", "at least 1 M\u03a9|at least 1 Mohm", "4,7 k\u03a9 \u00b1 10 %|4.7 kohm +/- 10 %"})
    void should_write_limits_as_the_language_does(String typed, String written) {
        assertEquals(written, Interview.limit(typed));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"dc voltage|24 V|", "dc voltage|24 ohm +/- 5 %|", "dc voltage|a lot|", "resistance|12 V .. 15 V|", "resistance|at least 1 Mohm|fits",
        "dc voltage|24 V +/- 5 %|fits", "dc voltage|} -> x|"})
    void should_tell_a_limit_of_a_quantity_from_other_words(String quantity, String words, String fits) {
        assertEquals(fits != null || words.equals("24 V") && LimitWords.problem(quantity, words, Meter.USUAL.ranges()).isEmpty(), LimitWords.problem(quantity, words, Meter.USUAL.ranges()).isEmpty(),
                LimitWords.problem(quantity, words, Meter.USUAL.ranges()).toString());
    }

    @Test
    void should_suggest_a_name_from_the_unit_and_what_is_seen() {
        assertEquals("KettaStaysCold", Interview.suggestedName("Ketta W2", "stays cold"));
        assertTrue(Beginning.isName(Interview.suggestedName("", "")));
        assertTrue(Beginning.isName(Interview.suggestedName("3M", "\u6771\u4eac")));
    }

    /** Whatever is typed: a draft without an error, or sentences that say why there is none. */
    @Property(tries = 120)
    void should_never_write_an_error(@ForAll("words") List<String> words) {
        List<FaultSign> signs = List.of(new FaultSign.Look(words.get(0), List.of(words.get(1), words.get(2)), true, false, words.get(3)),
                new FaultSign.Reading(words.get(4), "dc voltage", "24 V +/- 5 %", "30", words.get(6), true, true, ""));
        List<Cause> causes = IntStream.range(0, 3).mapToObj(i -> new Cause(words.get(7 + i), words.get(10 + i), words.get(13 + i), words.get(i),
                List.of(signs.get(0).results().get(i % signs.get(0).results().size()), i == 1 ? "below" : ""))).toList();
        InterviewProgress grown = InterviewProgress.of(new Interview("KettaCold", words.get(1), words.get(2), words.get(3), words, Supply.MAINS, true, causes, signs,
                Map.of(Danger.HEAT, new Caution(words.get(4), words.get(5))), Optional.empty(), Meter.USUAL));

        assertTrue(grown.isWhole(), grown.remarks() + grown.text());
    }

    @Provide
    Arbitrary<List<String>> words() {
        return Arbitraries.oneOf(Arbitraries.of("", "dark", "at", "do", "none", "then", "NotSeen", "SwitchOn", "quote \" and \\", "// no", "two\nlines", "12 V", "0", "within",
                "\u00e4\u00f6\u00fc", "\u6771\u4eac", "yes", "anything else", "Supply", "}", "other", "half \uFFFD", "\uD83D"), Arbitraries.strings().ofMaxLength(12)).list().ofSize(16);
    }
}

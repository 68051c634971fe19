/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.procedure.Procedure;
import org.junit.jupiter.api.Test;

class QaSummaryTest {
    private static final Subject TIMER = new Subject(Texts.procedure("""
            procedure Timer "Timer does not switch off"
            note Hot caution { covers heat hazard "Hot." consequence "Burns." avoid "Wait." }
            note Shock danger { covers shock hazard "Live." consequence "Death." avoid "Trained people only." }
            indicator Panel "Lamp" { 3 blinks means "Hot" 5 blinks means "Lost" }
            point Rail "Rail" carries up to 12 V dc source resistance 2 kohm
            fault Relay "Relay" { cases 3 shows Lamp 3 blinks, Volts 4.1 V }
            fault Sensor "Sensor" { cases 1 shows Lamp 5 blinks }
            fault Switch "Switch" { cases 1 shows Lamp 5 blinks }
            observe Lamp "Lamp" at Panel { notes Hot takes 30 s 3 blinks -> Volts anything else -> SensorBad }
            measure Volts "Rail" { dc voltage at Rail expects 5 V +/- 10 % source "Sheet 1" notes Hot, Shock takes 1 min
                below -> RelayBad within -> SensorBad above -> SensorBad }
            measure Load "Load" { dc voltage at Rail low under 100 mV -> RelayBad high at least 100 mV -> RelayBad }
            conclude RelayBad "Relay" { finds Relay refers to "the bench" }
            conclude SensorBad "Sensor or switch" { finds Sensor, Switch refers to "the bench" }
            example "One" of Relay { Lamp 3 blinks, Volts 4.1 V ends at RelayBad within 3 min }
            example "Two" of Sensor { Lamp 3 blinks, Volts 5 V ends at RelayBad }
            """), Optional.empty());
    private static final QaSummary SUMMARY = QaSummary.of(TIMER, new Checker().check(TIMER)).orElseThrow();

    @Test
    void should_count_findings_by_rule_and_severity() {
        assertEquals(1, SUMMARY.byRule().get("example-fails"));
        assertEquals(SUMMARY.byRule().values().stream().mapToInt(Integer::intValue).sum(),
                SUMMARY.bySeverity().values().stream().mapToInt(Integer::intValue).sum());
        assertTrue(SUMMARY.bySeverity().get(Severity.ERROR) >= 1);
    }

    @Test
    void should_count_units_and_sources() {
        // V: the point, the limit's nominal, two shown readings and one of the fault
        assertEquals(Map.of("V", 5, "min", 2, "mV", 2, "s", 1, "kΩ", 1), SUMMARY.units());
        assertEquals("V", SUMMARY.units().keySet().iterator().next());
        assertEquals("1 of 3", SUMMARY.limits().toString());
    }

    @Test
    void should_say_how_much_of_it_is_covered() {
        assertEquals("1 of 2", SUMMARY.codes().toString());
        assertEquals("1 of 2", SUMMARY.examples().toString());
        assertEquals("3 of 5", SUMMARY.outcomes().toString());
        assertEquals("2 of 2", SUMMARY.conclusions().toString());
        assertTrue(SUMMARY.paths().isPresent());
        assertEquals(0, SUMMARY.untimed(), "Load is never come to");
    }

    @Test
    void should_name_what_is_open() {
        assertEquals(Map.of("Sheet 1", 1), SUMMARY.sources());
        assertEquals(List.of("Load"), SUMMARY.unsourced().stream().map(step -> step.name().text()).toList());
        assertEquals(2, SUMMARY.open().outcomes().size());
        assertTrue(SUMMARY.open().outcomes().stream().anyMatch(way -> way.toString().equals("Volts above")), SUMMARY.open().toString());
        assertEquals(List.of(), SUMMARY.open().conclusions());
        assertEquals("[Lamp 5 blinks]", SUMMARY.open().codes().toString());
        assertEquals(List.of("Two"), SUMMARY.open().examples().stream().map(example -> example.title().text()).toList());
    }

    @Test
    void should_have_a_line_for_each_fault() {
        assertEquals(List.of("Relay 0.6 true 1 true", "Sensor 0.2 true 2 false", "Switch 0.2 true 2 false"),
                SUMMARY.faults().stream().map(line -> line.fault().name() + " " + line.weight() + " " + line.isFound() + " "
                        + line.groupSize() + " " + line.hasExample()).toList());
        assertEquals(1, SUMMARY.groups().size());
        assertEquals("1.5 min", PrintedNumbers.minutes(SUMMARY.faults().get(0).times().expected().orElseThrow()));
    }

    @Test
    void should_list_the_notes_most_serious_first() {
        assertEquals(List.of("Shock 1", "Hot 2"), SUMMARY.notes().stream().map(use -> use.note().name() + " " + use.steps()).toList());
    }

    @Test
    void should_be_absent_for_a_library() {
        Subject library = new Subject(Texts.library("library L \"L\""), Optional.empty());

        assertTrue(QaSummary.of(library, List.of()).isEmpty());
    }

    private static List<UnnamedCode> unnamed(String text) {
        Procedure procedure = Texts.procedure(text);
        return QaSummary.of(new Subject(procedure, Optional.empty()), List.of()).orElseThrow().open().codes();
    }

    private static final String LAMP = """
            procedure Lamp "Lamp"
            indicator Panel "Lamp" { steady means "Ready" 2 blinks means "Bank above 385 V, charger locked" 3 blinks means "Warming up" 4 blinks means "zu hei\u00DF" 6 blinks means "" }
            """;

    /** Whatever a meaning says, in whatever language, counts as a danger unless each of its words is known to be harmless. */
    @Test
    void should_count_a_code_without_a_result_as_grave_unless_it_surely_tells_of_nothing() {
        List<UnnamedCode> codes = unnamed(LAMP + """
                observe Look "Lamp" at Panel { 1 blinks -> End anything else -> End }
                conclude End "End" { finds nothing }
                """);
        assertEquals(List.of("Look steady", "Look 2 blinks", "Look 3 blinks", "Look 4 blinks", "Look 6 blinks"), codes.stream().map(Object::toString).toList());
        assertEquals(List.of("Look 2 blinks", "Look 4 blinks", "Look 6 blinks"), codes.stream().filter(UnnamedCode::isGrave).map(Object::toString).toList());
    }

    /** A first look whether the lamp is lit at all is no hole where every way on from it comes to one that reads the code. */
    @Test
    void should_not_count_a_code_as_grave_that_is_asked_for_behind() {
        List<UnnamedCode> codes = unnamed(LAMP + """
                observe Look "Lit?" at Panel { steady -> End anything else -> Count }
                perform Count "Count" by Counting { counted -> End }
                routine Counting "Count" { exits counted
                    observe Read "Which?" at Panel { 2 blinks -> counted 4 blinks -> counted anything else -> counted }
                }
                conclude End "End" { finds nothing }
                """);
        assertEquals(List.of("Look 6 blinks", "Read 6 blinks"), codes.stream().filter(UnnamedCode::isGrave).map(Object::toString).toList());
    }

    /** On the one way that does not come by, nobody would be told. */
    @Test
    void should_count_a_code_as_grave_that_only_some_ways_ask_for() {
        List<UnnamedCode> codes = unnamed(LAMP + """
                observe Look "Lit?" at Panel { steady -> End anything else -> Ask }
                check Ask "Is there time?" { yes -> Read no -> End }
                observe Read "Which?" at Panel { 2 blinks -> End 4 blinks -> End 6 blinks -> End anything else -> End }
                conclude End "End" { finds nothing }
                """);
        assertEquals(List.of("Look 2 blinks", "Look 4 blinks", "Look 6 blinks"), codes.stream().filter(UnnamedCode::isGrave).map(Object::toString).toList());
    }

    /** A routine that performs itself is not followed for ever, and what is not known is not taken to be harmless. */
    @Test
    void should_come_to_an_end_where_a_routine_performs_itself() {
        List<UnnamedCode> codes = unnamed(LAMP + """
                observe Look "Lit?" at Panel { steady -> End anything else -> Round }
                perform Round "Round" by Turning { round -> End }
                routine Turning "Turn" { exits round perform Again "Again" by Turning { round -> round } }
                conclude End "End" { finds nothing }
                """);
        assertEquals(3, codes.stream().filter(UnnamedCode::isGrave).count());
    }

    private static final String OPEN = """
            procedure Open "Open"
            note Shock danger { covers shock hazard "Live." consequence "Death." avoid "Trained people only." }
            condition Supply "Supply" { off, on } live when on
            condition Cover "Cover" { fitted, removed } starts fitted ends fitted
            point Rail "Rail" carries up to 325 V dc
            do First "On, closed" { sets Supply on then -> Off }
            do Off "Off" { sets Supply off then -> Lift }
            do Lift "Lift the cover" { needs Supply off sets Cover removed then -> Again }
            perform Again "On again" by SwitchOn { NOTES running -> Close }
            do Close "Close" { sets Supply off then -> Shut }
            do Shut "Shut" { needs Supply off sets Cover fitted then -> End }
            routine SwitchOn "Switch on" { exits running
                do Plug "Plug in" { sets Supply on then -> running }
            }
            conclude End "End" { finds nothing }
            """;

    @Test
    void should_name_each_place_that_makes_an_open_unit_live_and_whether_it_warns() {
        for (boolean told : List.of(true, false)) {
            Procedure procedure = Texts.procedure(OPEN.replace("NOTES", told ? "notes Shock" : ""));
            List<MadeLive> live = QaSummary.of(new Subject(procedure, Optional.empty()), List.of()).orElseThrow().madeLive();
            assertEquals(List.of("Again/Plug"), live.stream().map(one -> one.place().label()).toList());
            assertEquals(told, live.get(0).told());
            assertTrue(live.get(0).dangerous());
            assertEquals(List.of("Cover removed"), live.get(0).open().stream().map(one -> one.condition() + " " + one.value()).toList());
        }
    }

    @Test
    void should_not_ask_for_a_note_where_nothing_in_the_unit_hurts() {
        Procedure procedure = Texts.procedure(OPEN.replace("NOTES", "").replace("325 V", "12 V"));
        assertFalse(QaSummary.of(new Subject(procedure, Optional.empty()), List.of()).orElseThrow().madeLive().get(0).dangerous());
    }

    @Test
    void should_say_when_a_conclusion_names_more_faults_than_the_steps_leave() {
        QaSummary.FaultLine sensor = SUMMARY.faults().get(1);
        assertEquals("SensorBad", sensor.reportedWithOthers().orElseThrow().name().text());
        assertTrue(SUMMARY.faults().get(0).reportedWithOthers().isEmpty());
    }
}

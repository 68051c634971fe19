/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.StatedDecisionRule;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Everything that is declared: the head of a procedure, the bench, faults and examples. */
class DeclarationsTest {
    @Test
    void should_read_the_head_of_a_procedure() {
        Procedure head = Reading.procedure("""
                uses HarbourBench, HarbourNotes
                uses More
                equipment "Ollenby P2" boards "P2-B", "P2-C"
                revision 4 released by "M. Quayle" dated 2026-01-31 digest "ab12"
                complaints "blank labels", "out of ink"
                tools "screwdriver"
                decision rule risk 2.5 %
                begin at SeeIt
                """);

        assertEquals(List.of(), head.problems());
        assertEquals("Test", head.name().text());
        assertEquals("A test", head.title());
        assertEquals(List.of("HarbourBench", "HarbourNotes", "More"), texts(head.uses()));
        assertEquals("Ollenby P2", head.equipment().get().title());
        assertEquals(List.of("P2-B", "P2-C"), head.equipment().get().boards().stream().map(board -> board.value()).toList());
        Revision revision = head.revision().get();
        assertEquals(4, revision.number());
        assertEquals(Revision.Status.RELEASED, revision.status());
        assertEquals(Optional.of("M. Quayle"), revision.by());
        assertEquals(Optional.of(LocalDate.of(2026, 1, 31)), revision.dated());
        assertEquals(Optional.of("ab12"), revision.digest());
        assertEquals("\"out of ink\"", head.complaints().get(1).at().text());
        assertEquals("screwdriver", head.tools().get(0).value());
        assertEquals("2.5", ((StatedDecisionRule.ByRisk) head.statedRule().get().value()).percent().toString());
        assertEquals("SeeIt", head.begin().get().at().text());
    }

    @ParameterizedTest
    @CsvSource({"simple,Simple", "guarded,Guarded"})
    void should_read_decision_rules(String word, String kind) {
        assertEquals(kind, Reading.library("decision rule " + word).statedRule().get().value().getClass().getSimpleName());
    }

    @Test
    void should_read_what_a_point_stores_and_what_drains_it() {
        Procedure read = Reading.procedure("""
                point Bulk "C3" carries up to 325 V dc stores 470 uF drained by 1 Mohm
                point Line "X1" carries up to 230 V ac rms stores 1 uF
                point Odd "C9" carries up to 12 V dc stores 5 ohm drained by -3 V
                point Bare "C1" stores 1000 uF
                """);

        Point bulk = read.own().points().get(0);
        assertEquals(List.of(), read.problems());
        assertEquals("470 uF", bulk.stores().get().value().spelling());
        assertEquals("1 Mohm", bulk.drainedBy().get().value().spelling());
        assertEquals("24.9 J and 153 mC at 325 V; 13 min 15 s down to 60 V through 1 MΩ", bulk.storedEnergy().get().inWords());
        assertEquals(325.27, read.own().points().get(1).storedEnergy().get().volts().doubleValue(), 0.005, "the peak of 230 V");
        assertEquals(Optional.empty(), read.own().points().get(2).storedEnergy());
        assertEquals(Optional.empty(), read.own().points().get(3).storedEnergy());
    }

    @Test
    void should_read_part_number_and_stock() {
        Procedure read = Reading.procedure("part Fan \"Fan\" hazards motion number \"EL-04\" stock 2\npart Bolt \"Bolt\" stock 0\n");

        assertEquals("EL-04", read.own().parts().get(0).number().get().value());
        assertEquals(2, read.own().parts().get(0).stock().get().value());
        assertEquals(1, read.problems().size(), () -> read.problems().toString());
    }

    @Test
    void should_say_twice_stored_once() {
        Procedure read = Reading.procedure("point Bulk \"C3\" carries up to 325 V dc stores 470 uF stores 100 uF\n");

        assertEquals(1, read.problems().size(), () -> read.problems().toString());
    }

    @Test
    void should_read_conditions() {
        Condition charge = Reading.library("""
                condition Charge "Bulk capacitors" { present, absent } charged when present live when present, absent
                    becomes present when Supply on starts present ends absent""").own().conditions().get(0);

        assertEquals("Bulk capacitors", charge.title());
        assertEquals(List.of("present", "absent"), texts(charge.values()));
        assertEquals(List.of("present"), texts(charge.charged()));
        assertEquals(List.of("present", "absent"), texts(charge.live()));
        assertEquals("Supply on", charge.becomes().get(0).when().at().text());
        assertEquals("present", charge.becomes().get(0).value().text());
        assertEquals("present", charge.starts().get().text());
        assertEquals("absent", charge.ends().get().text());
    }

    @Test
    void should_read_instruments() {
        Instrument meter = Reading.library("""
                instrument Meter "Multimeter" {
                    dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm, 100 pF
                    ac current peak up to 600 mA resolution 0.1 mA accuracy 1 % of reading + 0.2 % of range + 3 counts
                        burden 1.8 ohm bandwidth 40 Hz .. 1 kHz true-rms
                    temperature on type K from -50 degC up to 400 degC resolution 0.1 degC accuracy 1 % + 1.5 degC
                    rated 600 V category 3
                    valid 18 degC .. 28 degC
                    calibrated every 12 months until 2027-03-31
                }""").own().instruments().get(0);

        MeterRange volts = meter.ranges().get(0).value();
        assertEquals(QuantityKind.DC_VOLTAGE, volts.kind());
        assertEquals(Optional.empty(), volts.from());
        assertEquals("60 V", volts.upTo().spelling());
        assertEquals("10 mV", volts.resolution().spelling());
        assertEquals("0.5", volts.accuracy().percentOfReading().toString());
        assertEquals("2", volts.accuracy().digits().toString());
        assertEquals("10 Mohm", volts.input().get().spelling());
        assertEquals("100 pF", volts.inputCapacitance().get().spelling());
        MeterRange amperes = meter.ranges().get(1).value();
        assertEquals(QuantityKind.AC_CURRENT_PEAK, amperes.kind());
        assertEquals("0.2", amperes.accuracy().percentOfRange().toString());
        assertEquals("3", amperes.accuracy().digits().toString());
        assertEquals("1.8 ohm", amperes.burden().get().spelling());
        assertEquals("40 Hz", amperes.lowestFrequency().get().spelling());
        assertEquals("1 kHz", amperes.highestFrequency().get().spelling());
        assertTrue(amperes.trueRms());
        MeterRange temperatures = meter.ranges().get(2).value();
        assertEquals("K", temperatures.sensor());
        assertEquals("-50 degC", temperatures.from().get().spelling());
        assertEquals("1", temperatures.accuracy().percentOfReading().toString());
        assertEquals("1.5 degC", temperatures.accuracy().amount().get().spelling());
        assertEquals("600 V", meter.rated().get().value().spelling());
        assertEquals(3, meter.category().get().value());
        assertEquals("18 degC .. 28 degC", meter.validAt().get().value().spelling());
        assertEquals("12 months", meter.calibrationEvery().get().value().spelling());
        assertEquals(LocalDate.of(2027, 3, 31), meter.calibrationDue().get().value());
    }

    @ParameterizedTest
    @CsvSource({"'',DC_VOLTAGE", "dc,DC_VOLTAGE", "ac,AC_VOLTAGE_RMS", "ac rms,AC_VOLTAGE_RMS", "ac peak,AC_VOLTAGE_PEAK"})
    void should_read_points(String form, QuantityKind kind) {
        Point point = Reading.library("point HeadRail \"C41, plus side\" carries up to 28 V " + form
                + " source resistance 2 ohm category 2 hazards heat, shock").own().points().get(0);

        assertEquals("C41, plus side", point.title());
        assertEquals("28 V", point.carries().get().upTo().at().text());
        assertEquals(kind, point.carries().get().kind());
        assertEquals("2 ohm", point.sourceResistance().get().value().spelling());
        assertEquals(2, point.category().get().value());
        assertEquals(List.of(Hazard.HEAT, Hazard.SHOCK), point.hazards().stream().map(hazard -> hazard.value()).toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"at 50 Hz waveform sine | 50 Hz | SINE", "at 45 Hz .. 65 Hz | 45 Hz .. 65 Hz | ''",
            "waveform distorted | '' | DISTORTED", "at 20 kHz waveform square source resistance 1 kohm | 20 kHz | SQUARE"})
    void should_read_frequency_and_waveform_of_a_point(String written, String frequency, String waveform) {
        Point.Carried carried = Reading.library("point Gate \"Gate\" carries up to 20 V ac rms " + written).own().points().get(0)
                .carries().get();

        assertEquals(frequency, carried.frequency().map(Point.Frequencies::toString).orElse(""));
        assertEquals(waveform, carried.waveform().map(form -> form.value().name()).orElse(""));
    }

    @Test
    void should_read_the_temperature_of_the_bench() {
        assertEquals("18 degC .. 27 degC", Reading.library("ambient 18 degC .. 27 degC").own().ambient().get().value().spelling());
    }

    @Test
    void should_read_parts_even_with_names_like_values() {
        Part part = Reading.library("part R47 \"Sense resistor\" hazards heat").own().parts().get(0);

        assertEquals("R47", part.name().text());
        assertEquals("Sense resistor", part.title());
    }

    @Test
    void should_read_indicators() {
        Indicator lamp = Reading.library("""
                indicator Lamp "Amber lamp" {
                    3 blinks means "Cold"
                    steady means "Ready"
                    "E 05" means "Open"
                    source "Sheet 3" dated 2025-11-30
                }""").own().indicators().get(0);

        assertEquals(List.of("3 blinks", "steady", "E 05"), lamp.codes().stream().map(code -> code.pattern().text()).toList());
        assertEquals("Cold", lamp.codes().get(0).meaning());
        assertEquals("3 blinks means \"Cold\"", lamp.codes().get(0).at().text());
        assertEquals(Optional.of(LocalDate.of(2025, 11, 30)), lamp.source().get().dated());
    }

    @ParameterizedTest
    @EnumSource(SignalWord.class)
    void should_read_notes(SignalWord word) {
        Note note = Reading.library("note Stored " + word.name().toLowerCase()
                + " { covers charge, weight hazard \"Stays charged.\" consequence \"Burns.\" avoid \"Wait.\" }").own().notes().get(0);

        assertEquals(word, note.word());
        assertEquals(List.of(Hazard.STORED_CHARGE, Hazard.WEIGHT), note.covers().stream().map(hazard -> hazard.value()).toList());
        assertEquals("Stays charged.", note.hazard());
        assertEquals("Burns.", note.consequence());
        assertEquals("Wait.", note.avoid());
    }

    @ParameterizedTest
    @EnumSource(Hazard.class)
    void should_read_every_hazard(Hazard hazard) {
        Part part = Reading.library("part Board hazards " + hazard.word()).own().parts().get(0);

        assertEquals(hazard, part.hazards().get(0).value());
        assertEquals(hazard.word(), part.hazards().get(0).at().text());
    }

    @Test
    void should_read_routines() {
        Routine routine = Reading.library("""
                routine MakeSafe "Switch off" {
                    exits safe, stillLive
                    begin at SwitchOff
                    do SwitchOff "Off" { then -> Prove }
                    check Prove "Dead?" { yes -> safe no -> stillLive }
                }""").own().routines().get(0);

        assertEquals(List.of("safe", "stillLive"), texts(routine.exits()));
        assertEquals("SwitchOff", routine.begin().get().text());
        assertEquals(2, routine.steps().size());
    }

    @Test
    void should_read_faults() {
        Fault fault = Reading.procedure("""
                fault Lost "Settings lost" {
                    cases 10.5
                    shows SeeIt faint, Lamp 5 blinks 70 % or none 30 %
                    shows Rail 3.1 V, Code "E 05", Draw below or within
                    remedy Restore, Replace
                    hazards shock
                }""").faults().get(0);

        assertEquals("10.5", fault.cases().get().value().toString());
        assertEquals(List.of("SeeIt", "Lamp", "Rail", "Code", "Draw"), fault.shows().stream().map(s -> s.step().text()).toList());
        List<Showing.Possible> lamp = fault.shows().get(1).possible();
        assertEquals("5 blinks", lamp.get(0).words().text());
        assertEquals(Optional.empty(), lamp.get(0).reading());
        assertEquals("70", lamp.get(0).share().get().toString());
        assertEquals("30", lamp.get(1).share().get().toString());
        assertEquals("3.1", fault.shows().get(2).possible().get(0).reading().get().base().toString());
        assertEquals("E 05", fault.shows().get(3).possible().get(0).words().text());
        assertEquals(2, fault.shows().get(4).possible().size());
        assertEquals(List.of("Restore", "Replace"), texts(fault.remedies()));
        assertEquals(Hazard.SHOCK, fault.hazards().get(0).value());
    }

    @Test
    void should_read_examples() {
        Example example = Reading.procedure("""
                example "Lost settings" of Lost {
                    SeeIt faint, Lamp 5 blinks, Rail -3.1 V, Restore then
                    ends at Done within 20 min
                }""").examples().get(0);

        assertEquals("Lost settings", example.title().text());
        assertEquals("Lost", example.of().get().text());
        assertEquals(List.of("faint", "5 blinks", "-3.1 V", "done"),
                example.shows().stream().map(s -> s.possible().get(0).words().text()).toList());
        assertEquals("Done", example.endsAt().get().text());
        assertEquals("1200", example.within().get().value().base().toString());
    }

    @Test
    void should_read_a_library() {
        Library library = Reading.library("uses Other decision rule simple condition Supply { off, on }");

        assertEquals(List.of(), library.problems());
        assertEquals("A test", library.title());
        assertEquals(List.of("Other"), texts(library.uses()));
        assertEquals(List.of("off", "on"), texts(library.own().conditions().get(0).values()));
    }

    private static List<String> texts(List<Name> names) {
        return names.stream().map(Name::text).toList();
    }
}

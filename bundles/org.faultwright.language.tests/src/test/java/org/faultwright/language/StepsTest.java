/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.procedure.Results;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The seven kinds of step, what all of them can say, and their outcomes. */
class StepsTest {
    @Test
    void should_read_a_check() {
        Step.Check check = Reading.step(Step.Check.class, "check SeeIt \"How does it look?\" { faint -> A good -> B }");

        assertEquals("SeeIt", check.name().text());
        assertEquals("SeeIt", check.name().at().text());
        assertEquals("How does it look?", check.title());
        assertEquals(StepFrame.PLAIN, check.frame());
        assertEquals("check SeeIt \"How does it look?\" { faint -> A good -> B }", check.at().text());
        assertEquals(List.of("faint", "good"), keys(check));
        assertEquals(List.of("A", "B"), targets(check));
    }

    @Test
    void should_read_a_step_without_title_or_outcome() {
        Step.Check check = Reading.step(Step.Check.class, "check Later { }");

        assertEquals("", check.title());
        assertEquals(List.of(), check.outcomes());
    }

    @Test
    void should_read_codes_at_an_indicator() {
        Step.Observe observe = Reading.step(Step.Observe.class, "observe Lamp \"Count\" at PanelLamp {"
                + " 3 blinks -> A 5  /* long */ blinks -> A 7blinks -> A steady -> B \"E 05\" -> C none -> D anything else -> E }");

        assertEquals("PanelLamp", observe.indicator().get().at().text());
        assertEquals(List.of("3 blinks", "5 blinks", "7 blinks", "steady", "E 05", "none", "anything else"), keys(observe));
        assertEquals(List.of("Code", "Code", "Code", "Code", "Code", "Word", "AnythingElse"), kinds(observe));
    }

    @Test
    void should_read_appearances_where_no_indicator_is_named() {
        Step.Observe observe = Reading.step(Step.Observe.class, "observe Smell { burnt -> A none -> B }");

        assertEquals(Optional.empty(), observe.indicator());
        assertEquals(List.of("Word", "Word"), kinds(observe));
    }

    @Test
    void should_read_a_measurement_with_everything_it_can_say() {
        Step.Measure measure = Reading.step(Step.Measure.class, """
                measure Tip "Tip" {
                    temperature on type K at TipEnd against Ground using Meter range 400 degC
                    expects 350 degC +/- 10 degC  source "Sheet 4" dated 2025-03-01
                    uncertainty 0.5 degC for "contact"
                    units vary by 2 degC
                    below -> A within -> B above -> C doubtful -> D
                }""");

        assertEquals(QuantityKind.TEMPERATURE, measure.kind().get().value());
        assertEquals("temperature", measure.kind().get().at().text());
        assertEquals("K", measure.sensor().get().value());
        assertEquals("type K", measure.sensor().get().at().text());
        assertEquals("TipEnd", measure.point().get().text());
        assertEquals("Ground", measure.against().get().text());
        assertEquals("Meter", measure.instrument().get().text());
        assertEquals("400 degC", measure.range().get().at().text());
        assertEquals("350 degC +/- 10 degC", measure.expects().get().limit().at().text());
        assertEquals("Sheet 4", measure.expects().get().source().get().document());
        assertEquals(Optional.of(LocalDate.of(2025, 3, 1)), measure.frame().source().get().dated());
        assertEquals("contact", measure.uncertainties().get(0).of());
        assertEquals("0.5 degC", measure.uncertainties().get(0).halfWidth().value().spelling());
        assertEquals("2 degC", measure.unitDeviation().get().value().spelling());
        assertEquals(List.of("below", "within", "above", "doubtful"), keys(measure));
    }

    @Test
    void should_read_a_measurement_that_names_neither_point_nor_instrument() {
        Step.Measure measure = Reading.step(Step.Measure.class, "measure M \"m\" { frequency under 5 kHz -> A at least 5 kHz -> B }");

        assertEquals(QuantityKind.FREQUENCY, measure.kind().get().value());
        assertEquals(Optional.empty(), measure.point());
        assertEquals(Optional.empty(), measure.instrument());
        assertEquals(List.of("under 5 kHz", "at least 5 kHz"), keys(measure));
    }

    @ParameterizedTest
    @CsvSource({"dc voltage,DC_VOLTAGE", "ac voltage,AC_VOLTAGE_RMS", "ac voltage rms,AC_VOLTAGE_RMS",
            "ac voltage peak,AC_VOLTAGE_PEAK", "dc current,DC_CURRENT", "ac current,AC_CURRENT_RMS", "ac current rms,AC_CURRENT_RMS",
            "ac current peak,AC_CURRENT_PEAK", "resistance,RESISTANCE", "continuity,CONTINUITY", "diode,DIODE",
            "capacitance,CAPACITANCE", "inductance,INDUCTANCE", "frequency,FREQUENCY", "period,PERIOD", "duty,DUTY",
            "temperature,TEMPERATURE", "temperature difference,TEMPERATURE_DIFFERENCE", "count,COUNT", "time,TIME",
            "length,LENGTH", "mass,MASS", "force,FORCE", "torque,TORQUE", "pressure,PRESSURE", "speed,SPEED", "power,POWER",
            "ratio,RATIO"})
    void should_read_every_kind_of_quantity(String words, QuantityKind kind) {
        Step.Measure measure = Reading.step(Step.Measure.class, "measure M { " + words + " at P yes -> X }");

        assertEquals(kind, measure.kind().get().value());
        assertEquals(words, measure.kind().get().at().text());
    }

    @Test
    void should_have_words_for_every_kind_of_quantity() {
        for (QuantityKind kind : QuantityKind.values()) {
            Step.Measure measure = Reading.step(Step.Measure.class, "measure M { " + kind.words() + " at P }");
            assertEquals(Optional.of(kind), measure.kind().map(written -> written.value()));
        }
    }

    @Test
    void should_read_several_readings_in_one_step() {
        Step.Measure measure = Reading.step(Step.Measure.class, """
                measure Rails "Rails" {
                    dc voltage against Ground using HandMeter
                    at Rail24 expects 24 V +/- 5 %
                    at Rail5 expects at least 4.75 V
                    all within -> A
                    at Rail5 outside -> B
                    any outside -> C
                }""");

        assertEquals(List.of("Rail24", "Rail5"), measure.rows().stream().map(row -> row.point().text()).toList());
        assertEquals(List.of("all within", "at Rail5 outside", "any outside"), keys(measure));
        Step.Measure second = measure.readings().get(1);
        assertEquals("at least 4.75 V", second.expects().get().limit().value().spelling());
        assertEquals(List.of("within", "outside", "outside"), keys(second));
        assertEquals(List.of("within", "outside"), keys(measure.readings().get(0)));
        assertEquals("all within", Results.normal(measure, Reading.procedure("").scope()).get().key());
    }

    @Test
    void should_take_a_point_and_a_limit_before_the_rows_for_the_first_row() {
        Step.Measure measure = Reading.step(Step.Measure.class,
                "measure R { dc voltage at A expects 5 V +/- 1 % at B expects 3 V +/- 1 % all within -> X any outside -> Y }");

        assertEquals(List.of("A", "B"), measure.rows().stream().map(row -> row.point().text()).toList());
        assertEquals(Optional.empty(), measure.point());
    }

    @Test
    void should_still_read_a_band_that_begins_with_at() {
        Step.Measure measure = Reading.step(Step.Measure.class, "measure R { count at most 3 -> X over 3 -> Y }");

        assertEquals(List.of("at most 3", "over 3"), keys(measure));
    }

    @Test
    void should_read_what_is_adjusted() {
        Step.Do task = Reading.step(Step.Do.class, """
                do Fit "Fit" {
                    adjust torque of "four screws" to 1.2 N.m +/- 10 %
                    adjust dc current of "bench supply" to at most 0.5 A
                    wait 30 s
                    then -> Next
                }""");

        assertEquals(List.of("four screws", "bench supply"), task.adjusts().stream().map(Step.Adjustment::of).toList());
        assertEquals(QuantityKind.TORQUE, task.adjusts().get(0).kind().get().value());
        assertEquals("1.2 N.m +/- 10 %", task.adjusts().get(0).to().get().value().spelling());
        assertEquals("at most 0.5 A", task.adjusts().get(1).to().get().value().spelling());
        assertEquals("30 s", task.frame().waits().get().value().spelling());
        assertEquals("30 s", task.frame().time().get().value().spelling());
    }

    @Test
    void should_count_the_longer_of_time_and_wait() {
        assertEquals("5 min", time("wait 5 min takes 2 min"));
        assertEquals("20 min", time("wait 5 min takes 20 min"));
        assertEquals("2 min", time("wait 5 V takes 2 min"));
    }

    private static String time(String lines) {
        return Reading.step(Step.Do.class, "do Cool \"Cool\" { " + lines + " then -> X }").frame().time().get().value().spelling();
    }

    @Test
    void should_read_a_measurement_that_is_only_recorded() {
        Step.Measure measure = Reading.step(Step.Measure.class, "measure Idle { dc current at P then -> Next }");

        assertEquals(List.of("done"), keys(measure));
        assertEquals(measure.outcomes().stream().findFirst(), Results.reading(measure, Exact.of(3)));
    }

    @Test
    void should_read_an_act() {
        Step.Do task = Reading.step(Step.Do.class, """
                do Restore "Restore" {
                    erases "customer's settings"
                    repairs
                    then -> After at most 2 times, else Give proves Charge absent, Cover fitted
                }""");

        assertEquals("customer's settings", task.erases().get().value());
        assertEquals("repairs", task.repairs().get().text());
        Outcome outcome = task.outcomes().get(0);
        assertEquals("done", outcome.key());
        assertEquals("then", outcome.head().at().text());
        assertEquals(2, outcome.repeat().get().atMost());
        assertEquals("Give", outcome.repeat().get().otherwise().text());
        assertEquals("at most 2 times, else Give", outcome.repeat().get().at().text());
        assertEquals("Charge absent", outcome.proves().get(0).at().text());
        assertEquals("fitted", outcome.proves().get(1).value().text());
    }

    @Test
    void should_take_then_and_done_for_the_same() {
        Step.Do one = Reading.step(Step.Do.class, "do A { then -> B }");
        Step.Do other = Reading.step(Step.Do.class, "do A { done -> B }");

        assertEquals(one.outcomes().get(0).key(), other.outcomes().get(0).key());
    }

    @Test
    void should_read_a_bound_with_or_without_a_comma() {
        Step.Do task = Reading.step(Step.Do.class, "do A { yes -> B at most 3 times else C at most 4 V -> D at most 5 times, else E }");

        assertEquals(List.of("yes", "at most 4 V"), keys(task));
        assertEquals(3, task.outcomes().get(0).repeat().get().atMost());
        assertEquals("E", task.outcomes().get(1).repeat().get().otherwise().text());
    }

    @Test
    void should_read_a_decision() {
        Step.Calculate calculate = Reading.step(Step.Calculate.class, """
                calculate Sag "Sag" {
                    value (Idle - Loaded) / Idle
                    expects at most 5 %
                    within -> A above -> B
                }""");

        assertEquals("(Idle - Loaded) / Idle", calculate.formula().get().at().text());
        assertInstanceOf(Limit.NotAbove.class, calculate.expects().get().limit().value());
        assertEquals(List.of("within", "above"), keys(calculate));
    }

    @Test
    void should_read_a_routine_being_performed() {
        Step.Perform perform = Reading.step(Step.Perform.class, "perform Off \"Make safe\" by MakeSafe { safe -> A live -> B }");

        assertEquals("MakeSafe", perform.routine().get().at().text());
        assertEquals(List.of("safe", "live"), keys(perform));
    }

    @Test
    void should_read_conclusions() {
        Step.Conclude found = Reading.step(Step.Conclude.class, "conclude C \"c\" { finds A, B report \"Replaced.\" }");
        Step.Conclude nothing = Reading.step(Step.Conclude.class, "conclude C \"c\" { finds nothing needs Supply off }");
        Step.Conclude handedOn = Reading.step(Step.Conclude.class, "conclude C \"c\" { refers to \"the maker\" }");

        assertEquals(List.of("A", "B"), found.finds().stream().map(Name::text).toList());
        assertEquals("Replaced.", found.report().get().value());
        assertEquals("nothing", nothing.findsNothing().get().text());
        assertEquals("off", nothing.frame().needs().get(0).value().text());
        assertEquals("the maker", handedOn.refersTo().get().value());
    }

    @Test
    void should_read_what_every_step_can_say() {
        StepFrame frame = Reading.step(Step.Do.class, """
                do A "a" {
                    needs Supply off, Cover removed
                    needs Charge absent
                    sets Supply on
                    notes Heat, Charge
                    handles Board, R47
                    takes 3 min
                    tools "paper clip", "pen"
                    hazards heat, weight
                    confirms complaint
                    verifies repair
                    source "Sheet 3"
                    hint "Listen for the \\"click\\"."
                }""").frame();

        assertEquals(List.of("Supply off", "Cover removed", "Charge absent"), frame.needs().stream().map(s -> s.at().text()).toList());
        assertEquals("Supply", frame.sets().get(0).condition().text());
        assertEquals(List.of("Heat", "Charge"), frame.notes().stream().map(Name::text).toList());
        assertEquals(List.of("Board", "R47"), frame.handles().stream().map(Name::text).toList());
        assertEquals("3 min", frame.takes().get().value().spelling());
        assertEquals("180", frame.takes().get().value().base().toString());
        assertEquals(List.of("paper clip", "pen"), frame.tools().stream().map(t -> t.value()).toList());
        assertEquals(List.of("heat", "weight"), frame.hazards().stream().map(h -> h.value().word()).toList());
        assertEquals("confirms complaint", frame.confirms().get().text());
        assertEquals("verifies repair", frame.verifies().get().text());
        assertEquals("Sheet 3", frame.source().get().document());
        assertEquals("Listen for the \"click\".", frame.hint().get().value());
    }

    @Test
    void should_read_bands_with_and_without_labels() {
        Step.Measure measure = Reading.step(Step.Measure.class, """
                measure Draw "d" {
                    dc current using Supply
                    low under 15 mA -> A
                    15 mA .. under 90 mA -> B
                    "plugged in" 90 mA .. 800 mA -> C
                    over 800 mA -> D
                    -5 mA .. -1 mA -> E
                }""");

        assertEquals(List.of("low", "15 mA .. under 90 mA", "plugged in", "over 800 mA", "-5 mA .. -1 mA"), keys(measure));
        assertTrue(measure.outcomes().stream().allMatch(outcome -> outcome.head() instanceof Outcome.Band));
        assertEquals("under 15 mA", measure.outcomes().get(0).head().at().text());
    }

    @ParameterizedTest
    @ValueSource(strings = {"on", "off", "within", "over", "under", "live", "charged", "valid", "nothing", "fault", "repair",
            "resistance", "range", "reading", "input", "rated", "starts", "ends", "dc", "ac", "temperature", "up", "min", "open",
            "yes", "no", "E5", "größer", "warm_1"})
    void should_let_a_result_have_any_plain_word(String word) {
        Step.Check check = Reading.step(Step.Check.class, "check A \"a\" { takes 3 min " + word + " -> B }");

        assertEquals(List.of(word), keys(check));
    }

    @Test
    void should_report_what_is_said_twice_and_keep_the_first() {
        Step.Do task = Reading.step(Step.Do.class, "do A { takes 3 min\ntakes 4 min\nthen -> B }");

        assertEquals("3 min", task.frame().takes().get().value().spelling());
        assertEquals(List.of("The time of this step is stated twice; keep one and delete the other."),
                Reading.problems("do A { takes 3 min\ntakes 4 min\nthen -> B }"));
    }

    private static List<String> keys(Step step) {
        return step.outcomes().stream().map(Outcome::key).toList();
    }

    private static List<String> targets(Step step) {
        return step.outcomes().stream().map(outcome -> outcome.target().map(Name::text).orElse("")).toList();
    }

    private static List<String> kinds(Step step) {
        return step.outcomes().stream().map(outcome -> outcome.head().getClass().getSimpleName()).toList();
    }
}

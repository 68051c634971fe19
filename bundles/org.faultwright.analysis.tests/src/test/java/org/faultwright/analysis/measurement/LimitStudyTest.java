/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.measure.BudgetLine;
import org.faultwright.quantity.measure.DecisionRule;
import org.faultwright.quantity.measure.LimitUncertainty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimitStudyTest {
    private static final String BENCH = """
            instrument HandMeter "Hand-held multimeter" {
                dc voltage up to 6 V    resolution 1 mV   accuracy 0.5 % of reading + 2 digits  input 10 Mohm
                dc voltage up to 60 V   resolution 10 mV  accuracy 0.5 % of reading + 2 digits  input 10 Mohm
            }
            """;

    private static Optional<LimitStudy> study(String text) {
        return study(Texts.document(text));
    }

    private static Optional<LimitStudy> study(Document document) {
        Step.Measure step = ((Procedure) document).steps().stream().filter(Step.Measure.class::isInstance)
                .map(Step.Measure.class::cast).findFirst().orElseThrow();
        return LimitStudy.of(document, step);
    }

    private static String measuring(String bench, String body) {
        return "procedure P \"P\"\n" + bench + "measure M \"M\" { " + body + " }\nconclude Done \"Done\" { finds nothing }";
    }

    private static LimitStudy studied(String bench, String body) {
        return study(measuring(bench, body)).orElseThrow();
    }

    private static double halfWidth(LimitStudy study, int end) {
        return study.limits().get(0).budget().ends().get(end).halfWidth().doubleValue();
    }

    /**
     * 32.00 V ±(2.5 % + 3 digits) is ±0.83 V, and 100.0 V ±(1 % + 2 digits of 0.1 V) lies from 98.8 V to 101.2 V: worked examples of a
     * university physics laboratory's note on digital multimeters.
     */
    @ParameterizedTest
    @CsvSource({"40 V, 10 mV, 2.5 % of reading + 3 digits, 32.00 V, 0.83",
            "200 V, 0.1 V, 1 % of reading + 2 digits, 100.0 V, 1.2"})
    void should_read_the_half_width_off_the_accuracy_statement(String upTo, String resolution, String accuracy,
    String limit, double half) {
        LimitStudy study = studied("instrument I \"I\" { dc voltage up to " + upTo + " resolution " + resolution
                + " accuracy " + accuracy + " }\n",
                "dc voltage using I expects at most " + limit + " within -> Done above -> Done");
        assertEquals(half, halfWidth(study, 0), 1e-12);
    }

    /** JCGM 100:2008, 4.3.7: ±15 µV taken as rectangular is u = 8.7 µV. */
    @Test
    void should_take_the_accuracy_as_rectangular() {
        LimitStudy study = studied("instrument I \"I\" { dc voltage up to 1 V resolution 1 uV accuracy 0.0014 % of reading + 0.0002 % of range }\n",
                "dc voltage using I expects at most 0.928571 V within -> Done above -> Done");
        LimitUncertainty end = study.limits().get(0).budget().ends().get(0);
        assertEquals(15e-6, end.halfWidth().doubleValue(), 1e-9);
        assertEquals(8.7e-6, end.standard().doubleValue(), 0.05e-6);
    }

    @ParameterizedTest
    @CsvSource({"expects 5 V +/- 5 %, 6 V", "expects 5.9 V +/- 5 %, 60 V", "expects 24 V +/- 5 %, 60 V",
            "expects at most 6 V, 6 V",
            "under 2 V -> Done 2 V .. 7 V, 60 V", "expects -5 V +/- 5 %, 6 V"})
    void should_choose_the_smallest_range_that_holds_the_limits(String limit, String upTo) {
        String ending = limit.contains("->") ? " -> Done" : " within -> Done outside -> Done";
        LimitStudy study = studied(BENCH, "dc voltage using HandMeter " + limit + ending);
        assertEquals(upTo, study.range().upTo().spelling());
        assertEquals(false, study.choice().named());
    }

    @Test
    void should_use_the_range_that_the_author_names() {
        LimitStudy study = studied(BENCH,
                "dc voltage using HandMeter range 60 V expects 5 V +/- 5 % within -> Done outside -> Done");
        assertEquals("60 V", study.range().upTo().spelling());
        assertTrue(study.choice().named());
    }

    @Test
    void should_compute_the_ratio_at_the_wider_end() {
        // At 25.2 V: a = 0.5 % of 25.2 V + 2 · 10 mV = 0.146 V, U = 2·a/√3; 2.4 V over 2·U (ANSI/NCSL Z540.3, 3.11)
        LimitStudy study = studied(BENCH, "dc voltage using HandMeter expects 24 V +/- 5 % within -> Done outside -> Done");
        assertEquals(2.4 / (2 * 2 * 0.146 / Math.sqrt(3)), study.ratio().orElseThrow().doubleValue(), 1e-9);
    }

    @Test
    void should_widen_the_uncertainty_by_what_the_step_allows_for() {
        LimitStudy plain = studied(BENCH, "dc voltage using HandMeter expects at most 24 V within -> Done above -> Done");
        LimitStudy wider = studied(BENCH,
                "dc voltage using HandMeter expects at most 24 V uncertainty 0.2 V for \"probe\" within -> Done above -> Done");
        double instrument = halfWidth(plain, 0);
        assertEquals(Math.sqrt((instrument * instrument + 0.2 * 0.2) / 3), wider.limits().get(0).budget().ends()
                .get(0).standard().doubleValue(), 1e-9);
    }

    /**
     * Textbook problems on meter loading, the source given as its Thévenin equivalent: 12 V across twice 150 kohm read with 11.5 Mohm
     * is 5.96112 V (−0.648 %), and 5 V behind 100 kohm read with 10 Mohm is 4.9505 V.
     */
    @ParameterizedTest
    @CsvSource({"75 kohm, 11.5 Mohm, 6 V, 5.96112", "100 kohm, 10 Mohm, 5 V, 4.9505"})
    void should_say_what_loading_leaves_of_the_reading(String source, String input, String there, double reading) {
        LimitStudy study = studied("instrument I \"I\" { dc voltage up to 20 V resolution 1 mV accuracy 0.1 % of reading + 1 digit input "
                + input + " }\npoint Tap \"Tap\" source resistance " + source + "\n",
                "dc voltage at Tap using I expects at most " + there + " within -> Done above -> Done");
        assertEquals(reading, study.limits().get(0).loading().orElseThrow().reading().doubleValue(), 5e-6);
    }

    @Test
    void should_add_the_source_resistances_of_both_points() {
        LimitStudy study = studied(BENCH
                + "point A \"A\" source resistance 60 kohm\npoint B \"B\" source resistance 40 kohm\n",
                "dc voltage at A against B using HandMeter expects at most 5 V within -> Done above -> Done");
        assertEquals(4.9505, study.limits().get(0).loading().orElseThrow().reading().doubleValue(), 5e-6);
        assertEquals(100_000, study.limits().get(0).loading().orElseThrow().source().doubleValue(), 1e-9);
    }

    @Test
    void should_guard_the_limits_where_the_house_says_so() {
        String procedure = measuring("uses House\n",
                "dc voltage using HandMeter expects 24 V +/- 5 % within -> Done outside -> Done");
        LimitStudy study = study(Texts.document(procedure, Map.of("House",
                "library House \"House\" decision rule guarded\n" + BENCH))).orElseThrow();
        LimitUncertainty upper = study.limits().get(0).budget().ends().get(1);
        assertTrue(study.expected().orElseThrow().budget().rule() instanceof DecisionRule.Guarded);
        assertEquals(Exact.of("25.2").minus(upper.expanded()), study.expected().orElseThrow().budget().zones()
                .accept().upper().orElseThrow().value());
    }

    @Test
    void should_let_the_procedure_overrule_the_house() {
        String procedure = measuring("uses House\ndecision rule simple\n",
                "dc voltage using HandMeter expects 24 V +/- 5 % within -> Done outside -> Done");
        LimitStudy study = study(Texts.document(procedure, Map.of("House",
                "library House \"House\" decision rule guarded\n" + BENCH))).orElseThrow();
        assertTrue(study.expected().orElseThrow().budget().rule() instanceof DecisionRule.Simple);
    }

    /** With the spread at hand the guard band by risk is narrower than the whole U (JCGM 106:2012, 9.5). */
    @Test
    void should_decide_by_risk_with_the_spread_of_the_step() {
        String step = "dc voltage using HandMeter expects 24 V +/- 5 % units vary by 0.6 V within -> Done outside -> Done";
        LimitStudy byRisk = study(measuring("decision rule risk 2 %\n" + BENCH, step)).orElseThrow();
        LimitStudy guarded = study(measuring("decision rule guarded\n" + BENCH, step)).orElseThrow();
        Exact riskGuard = byRisk.limits().get(0).budget().ends().get(1).guard();
        assertTrue(riskGuard.compareTo(guarded.limits().get(0).budget().ends().get(1).guard()) < 0);
    }

    @Test
    void should_study_every_band() {
        LimitStudy study = studied(BENCH,
                "dc voltage using HandMeter under 2 V -> Done 2 V .. 5 V -> Done over 5 V -> Done");
        assertEquals(List.of("under 2 V", "2 V .. 5 V", "over 5 V"), study.limits().stream()
                .map(limit -> limit.limit().value().spelling()).toList());
        assertEquals(Optional.empty(), study.expected());
        assertEquals(2, study.limits().get(1).budget().ends().size());
    }

    @Test
    void should_explain_in_the_order_of_computing_with_the_clauses() {
        LimitStudy study = studied(BENCH + "point A \"A\" source resistance 2 ohm\n",
                "dc voltage at A using HandMeter expects 24 V +/- 5 % within -> Done outside -> Done");
        List<BudgetLine> lines = study.explain();
        assertEquals("HandMeter, Hand-held multimeter", lines.get(0).value());
        assertEquals("the smallest range that holds the limits", lines.get(1).clause());
        String all = String.join("\n", lines.stream().map(BudgetLine::toString).toList());
        assertTrue(all.contains("JCGM 100:2008, 4.3.7"), all);
        assertTrue(all.contains("Z540.3"), all);
        assertTrue(all.contains("Thévenin"), all);
    }

    @ParameterizedTest
    @CsvSource({"dc voltage expects 5 V +/- 5 %", "dc voltage using Nobody expects 5 V +/- 5 %",
            "resistance using HandMeter expects 5 ohm +/- 5 %",
            "dc voltage using HandMeter expects 5 ohm +/- 5 %", "dc voltage using HandMeter",
            "dc voltage using HandMeter expects 5 V .. 4 V"})
    void should_say_nothing_where_there_is_nothing_to_study(String body) {
        assertEquals(Optional.empty(), study(measuring(BENCH, body + " within -> Done outside -> Done")));
    }

    @Test
    void should_say_for_which_temperatures_and_until_when_it_holds() {
        String bench = "instrument I \"I\" { dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading valid 18 degC .. 28 degC"
                + " calibrated until 2027-03-31 }\n";
        LimitStudy study = studied(bench, "dc voltage using I expects at most 5 V within -> Done above -> Done");
        assertEquals("at 18 degC .. 28 degC, until 2027-03-31", study.validity().orElseThrow().value());
        assertTrue(study.explain().contains(study.validity().get()));
    }

    /** |1/(1+jωRC)| of R and Ri side by side: 100 kohm and 10 Mohm with 100 pF at 20 kHz, computed from the complex divider. */
    @ParameterizedTest
    @CsvSource({"20 kHz, 100 pF", "50 Hz, 100 pF", "1 kHz, 1 nF"})
    void should_load_an_alternating_source_with_the_input_capacitance(String frequency, String capacitance) {
        LimitStudy study = studied("instrument I \"I\" { ac voltage up to 20 V resolution 1 mV accuracy 0.1 % of reading + 1 digit input 10 Mohm, "
                + capacitance + " }\npoint Tap \"Tap\" carries up to 12 V ac at " + frequency + " source resistance 100 kohm\n",
                "ac voltage at Tap using I expects at most 12 V within -> Done above -> Done");
        double omega = 2 * Math.PI * (frequency.endsWith("kHz") ? Double.parseDouble(frequency.split(" ")[0]) * 1000 : 50);
        double c = capacitance.equals("1 nF") ? 1e-9 : 1e-10;
        // Zi/(R+Zi) with Zi = 1/(1/Ri + jωC) is 1/(1 + R/Ri + jωRC)
        double expected = 12 / Math.hypot(1 + 1e5 / 1e7, omega * 1e5 * c);
        assertEquals(expected, study.limits().get(0).loading().orElseThrow().reading().doubleValue(), 1e-9);
        assertEquals(expected / 12 - 1, study.limits().get(0).loading().get().relativeError().doubleValue(), 1e-9);
    }

    /** The zero of degC is none to count from: one end of a temperature has no ratio (two have). */
    @Test
    void should_count_no_one_sided_temperature_from_zero() {
        String bench = "instrument T \"T\" { temperature from -50 degC up to 400 degC resolution 0.1 degC accuracy 1.5 degC }\n";
        assertEquals(Optional.empty(), studied(bench, "temperature using T expects at most 2 degC within -> Done above -> Done").ratio());
        assertTrue(studied(bench, "temperature using T expects 20 degC +/- 5 degC within -> Done outside -> Done").ratio().isPresent());
    }

    @Test
    void should_keep_the_sensor_apart() {
        String bench = """
                instrument T "T" {
                    temperature on type K from -50 degC up to 1200 degC resolution 1 degC   accuracy 1 % of reading + 2 degC
                    temperature on Pt100  from -50 degC up to 250 degC  resolution 0.1 degC accuracy 0.2 degC
                }
                """;
        LimitStudy onK = studied(bench,
                "temperature on type K using T expects at most 100 degC within -> Done above -> Done");
        LimitStudy onPlatinum = studied(bench,
                "temperature on Pt100 using T expects at most 100 degC within -> Done above -> Done");
        // 1 % of 100 degC and 2 degC: a percentage of a temperature is one of the number shown
        assertEquals(3.0, halfWidth(onK, 0), 1e-12);
        assertEquals(0.2, halfWidth(onPlatinum, 0), 1e-12);
    }
}

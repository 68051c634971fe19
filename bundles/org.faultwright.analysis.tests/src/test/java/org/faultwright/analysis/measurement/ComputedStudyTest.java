/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.measure.ComputedEnd;
import org.faultwright.quantity.measure.DecisionRule;
import org.faultwright.quantity.measure.ReadingInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComputedStudyTest {
    private static final String BENCH = """
            instrument Meter "Meter" {
                dc voltage up to 6 V   resolution 1 mV  accuracy 0.5 % of reading + 2 digits
                temperature from -50 degC up to 400 degC  resolution 0.1 degC  accuracy 1.5 degC
            }
            instrument Other "Other" { dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits }
            """;

    private static Optional<ComputedStudy> of(String head, String steps, String formula) {
        Procedure procedure = (Procedure) Texts.document("procedure P \"P\"\n" + head + BENCH + steps + "calculate D \"D\" { value " + formula
                + " }\nconclude Done \"Done\" { finds nothing }");
        Step.Calculate step = procedure.steps().stream().filter(one -> one.name().text().equals("D")).map(Step.Calculate.class::cast)
                .findFirst().orElseThrow();
        return ComputedStudy.of(procedure, step);
    }

    private static ComputedStudy study(String steps, String formula) {
        return of("", steps, formula).orElseThrow();
    }

    private static String volts(String name, String body, String next) {
        return "measure " + name + " \"" + name + "\" { dc voltage using " + body + " -> " + next + " }\n";
    }

    private static final String DIVIDER = volts("Out", "Meter expects 2.5 V +/- 10 % outside -> Done within", "In")
            + volts("In", "Other expects 5 V +/- 1 % outside -> Done within", "D");
    private static final String RATIO = "Out / In expects 0.5 +/- 2 % within -> Done outside -> Done";

    private static ReadingInput input(ComputedEnd end, String name) {
        return end.inputs().stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
    }

    /** By hand at the lower limit 0.49: Out is moved to 2.45 V (a = 14.25 mV), In stays at 5 V (a = 27 mV). */
    @Test
    void should_carry_the_uncertainty_of_each_reading_to_the_limit() {
        ComputedLimit limit = study(DIVIDER, RATIO).expected().orElseThrow();
        ComputedEnd low = limit.budget().computed().get(0);
        assertEquals(5.0, input(low, "In").value().doubleValue(), 1e-12);
        assertEquals("so that the result lies at the limit", input(low, "Out").choice());
        assertEquals(2.45, input(low, "Out").value().doubleValue(), 1e-12);
        assertEquals(0.01425, input(low, "Out").halfWidth().doubleValue(), 1e-12);
        double u = Math.hypot(0.2 * 0.01425, 0.49 / 5 * 0.027) / Math.sqrt(3);
        assertEquals(u, low.standard(), 1e-9);
        double high = Math.hypot(0.2 * 0.01475, 0.51 / 5 * 0.027) / Math.sqrt(3);
        assertEquals(0.02 / (4 * high), limit.budget().ratio().orElseThrow().doubleValue(), 1e-9);
    }

    @Test
    void should_add_what_the_step_of_a_reading_allows_for() {
        ComputedEnd plain = study(DIVIDER, RATIO).limits().get(0).budget().computed().get(0);
        ComputedEnd wider = study(DIVIDER.replace("+/- 10 %", "+/- 10 % uncertainty 20 mV for \"probe\""), RATIO).limits().get(0)
                .budget().computed().get(0);
        assertEquals(Math.sqrt(plain.standard() * plain.standard() + Math.pow(0.2 * 0.02, 2) / 3), wider.standard(), 1e-9);
    }

    @Test
    void should_guard_where_the_house_does_and_by_risk_too() {
        for (String rule : List.of("decision rule guarded\n", "decision rule risk 2 %\n")) {
            ComputedLimit limit = of(rule, DIVIDER, RATIO).orElseThrow().expected().orElseThrow();
            assertTrue(limit.budget().rule() instanceof DecisionRule.Guarded);
            assertFalse(limit.budget().zones().doubtful().isEmpty());
        }
    }

    /** Two temperatures apart are kelvin: at most 15 degC is read as 15 K, and there is no ratio for one end. */
    @ParameterizedTest
    @CsvSource({"at most 15 K", "at most 15 degC"})
    void should_read_a_difference_of_temperatures_as_one(String limit) {
        String left = "measure L \"L\" { temperature using Meter at most 200 degC -> R over 200 degC -> Done }\n";
        String right = "measure R \"R\" { temperature using Meter at most 200 degC -> D over 200 degC -> Done }\n";
        ComputedStudy study = study(left + right, "abs(L - R) expects " + limit + " within -> Done above -> Done");
        ComputedEnd end = study.limits().get(0).budget().computed().get(0);
        assertEquals(15, end.limit().doubleValue(), 1e-12);
        assertEquals(15, end.result(), 1e-9);
        assertEquals(1.5 * Math.sqrt(2) / Math.sqrt(3), end.standard(), 1e-9);
        assertEquals(Optional.empty(), study.limits().get(0).budget().ratio());
    }

    @Test
    void should_follow_decisions_down_to_the_readings() {
        String first = DIVIDER.replace("within -> D ", "within -> E ") + "calculate E \"E\" { value Out / In at most 1 -> D over 1 -> Done }\n";
        ComputedStudy study = study(first, "E * 2 expects 1 +/- 2 % within -> Done outside -> Done");
        ComputedEnd end = study.limits().get(0).budget().computed().get(0);
        assertEquals(2, end.inputs().size());
        assertEquals(0.98, end.result(), 1e-3);
    }

    @Test
    void should_study_levels() {
        ComputedStudy study = study(DIVIDER, "dB(Out, In) expects -6.02 dB +/- 0.2 dB within -> Done outside -> Done");
        assertEquals(Optional.empty(), study.problem());
        // 20/ln 10 times the relative uncertainties
        ComputedEnd end = study.limits().get(0).budget().computed().get(0);
        double out = input(end, "Out").halfWidth().doubleValue() / input(end, "Out").value().doubleValue();
        assertEquals(20 / Math.log(10) * Math.hypot(out, 0.027 / 5) / Math.sqrt(3), end.standard(), 1e-6);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "dc voltage expects 2.5 V +/- 10 %             | Out / In expects 0.5 +/- 2 %   | names no known instrument",
            "dc voltage using Nobody expects 2.5 V +/- 1 % | Out / In expects 0.5 +/- 2 %   | names no known instrument",
            "dc voltage using Meter                        | Out / In expects 0.5 +/- 2 %   | no limit that says how large",
            "dc voltage using Meter expects 25 V +/- 10 %  | Out / In expects 0.5 +/- 2 %   | has a problem",
            "dc voltage using Meter expects 2.5 V +/- 10 % | Out / Gone expects 0.5 +/- 2 % | no reading named Gone",
            "dc voltage using Meter expects 2.5 V +/- 10 % | Out / D expects 0.5 +/- 2 %    | needs itself",
            "dc voltage using Meter expects 2.5 V +/- 10 % | Out / (In - In) expects 0.5 +/- 2 % | divisor can be 0",
            "dc voltage using Meter expects 2.5 V +/- 10 % | Out + Nonsense(In) expects 0.5 +/- 2 % | cannot be computed",
            "dc voltage using Meter expects 2.5 V +/- 10 % | Out / In expects 0.5 V +/- 2 % | No limit of D is written in a unit",
            "dc voltage using Meter expects 2.5 V +/- 10 % | Out * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 * 1e20 expects 1 V .. 2 V | too large"})
    void should_say_in_one_line_why_there_is_no_uncertainty(String out, String formula, String said) {
        String steps = "measure Out \"Out\" { " + out + " within -> In outside -> Done }\n"
                + volts("In", "Other expects 5 V +/- 1 % outside -> Done within", "D");
        ComputedStudy study = study(steps, formula + " within -> Done outside -> Done");
        String problem = study.problem().orElseThrow();
        assertTrue(problem.contains(said), problem);
        assertEquals(1, study.explain().size());
        assertEquals(problem, study.explain().get(0).value());
    }

    @Test
    void should_refuse_formulas_that_double_at_every_step() {
        String steps = DIVIDER + IntStream.range(1, 40).mapToObj(i -> "calculate E" + i + " \"E\" { value "
                + (i == 1 ? "Out + Out" : "E" + (i - 1) + " + E" + (i - 1)) + " at most 1 V -> D over 1 V -> Done }\n")
                .collect(Collectors.joining());
        assertTrue(study(steps, "E39 expects 1 V +/- 1 % within -> Done outside -> Done").problem().orElseThrow()
                .contains("more than 500 parts"));
    }

    @Test
    void should_say_nothing_where_there_is_nothing_to_decide() {
        assertEquals(Optional.empty(), of("", DIVIDER, "Out / In within -> Done outside -> Done"));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a meter can read, and where. */
class MeasuringRulesTest {
    private static final String METER = """
            procedure P "P"
            instrument Meter "Meter" {
                dc current up to 1 A resolution 1 mA accuracy 1 % of reading + 3 digits burden 0.5 ohm
                ac current up to 10 A resolution 10 mA accuracy 2 % of reading + 3 digits
                dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
                dc voltage up to 600 V resolution 100 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
                temperature on Pt100 from -50 degC up to 200 degC resolution 0.1 degC accuracy 0.5 degC
                rated 600 V category 2
            }
            point Rail "Rail" carries up to 30 V dc
            point Mains "Mains" carries up to 253 V ac category 2
            """;

    private static String text(String body) {
        return METER + body + "\nconclude Done \"Done\" { finds nothing }\n";
    }

    private static List<Severity> severities(String rule, String body) {
        return Texts.findings(rule, text(body)).stream().map(Finding::severity).toList();
    }

    @Test
    void should_read_a_current_through_a_link_and_never_across_a_point() {
        String across = "measure I \"I\" { dc current at Rail using Meter under 1 mA -> Done at least 1 mA -> Done }";
        Finding found = Texts.findings("current-across-a-point", text(across)).get(0);

        assertEquals(text(across).replace("at Rail using", "through Rail using"), found.fixes().get(0).applied());
        assertEquals(List.of(), severities("current-across-a-point", across.replace("at Rail", "through Rail")));
        assertEquals(List.of(), severities("current-across-a-point", across.replace("at Rail ", "")));
        assertEquals(List.of(Severity.ERROR), severities("current-across-a-point", across.replace("dc current at Rail", "ac current at Mains")));
    }

    @Test
    void should_refuse_a_voltage_through_a_point() {
        String through = "measure U \"U\" { dc voltage through Rail using Meter under 1 V -> Done at least 1 V -> Done }";

        assertEquals(List.of("Write \"at\""), Texts.findings("current-across-a-point", text(through)).get(0).fixes().stream()
                .map(Fix::title).toList());
    }

    @Test
    void should_let_a_tolerance_reach_beyond_what_the_point_carries_but_not_begin_there() {
        String step = "measure U \"U\" { dc voltage at Rail using Meter expects 30 V +/- 5 % within -> Done outside -> Done }";

        assertEquals(List.of(), severities("beyond-the-point", step));
        assertEquals(List.of(Severity.ERROR), severities("beyond-the-point", step.replace("30 V +/-", "48 V +/-")));
        assertEquals(List.of(), severities("beyond-the-point", step.replace("30 V +/- 5 %", "at most 50 V")));
        assertEquals(List.of(Severity.ERROR), severities("beyond-the-point", step.replace("30 V +/- 5 %", "at least 50 V")));
    }

    @Test
    void should_hold_the_readings_of_examples_against_point_sign_and_range() {
        String step = "measure U \"U\" { dc voltage at Rail using Meter expects 24 V +/- 5 % within -> Done outside -> Done }\n";

        assertEquals(List.of(), severities("beyond-the-point", step + "example \"One\" { U 24.5 V ends at Done }"));
        assertEquals(List.of(Severity.ERROR), severities("beyond-the-point", step + "example \"One\" { U 34 V ends at Done }"));
        assertEquals(List.of(Severity.ERROR), severities("reading-impossible", step + "example \"One\" { U 700 V ends at Done }"));
        assertEquals(List.of(), severities("reading-impossible", step + "example \"One\" { U -5 V ends at Done }"));
        assertEquals(List.of(Severity.ERROR), severities("example-names-unknown-outcome", step + "example \"One\" { U 24 ohm ends at Done }"));
    }

    @ParameterizedTest
    @CsvSource({"20 degC, 20 degC, Done", "5 K, 20 K, Done", "5 degC, 20 K, Done", "5 K, 20 degC, Done"})
    void should_read_a_difference_of_temperatures_alike_in_every_scale(String limit, String reading, String end) {
        String body = """
                measure A "A" { temperature on Pt100 using Meter under 200 degC -> B at least 200 degC -> B }
                measure B "B" { temperature on Pt100 using Meter under 200 degC -> Rise at least 200 degC -> Rise }
                calculate Rise "Rise" { value A - B under LIMIT -> Low at least LIMIT -> Done }
                conclude Low "Low" { finds nothing }
                example "Warm" { A 60 degC, B 40 degC, Rise READING ends at END }
                """.replace("LIMIT", limit).replace("READING", reading).replace("END", end);

        assertEquals(List.of(), Texts.messages("example-fails", text(body)));
        assertEquals(List.of(), Texts.messages("example-names-unknown-outcome", text(body)));
    }

    @Test
    void should_refuse_a_voltage_for_a_difference_of_temperatures() {
        String body = """
                measure A "A" { temperature on Pt100 using Meter under 200 degC -> B at least 200 degC -> B }
                measure B "B" { temperature on Pt100 using Meter under 200 degC -> Rise at least 200 degC -> Rise }
                calculate Rise "Rise" { value A - B under 5 V -> Done at least 5 V -> Done }
                """;

        Finding found = Texts.findings("wrong-dimension", text(body)).get(0);

        assertTrue(found.advice().endsWith("as in 5 K."), found.advice());
    }

    @Test
    void should_make_an_error_of_dc_on_mains() {
        String step = "measure U \"U\" { KIND using Meter under 1 V -> Done at least 1 V -> Done }";

        assertEquals(List.of(Severity.ERROR), severities("ac-dc-mixed", step.replace("KIND", "dc voltage at Mains")));
    }

    @Test
    void should_say_which_of_two_libraries_is_meant() {
        String note = "note Shock danger { covers shock hazard \"A.\" consequence \"B.\" avoid \"C.\" }";
        Document document = Texts.document("procedure P \"P\"\nuses One, Two\n", Map.of("One", "library One \"One\"\n" + note,
                "Two", "library Two \"Two\"\n" + note));

        assertEquals(List.of("The libraries \"One\" and \"Two\" both declare the note \"Shock\"; the one of \"One\" is meant here."),
                Texts.findings("duplicate-name", document).stream().map(Finding::message).toList());
    }

    @Test
    void should_say_that_a_library_uses_itself() {
        Document document = Texts.document("library Test \"Test\"\nuses One\n", Map.of("One", "library One \"One\"\nuses Test\n",
                "Test", "library Test \"Test\"\nuses One\n"));

        assertEquals(List.of("The library \"Test\" uses itself by way of \"One\"."),
                Texts.findings("routine-recursion", document).stream().map(Finding::message).toList());
    }

    @Test
    void should_keep_in_a_record_that_a_current_is_read_through() {
        Step.Measure step = (Step.Measure) Texts.procedure(text("measure I \"I\" { dc current through Rail using Meter under 1 mA -> Done }")).steps().get(0);

        assertEquals(Optional.of("Rail"), step.point().map(point -> point.text()));
        assertTrue(step.through());
    }

    @ParameterizedTest
    @CsvSource({"resistance, 470 k, kohm", "dc voltage, 470 m, mV", "resistance, 2 M, Mohm"})
    void should_propose_the_unit_that_a_prefix_alone_stands_for(String kind, String value, String unit) {
        String body = text("measure X \"X\" { " + kind + " using Meter under " + value + " -> Done at least " + value + " -> Done }");

        List<Finding> found = Stream.of("unknown-unit", "wrong-dimension")
                .flatMap(rule -> Texts.findings(rule, body).stream()).toList();

        assertTrue(found.size() == 2 && found.stream().allMatch(one -> one.fixes().get(0).title().endsWith(unit)), found.toString());
    }
}

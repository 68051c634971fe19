/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** More than the pages show: each text carries the findings of one rule as marks. */
class RuleExamplesTest {
    private static final String METERS = """
            instrument HandMeter "Hand-held multimeter" {
                dc voltage     up to 6 V     resolution 1 mV    accuracy 0.5 % of reading + 2 digits  input 10 Mohm
                dc voltage     up to 60 V    resolution 10 mV   accuracy 0.5 % of reading + 2 digits  input 10 Mohm
                ac voltage rms up to 60 V    resolution 10 mV   accuracy 1 % of reading + 5 digits    input 10 Mohm
                resistance     up to 600 ohm resolution 0.1 ohm accuracy 0.9 % of reading + 3 digits
                temperature on type K from -50 degC up to 400 degC resolution 1 degC accuracy 1 % of reading + 2 degC
                dc current     up to 600 mA  resolution 0.1 mA  accuracy 1 % of reading + 3 digits    burden 1.8 ohm
                rated 60 V category 2
            }
            instrument BenchMeter "Bench multimeter" {
                dc voltage up to 10 V   resolution 10 uV  accuracy 0.0035 % of reading + 0.0005 % of range  input 10 Gohm
                dc voltage up to 100 V  resolution 100 uV accuracy 0.0045 % of reading + 0.0006 % of range  input 10 Mohm
                rated 1000 V category 2
            }
            """;

    private static void check(String rule, String text) {
        assertEquals(Marks.in(text).sorted(), Marks.of(Texts.findings(rule, text)));
    }

    private static void checkMessage(String rule, String text, String message) {
        assertEquals(List.of(message), Texts.messages(rule, text));
    }

    private static String step(String body) {
        return "procedure P \"P\"\n" + METERS + body + "\nconclude Done \"Done\" { finds nothing }\n";
    }

    @Test
    void should_find_every_kind_of_unknown_name() {
        check("unknown-name", """
                procedure P "P"
                uses Nowhere
                //   ^ unknown-name
                condition Supply "Supply" { off, on } live when onn becomes off when Cover removed starts oof ends off
                //                                              ^ unknown-name
                //                                                                   ^ unknown-name
                //                                                                                        ^ unknown-name
                fault Worn "Worn" { shows Look2 faint remedy Swap2 }
                //                        ^ unknown-name
                //                                           ^ unknown-name
                begin at Strat
                //       ^ unknown-name
                check Look "Look" {
                    needs Suply on, Supply up
                //        ^ unknown-name
                //                         ^ unknown-name
                    notes Hot handles Head
                //        ^ unknown-name
                //                    ^ unknown-name
                    yes -> Red at most 2 times, else Blue
                //         ^ unknown-name
                //                                   ^ unknown-name
                    no -> See proves Charge absent
                //                   ^ unknown-name
                }
                observe See "See" at Lamp { good -> Volts }
                //                   ^ unknown-name
                measure Volts "Volts" { dc voltage at Rail against Ground using Meter under 1 V -> Sum at least 1 V -> Sum }
                //                                    ^ unknown-name
                //                                                 ^ unknown-name
                //                                                              ^ unknown-name
                calculate Sum "Sum" { value maxx(Volts, Look) / Vlots  under 1 -> Do at least 1 -> Do }
                //                          ^ unknown-name
                //                                      ^ unknown-name
                //                                              ^ unknown-name
                perform Do "Do" by MakeSafe { done -> Done }
                //                 ^ unknown-name
                conclude Done "Done" { finds Torn }
                //                           ^ unknown-name
                example "One" of Worm { Lok yes ends at Dnoe }
                //               ^ unknown-name
                //                      ^ unknown-name
                //                                      ^ unknown-name
                """);
    }

    @Test
    void should_take_names_from_libraries() {
        Document document = Texts.document("""
                procedure P "P"
                uses HarbourBench
                measure Volts "Volts" { dc voltage using HandMetre under 1 V -> Done at least 1 V -> Done }
                conclude Done "Done" { finds nothing }
                """, Map.of("HarbourBench", "library HarbourBench \"Bench\"\n" + METERS));
        List<Finding> found = Texts.findings("unknown-name", document);
        assertEquals(List.of("There is no instrument named \"HandMetre\"."), found.stream().map(Finding::message).toList());
        assertEquals(List.of("Write \"HandMeter\""), found.get(0).fixes().stream().map(Fix::title).toList());
    }

    @Test
    void should_warn_of_a_declaration_that_hides_one_of_a_library() {
        Document document = Texts.document("procedure P \"P\"\nuses HarbourBench\n" + METERS,
                Map.of("HarbourBench", "library HarbourBench \"Bench\"\n" + METERS));
        List<Finding> found = Texts.findings("duplicate-name", document);
        assertEquals(2, found.size());
        assertEquals(List.of(Severity.WARNING), found.stream().map(Finding::severity).distinct().toList());
    }

    /** The point at which a charge is proved gone is said by the unit; no other point of a library is, and nothing by another library. */
    @Test
    void should_let_a_procedure_say_where_its_charge_is_proved() {
        String bench = """
                library Bench "Bench"
                condition Charge "Charge" { present, absent } charged when present proved at Reservoir at most 5 V
                point Reservoir "Across the largest capacitor" carries up to 400 V dc hazards charge, shock
                point Rail "Rail"
                """;
        String points = "point Reservoir \"C3 plus against C3 minus\" carries up to 28 V dc point Rail \"C12 plus\"";
        String rail = "The point \"Rail\" hides the one of the same name in the library \"Bench\".";
        assertEquals(List.of(rail), hidden(points, bench));
        assertEquals(List.of(rail), hidden(points.replace("carries up to 28 V dc", "hazards shock, charge"), bench));
        // who says less than the library hides what it warns of
        String less = rail.replace("Rail", "Reservoir");
        assertEquals(List.of(less, rail), hidden(points.replace("carries up to 28 V dc", ""), bench));
        assertEquals(List.of(less, rail), hidden(points.replace("carries up to 28 V dc", "hazards charge isolated"), bench));
        Document library = Texts.document("library L \"L\"\nuses Bench\n" + points, Map.of("Bench", bench));
        assertEquals(2, Texts.findings("duplicate-name", library).size());
    }

    private static List<String> hidden(String points, String bench) {
        Document procedure = Texts.document("procedure P \"P\"\nuses Bench\n" + points, Map.of("Bench", bench));
        return Texts.findings("duplicate-name", procedure).stream().map(Finding::message).toList();
    }

    @Test
    void should_find_duplicates_of_every_kind() {
        check("duplicate-name", """
                procedure P "P"
                condition Supply "S" { off, on, off }
                //                              ^ duplicate-name
                point A "A" point A "A"
                //                ^ duplicate-name
                fault F "F" { } fault F "F" { }
                //                    ^ duplicate-name
                routine R "R" { exits x, x
                //                       ^ duplicate-name
                    check x "x" { yes -> x }
                //        ^ duplicate-name
                }
                example "One" { } example "One" { }
                //                        ^ duplicate-name
                """);
    }

    @ParameterizedTest
    @CsvSource({"HeadSupply, Head supply", "PSUOutput, PSUOutput", "Rail3V3, Rail3 V3", "look_again, look again",
            "C41, C41"})
    void should_propose_a_title_that_reads_like_words(String name, String title) {
        String text = "procedure P \"P\" check " + name
                + " { yes -> Done no -> Done } conclude Done \"Done\" { finds nothing }";
        assertEquals(List.of("Add the title \"" + title + "\""), Texts.findings("missing-title", text).get(0).fixes()
                .stream()
                .map(Fix::title).toList());
    }

    @Test
    void should_accept_numbers_without_unit_where_they_are_complete() {
        check("missing-unit", step("""
                measure Turns "Turns" { count under 3 -> Ratio at least 3 -> Ratio }
                measure Ratio "Ratio" { ratio under 0.5 -> Duty at least 0.5 -> Duty }
                measure Duty "Duty" { duty under 0.5 -> Done at least 50 % -> Done }
                //                               ^ missing-unit
                """));
    }

    @Test
    void should_find_missing_units_in_instruments_and_points() {
        check("missing-unit", """
                library P "P"
                instrument M "M" {
                    dc voltage up to 6 resolution 1 accuracy 1 % of reading input 10
                    //               ^ missing-unit
                    //                            ^ missing-unit
                    //                                                            ^ missing-unit
                    rated 600
                    //    ^ missing-unit
                }
                point A "A" carries up to 28 source resistance 2
                //                        ^ missing-unit
                //                                             ^ missing-unit
                """);
    }

    @Test
    void should_propose_the_unit_of_the_other_end_first() {
        String text = step("measure V \"V\" { dc voltage using HandMeter 1 mV .. 5 -> Done }");
        assertEquals(List.of("Add the unit mV"), Texts.findings("missing-unit", text).get(0).fixes().stream()
                .map(Fix::title).toList());
    }

    @Test
    void should_refuse_decibels_where_a_voltage_is_meant_and_take_them_where_a_level_is() {
        check("wrong-dimension", step("""
                measure In "In" { ac voltage rms using HandMeter under 3 dB -> Out at least 1 V -> Out }
                //                                                     ^ wrong-dimension
                measure Out "Out" { ac voltage rms using HandMeter under 1 V -> Gain at least 1 V -> Gain }
                calculate Gain "Gain" { value dB(Out, In) under 3 dB -> Done at least 3 V -> Done }
                //                                                                    ^ wrong-dimension
                """));
    }

    @Test
    void should_know_the_dimension_of_what_is_computed() {
        check("wrong-dimension", step("""
                measure U "U" { dc voltage using HandMeter under 1 V -> I at least 1 V -> I }
                measure I "I" { dc current using HandMeter under 1 mA -> R at least 1 mA -> R }
                calculate R "R" { value U / I under 5 kohm -> W at least 5 kohm -> W }
                calculate W "W" { value power(U, I) + R * I * I expects at least 2 A within -> Done below -> Done }
                //                                                               ^ wrong-dimension
                """));
    }

    @Test
    void should_find_what_cannot_be_computed() {
        check("wrong-formula", step("""
                measure U "U" { dc voltage using HandMeter under 1 V -> T at least 1 V -> T }
                measure T "T" { temperature on type K using HandMeter under 30 degC -> A at least 30 degC -> A }
                calculate A "A" { value U + T under 5 -> B at least 5 -> B }
                //                      ^ wrong-formula
                calculate B "B" { value T * 2 under 5 -> C at least 5 -> C }
                //                      ^ wrong-formula
                calculate C "C" { value ratio(U) under 5 -> D at least 5 -> D }
                //                      ^ wrong-formula
                calculate D "D" { under 5 -> Done at least 5 -> Done }
                //        ^ wrong-formula
                """));
    }

    @Test
    void should_not_let_an_alternating_reading_prove_that_stored_charge_is_gone() {
        check("ac-dc-mixed", step("""
                condition Charge "Charge" { present, absent } charged when present starts present
                measure Gone "Gone?" { ac voltage rms using HandMeter under 5 V -> Done proves Charge absent at least 5 V -> Done }
                //                     ^ ac-dc-mixed
                measure Truly "Gone?" { dc voltage using HandMeter under 5 V -> Done proves Charge absent at least 5 V -> Done }
                """));
    }

    @Test
    void should_leave_ripple_on_a_rail_alone() {
        check("ac-dc-mixed", step("""
                point Rail "Rail" carries up to 24 V dc
                measure Ripple "Ripple" { ac voltage rms at Rail using HandMeter expects at most 50 mV within -> Level above -> Level }
                measure Level "Level" { ac voltage rms at Rail using HandMeter expects 24 V +/- 5 % within -> Sum outside -> Sum }
                //                      ^ ac-dc-mixed
                measure Dc "Dc" { dc voltage at Rail using HandMeter expects 24 V +/- 5 % within -> Sum outside -> Sum }
                calculate Sum "Sum" { value Ripple + Dc under 30 V -> Share at least 30 V -> Share }
                //                          ^ ac-dc-mixed
                calculate Share "Share" { value Ripple / Dc under 1 % -> Done at least 1 % -> Done }
                """));
    }

    @Test
    void should_ask_whether_a_divisor_can_be_zero_on_the_way_there() {
        check("division-by-zero-possible", step("""
                measure A "A" { dc voltage using HandMeter expects 24 V +/- 5 % within -> B below -> Done above -> B }
                measure B "B" { dc voltage using HandMeter expects 24 V +/- 5 % within -> Quotient outside -> Quotient }
                calculate Quotient "Q" { value B / A under 1 -> Spread at least 1 -> Spread }
                calculate Spread "S" { value 1 V / (A - B) under 1 -> Other at least 1 -> Other }
                //                           ^ division-by-zero-possible
                calculate Other "O" { value ratio(A, B) under 1 -> Done at least 1 -> Done }
                //                          ^ division-by-zero-possible
                """));
    }

    @Test
    void should_tell_which_results_a_limit_leaves_open() {
        check("outcomes-incomplete", step("""
                measure A "A" { dc voltage using HandMeter expects at least 3 V within -> B }
                //                                                 ^ outcomes-incomplete
                measure B "B" { dc voltage using HandMeter expects at most 3 V within -> C above -> C }
                measure C "C" { dc voltage using HandMeter expects 3 V +/- 1 V outside -> D anything else -> D }
                measure D "D" { dc voltage using HandMeter expects 3 V +/- 1 V under 2 V -> E within -> E }
                //                                                 ^ outcomes-incomplete
                measure E "E" { dc voltage using HandMeter expects 3 V +/- 1 V under 2 V -> F within -> F over 4 V -> F }
                perform F "F" by R { ok -> Done }
                //      ^ outcomes-incomplete
                routine R "R" { exits ok, bad check Q "Q" { yes -> ok no -> bad } }
                """));
    }

    @Test
    void should_say_once_that_no_band_takes_what_is_expected() {
        String text = step("measure A \"A\" { dc voltage using HandMeter expects 24 V +/- 5 % under 1 V -> Done over 30 V -> Done"
                + " below -> Done above -> Done }");

        assertEquals(List.of(), Texts.findings("outcomes-incomplete", text));
        assertEquals(1, Texts.findings("expected-outside-bands", text).size());
    }

    @Test
    void should_not_speak_of_a_name_that_could_not_be_read() {
        String text = step("check A \"A\" { yes -> within no -> Done }");

        assertEquals(List.of(), Texts.findings("unknown-name", text));
        assertEquals(1, Texts.findings("unreadable-text", text).size());
    }

    @Test
    void should_find_results_that_cannot_come() {
        check("outcome-impossible", step("""
                measure A "A" { dc voltage using HandMeter expects at least 3 V within -> B outside -> B above -> B }
                //                                                                                       ^ outcome-impossible
                measure B "B" { dc voltage using HandMeter good -> C under 5 V -> C at least 5 V -> C doubtful -> C }
                //                                         ^ outcome-impossible
                check C "C" { yes -> D under 5 V -> D }
                //                     ^ outcome-impossible
                perform D "D" by R { ok -> Done bda -> Done }
                //                              ^ outcome-impossible
                routine R "R" { exits ok, bad check Q "Q" { yes -> ok no -> bad } }
                """));
    }

    @Test
    void should_say_with_numbers_why_an_instrument_cannot_decide() {
        // 2.5 V, 0.5 % of reading and 2 digits of 1 mV: a = 14.5 mV + ..., at 2.505 V 14.525 mV, U = 2a/√3 = 16.8 mV
        List<Finding> found = Texts.findings("instrument-cannot-decide", step("""
                measure Ref "Reference" { dc voltage using HandMeter expects 2.500 V +/- 0.2 % within -> Done outside -> Done }
                """));
        assertEquals(List.of("\"HandMeter\" in its range up to 6 V reads \"Ref\" to ±17 mV (U = 2u, u = a/√3), and the limit is 0.29 times as wide as that."),
                found.stream().map(Finding::message).toList());
        assertEquals(Severity.ERROR, found.get(0).severity());
        assertEquals(List.of("Use \"BenchMeter\""), found.get(0).fixes().stream().map(Fix::title).toList());
    }

    @Test
    void should_warn_between_one_and_four() {
        List<Finding> found = Texts.findings("instrument-cannot-decide", step("""
                measure Ref "Reference" { dc voltage using HandMeter expects 2.500 V +/- 1 % within -> Done outside -> Done }
                """));
        assertEquals(List.of(Severity.WARNING), found.stream().map(Finding::severity).toList());
    }

    @Test
    void should_find_what_an_instrument_does_not_read() {
        check("instrument-lacks-function", step("""
                measure A "A" { ac voltage peak using HandMeter under 1 V -> B at least 1 V -> B }
                //                                    ^ instrument-lacks-function
                measure B "B" { temperature on Pt100 using HandMeter under 30 degC -> C at least 30 degC -> C }
                //                                         ^ instrument-lacks-function
                measure C "C" { temperature on type K using HandMeter under 30 degC -> D at least 30 degC -> D }
                measure D "D" { capacitance using BenchMeter under 1 uF -> Done at least 1 uF -> Done }
                //                                ^ instrument-lacks-function
                """));
    }

    @Test
    void should_find_voltages_and_limits_beyond_the_range() {
        check("range-exceeded", step("""
                point High "High" carries up to 90 V
                point Low "Low" carries up to 5 V
                measure A "A" { dc voltage at High using HandMeter under 1 V -> B at least 1 V -> B }
                //                                       ^ range-exceeded
                measure B "B" { dc voltage at Low using HandMeter range 6 V expects 7 V +/- 5 % within -> C outside -> C }
                //                                                                  ^ range-exceeded
                measure C "C" { dc voltage at Low using HandMeter range 20 V expects 5 V +/- 5 % within -> D outside -> D }
                //                                                      ^ range-exceeded
                measure D "D" { dc voltage at Low using HandMeter range 60 V expects 5 V +/- 5 % within -> E outside -> E }
                measure E "E" { resistance using HandMeter at least 1 kohm -> Done under 1 kohm -> Done }
                //                                         ^ range-exceeded
                """));
    }

    @Test
    void should_hold_category_and_rating_against_both_points() {
        String text = step("""
                point Line "Line" carries up to 253 V ac rms category 3
                point Ground "Ground"
                measure A "A" { ac voltage rms at Ground against Line using HandMeter under 1 V -> Done at least 1 V -> Done }
                """);
        checkMessage("category-too-low", text, "\"HandMeter\" is stated for category 2, and \"Line\" belongs to category 3.");
        checkMessage("input-rating-too-low", text, "\"Line\" can carry 253 V, and \"HandMeter\" is rated for 60 V.");
    }

    @Test
    void should_report_the_burden_of_a_current_range() {
        // 10 ohm source, 1.8 ohm burden: 1.8/11.8 = 15.25 % of 100 mA
        checkMessage("loading-eats-tolerance", step("""
                point Loop "Loop" source resistance 10 ohm
                measure I "I" { dc current at Loop using HandMeter expects 80 mA .. 100 mA within -> Done outside -> Done }
                """), "With the source resistance 10 Ω and the burden 1.8 Ω of \"HandMeter\", \"I\" reads low by 15 mA, which is 76 % of the tolerance.");
    }

    @Test
    void should_bound_loops_by_the_arrow_that_leads_back() {
        check("unbounded-loop", step("""
                check A "A" { yes -> B no -> C }
                check B "B" { yes -> A at most 2 times, else Done no -> Done }
                check C "C" { yes -> D no -> Done }
                check D "D" { yes -> A no -> Done }
                //            ^ unbounded-loop
                """));
    }

    @Test
    void should_see_a_loop_through_the_way_that_gives_up() {
        check("unbounded-loop", step("""
                check A "A" { yes -> B at most 2 times, else A no -> Done }
                //            ^ unbounded-loop
                check B "B" { yes -> Done no -> Done }
                """));
    }

    @Test
    void should_report_a_trap_once_where_it_is_entered() {
        check("path-without-end", step("""
                check A "A" { yes -> B no -> Done }
                check B "B" { yes -> C no -> D }
                //    ^ path-without-end
                check C "C" { yes -> B no -> D }
                check D "D" { yes -> C no -> B }
                check Alone "Alone" { yes -> Alone no -> Alone }
                //    ^ path-without-end
                """));
    }

    @Test
    void should_not_speak_of_ends_where_an_arrow_is_unknown() {
        check("path-without-end", step("check A \"A\" { yes -> A no -> Gone }"));
    }

    @Test
    void should_find_routines_that_perform_each_other() {
        check("routine-recursion", """
                library P "P"
                routine A "A" { exits x perform B1 "B" by B { x -> x } }
                //                                        ^ routine-recursion
                routine B "B" { exits x perform A1 "A" by A { x -> x } }
                //                                        ^ routine-recursion
                routine C "C" { exits x perform A2 "A" by A { x -> x } }
                """);
    }

    @Test
    void should_hold_nothing_against_a_date_that_is_not_given() {
        Document document = Texts.document("""
                procedure P "P"
                instrument M "M" { dc voltage up to 60 V resolution 10 mV accuracy 1 % of reading calibrated until 2001-01-31 }
                measure A "A" { dc voltage using M under 1 V -> Done at least 1 V -> Done }
                conclude Done "Done" { finds nothing }
                """);
        assertEquals(List.of(), Texts.findings("calibration-expired", document));
        assertEquals(1, Texts.findings("calibration-expired", document,
                Optional.of(java.time.LocalDate.of(2001, 2, 1))).size());
        assertEquals(0, Texts.findings("calibration-expired", document,
                Optional.of(java.time.LocalDate.of(2001, 1, 31))).size());
    }

    @Test
    void should_propose_the_listed_word_for_one_that_cannot_be_read() {
        List<Finding> found = Texts.findings("unreadable-text", "procedure P \"P\" part Head \"Head\" hazards heta, static");
        assertEquals(1, found.size());
        assertEquals(List.of("Write heat"), found.get(0).fixes().stream().map(Fix::title).toList());
    }

    @Test
    void should_number_findings_in_reading_order() {
        List<Finding> found = Texts.findings(step("check A \"\" { yes -> B no -> Gone }"));
        List<Integer> offsets = found.stream().map(finding -> finding.at().offset()).collect(Collectors.toList());
        assertEquals(offsets.stream().sorted().toList(), offsets);
        assertFalse(found.isEmpty());
    }
}

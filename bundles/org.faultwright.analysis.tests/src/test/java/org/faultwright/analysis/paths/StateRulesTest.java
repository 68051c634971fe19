/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;

class StateRulesTest {
    private static final String CONDITIONS = """
            procedure P "p"
            condition Supply "Bench supply" { off, on } live when on
            condition Charge "Bulk" { present, absent } charged when present becomes present when Supply on
            condition Cover { fitted, removed } ends fitted
            """;
    private static final String END = "conclude End \"End\" { finds nothing }\n";

    @Test
    void should_report_a_need_by_the_shortest_path_that_misses_it() {
        Finding found = only("need-not-established", """
                check Long "a" { yes -> On no -> Round }
                check Round "b" { yes -> Probe no -> On }
                do On "on" { sets Supply on then -> Probe }
                check Probe "c" { needs Supply on yes -> End no -> End }
                """ + END);
        assertEquals("\"Probe\" needs \"Supply on\", but a path comes to it with \"Supply off\".", found.message());
        assertEquals("[Long (no), Round (yes), Probe]", found.path().toString());
        assertEquals("Supply on", found.at().text());
    }

    @Test
    void should_take_a_need_as_met_behind_the_step_it_is_reported_at() {
        assertEquals(1, found("need-not-established", """
                check A "a" { needs Supply on yes -> B no -> B }
                check B "b" { needs Supply on yes -> End no -> End }
                """ + END).size());
    }

    @Test
    void should_know_that_a_value_is_forced_again_when_its_cause_comes_back() {
        Finding found = only("need-not-established", """
                check A "a" { yes -> On proves Charge absent no -> End }
                do On "on" { sets Supply on then -> Off }
                do Off "off" { sets Supply off then -> Touch }
                check Touch "b" { needs Charge absent yes -> End no -> End }
                """ + END);
        assertEquals("[A (yes), On (done), Off (done), Touch]", found.path().toString());
    }

    @Test
    void should_report_the_need_of_a_routine_at_the_step_that_performs_it() {
        Finding found = only("need-not-established", """
                routine Read "r" { exits done check Inner "i" { needs Supply on yes -> done no -> done } }
                perform DoRead "d" by Read { done -> End }
                """ + END);
        assertEquals("DoRead", found.at().text());
        assertEquals("\"DoRead\", performing \"Inner\", needs \"Supply on\", but a path comes to it with \"Supply off\".", found.message());
        assertEquals("[DoRead/Inner]", found.path().toString());
        assertFixed(found);
    }

    @Test
    void should_turn_only_the_arrows_that_bring_the_wrong_value() {
        String text = CONDITIONS + """
                begin at Ask
                check Ask "a" { yes -> On no -> Probe }
                do On "on" { sets Supply on then -> Probe }
                // what the rail does
                check Probe "c" { needs Supply on yes -> End no -> Probe at most 2 times, else End }
                """ + END;
        Finding found = only("need-not-established", Texts.document(text));
        assertEquals(text.replace("no -> Probe }", "no -> SupplyOn }").replace("// what", """
                do SupplyOn "Set Bench supply to on" {
                    sets Supply on
                    takes 1 min
                    then -> Probe
                }

                // what"""), found.fixes().get(0).applied());
    }

    @Test
    void should_take_over_the_beginning_when_the_first_step_needs_something() {
        String withBegin = CONDITIONS + "begin at A\n" + END + "check A \"a\" { needs Supply on yes -> End no -> End }\n";
        assertFixed(only("need-not-established", Texts.document(withBegin)));
        String without = CONDITIONS + "check A \"a\" { needs Supply on yes -> End no -> End }\n" + END;
        assertFixed(only("need-not-established", Texts.document(without)));
    }

    @Test
    void should_not_make_the_new_step_the_first_when_the_beginning_is_in_order() {
        String text = CONDITIONS.replace("{ off, on }", "{ off, on } starts on")
                + "check A \"a\" { needs Supply on yes -> Off no -> End }\ndo Off \"o\" { sets Supply off then -> A }\n" + END;
        assertFixed(only("need-not-established", Texts.document(text)));
    }

    @Test
    void should_offer_a_routine_that_proves_charge_absent_rather_than_an_act() {
        String text = CONDITIONS + """
                routine Bleed "Prove it dead" {
                    exits dead, still
                    do Off "o" { sets Supply off then -> Read }
                    check Read "Under 5 V?" { yes -> dead proves Charge absent no -> still }
                }
                check A "a" { yes -> Res no -> End }
                measure Res "r" { resistance under 5 ohm -> End at least 5 ohm -> End }
                """ + END;
        Finding found = only("charge-not-proved-absent", Texts.document(text));
        assertEquals(List.of("Perform \"Bleed\" before \"Res\""), found.fixes().stream().map(Fix::title).toList());
        assertFixed(found);
        String fixed = found.fixes().get(0).applied();
        assertTrue(fixed.contains("still -> HandedOn") && fixed.contains("conclude HandedOn"), fixed);
    }

    @Test
    void should_find_a_dead_reading_taken_live_inside_a_library_routine() {
        Map<String, String> libraries = Map.of("Bench", """
                library Bench
                condition Supply { off, on } live when on
                routine Read "r" { exits done measure Ohms "o" { resistance under 5 ohm -> done at least 5 ohm -> done } }
                """);
        String text = "procedure P \"p\" uses Bench do On \"o\" { sets Supply on then -> DoRead }"
                + "perform DoRead \"d\" by Read { done -> End }" + END;
        List<Finding> found = Texts.findings("live-measurement", Texts.document(text, libraries));
        assertEquals(1, found.size());
        assertEquals("DoRead", found.get(0).at().text());
        assertEquals("Test.procedure", found.get(0).at().source().name());
        assertEquals("[On (done), DoRead/Ohms]", found.get(0).path().toString());
    }

    @Test
    void should_find_a_dead_reading_taken_live_for_every_kind_that_needs_a_dead_circuit_and_no_other() {
        Map<String, String> kinds = Map.of("resistance", "ohm", "continuity", "ohm", "diode", "V", "capacitance", "uF",
                "inductance", "mH", "dc voltage", "V", "dc current", "A", "temperature", "degC", "frequency", "Hz");
        kinds.forEach((kind, unit) -> {
            int expected = List.of("resistance", "continuity", "diode", "capacitance", "inductance").contains(kind) ? 1 : 0;
            assertEquals(expected, found("live-measurement", """
                    do On "o" { sets Supply on then -> M }
                    measure M "m" { %s under 5 %s -> End at least 5 %s -> End }
                    """.formatted(kind, unit, unit) + END).size(), kind);
        });
    }

    @Test
    void should_accept_a_charge_note_for_handling_but_not_for_a_reading() {
        String note = "note Stored warning { covers charge hazard \"h\" consequence \"c\" avoid \"a\" } part Lid \"Lid\" ";
        assertEquals(List.of(), found("charge-not-proved-absent", note
                + "do Lift \"l\" { notes Stored handles Lid then -> End }" + END));
        assertEquals(1, found("charge-not-proved-absent", note + "do Lift \"l\" { handles Lid then -> End }" + END).size());
        assertEquals(1, found("charge-not-proved-absent", note
                + "measure M \"m\" { resistance notes Stored under 5 ohm -> End at least 5 ohm -> End }" + END).size());
    }

    @Test
    void should_not_take_a_part_handled_on_a_closed_unit_for_one_touched_inside() {
        String plug = "part Plug \"Plug\" do Draw \"d\" { handles Plug then -> End }" + END;

        assertEquals(1, found("charge-not-proved-absent", plug).size());
        assertEquals(List.of(), found("charge-not-proved-absent", plug.replace("handles", "needs Cover fitted handles")));
        assertEquals(1, found("charge-not-proved-absent", plug.replace("handles", "needs Cover removed handles")).size());
        assertEquals(1, found("charge-not-proved-absent", plug.replace("handles", "needs Supply off handles")).size());
        assertEquals(1, found("charge-not-proved-absent", plug.replace("handles", "needs Cover fitted handles")
                .replace("\"Plug\"", "\"Plug\" hazards charge")).size());
    }

    @Test
    void should_find_what_is_left_open_at_each_conclusion_it_is_left_open_at() {
        List<Finding> found = found("left-open", """
                do Open "o" { sets Cover removed then -> Ask }
                check Ask "a" { yes -> Close no -> Handed }
                do Close "c" { sets Cover fitted then -> End }
                conclude Handed "h" { refers to "someone" }
                """ + END);
        assertEquals(List.of("\"Handed\" is reached with \"Cover removed\"; it must end fitted."),
                found.stream().map(Finding::message).toList());
        assertEquals("[Open (done), Ask (no), Handed]", found.get(0).path().toString());
    }

    @Test
    void should_respect_bounds_when_looking_for_what_is_left_open() {
        // Open is only come to by the third "no"; by then Close has been passed twice
        assertEquals(List.of(), found("left-open", """
                check Ask "a" { yes -> End no -> Close at most 2 times, else End }
                do Close "c" { sets Cover fitted then -> Ask }
                """ + END));
        Finding found = only("left-open", """
                check Ask "a" { yes -> End no -> Ask at most 2 times, else Open }
                do Open "o" { sets Cover removed then -> End }
                """ + END);
        assertEquals("[Ask (no), Ask (no), Ask (no), Open (done), End]", found.path().toString());
    }

    @Test
    void should_say_what_is_set_already_only_when_every_path_says_so() {
        assertEquals(1, found("already-set", "do Off \"o\" { sets Supply off then -> End }" + END).size());
        assertEquals(List.of(), found("already-set", """
                check Ask "a" { yes -> On no -> Off }
                do On "on" { sets Supply on then -> Off }
                do Off "o" { sets Supply off then -> End }
                """ + END));
        assertEquals(List.of(), found("already-set", "do Off \"o\" { needs Supply on sets Supply off then -> End }" + END));
    }

    @Test
    void should_find_settings_that_cannot_hold_together() {
        assertEquals(List.of("A needs \"Supply off\" together with \"Supply on\"; the two cannot both hold."),
                Texts.messages("contradictory-needs", CONDITIONS + "check A \"a\" { needs Supply on, Supply off yes -> End no -> End }" + END));
        assertEquals(List.of("A sets \"Charge absent\" together with \"Supply on\", which makes it present; the two cannot both hold."),
                Texts.messages("contradictory-needs", CONDITIONS + "do A \"a\" { sets Charge absent, Supply on then -> End }" + END));
        assertEquals(List.of(), Texts.messages("contradictory-needs", CONDITIONS
                + "do A \"a\" { needs Supply on, Charge present sets Supply off, Charge absent then -> End }" + END));
        assertEquals(List.of(), Texts.messages("need-not-established", CONDITIONS
                + "check A \"a\" { needs Charge absent, Supply on yes -> End no -> End }" + END).stream()
                .filter(message -> message.contains("Charge")).toList());
    }

    @Test
    void should_follow_force_from_one_condition_to_the_next() {
        String chain = """
                procedure P "p"
                condition A { off, on }
                condition B { off, on } becomes on when A on
                condition C { off, on } becomes on when B on
                do Set "s" { sets A on then -> See }
                check See "c" { needs C %s yes -> End no -> End }
                """ + END;
        assertEquals(List.of(), Texts.findings("need-not-established", chain.formatted("on")));
        assertEquals(1, Texts.findings("need-not-established", chain.formatted("off")).size());
    }

    private static List<Finding> found(String rule, String steps) {
        return Texts.findings(rule, CONDITIONS + steps);
    }

    private static Finding only(String rule, String steps) {
        return only(rule, Texts.document(CONDITIONS + steps));
    }

    private static Finding only(String rule, Document document) {
        List<Finding> found = Texts.findings(rule, document);
        assertEquals(1, found.size(), found.toString());
        return found.get(0);
    }

    /** Each fix removes the finding and is read without a problem. */
    private static void assertFixed(Finding finding) {
        assertTrue(!finding.fixes().isEmpty());
        for (Fix fix : finding.fixes()) {
            Document after = Texts.document(fix.applied());
            assertEquals(List.of(), after.problems(), fix.applied());
            assertEquals(List.of(), new Checker(RuleSet.all().stream()
                    .filter(rule -> rule.header().id().equals(finding.rule())).toList(), Optional.empty())
                    .check(after), fix.applied());
        }
    }
}

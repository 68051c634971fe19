/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Hazard;
import org.junit.jupiter.api.Test;

class SafetyRulesTest {
    private static final String END = "conclude End \"End\" { finds nothing }\n";

    private static String note(String name, String word, String covers) {
        return "note %s %s { covers %s hazard \"h\" consequence \"c\" avoid \"a\" }%n".formatted(name, word, covers);
    }

    @Test
    void should_ask_for_a_note_about_every_hazard_wherever_it_is_declared() {
        for (Hazard hazard : Hazard.values()) {
            String word = hazard.word();
            for (String step : List.of("do A \"a\" { hazards " + word + " then -> End }",
                    "part Thing \"t\" hazards " + word + " do A \"a\" { handles Thing then -> End }",
                    "point At \"p\" hazards " + word + " measure A \"a\" { temperature at At under 5 degC -> End at least 5 degC -> End }",
                    "fault F \"f\" { remedy A hazards " + word + " } do A \"a\" { then -> End }")) {
                List<Finding> found = findings("note-never-read", step + END);
                assertEquals(1, found.size(), step);
                assertTrue(found.get(0).message().startsWith("A needs a note that covers " + word + ": "), found.toString());
                assertTrue(found.get(0).message().contains("declares " + word), found.toString());
                Finding proposed = findings("note-never-read", note("N", "warning", word) + step + END).get(0);
                assertEquals(List.of(), untoldText(proposed.fixes().get(0).applied()), step);
            }
        }
    }

    @Test
    void should_be_content_when_the_note_is_read_at_the_step_or_at_one_that_every_path_passes() {
        String heat = note("Hot", "warning", "heat") + "part Tip \"t\" hazards heat\n";
        assertEquals(List.of(), untold(heat + "do A \"a\" { notes Hot handles Tip then -> End }" + END));
        assertEquals(List.of(), untold(heat + "check B \"b\" { notes Hot yes -> A no -> A } do A \"a\" { handles Tip then -> End }" + END));
        assertEquals(List.of(), untold(heat + """
                check Which "w" { yes -> Left no -> Right }
                check Left "l" { notes Hot yes -> A no -> A }
                check Right "r" { notes Hot yes -> A no -> A }
                do A "a" { handles Tip then -> End }
                """ + END));
        assertEquals(List.of(), untold(heat + """
                routine Prepare "p" { exits done check Read "r" { notes Hot yes -> done no -> done } }
                perform P "p" by Prepare { done -> A }
                do A "a" { handles Tip then -> End }
                """ + END));
    }

    @Test
    void should_not_be_content_with_a_note_that_is_read_after_the_step_or_never_come_to() {
        String heat = note("Hot", "warning", "heat") + "part Tip \"t\" hazards heat\n";
        assertEquals(List.of("note-after-need"), untold(heat
                + "do A \"a\" { handles Tip then -> B } check B \"b\" { notes Hot yes -> End no -> End }" + END));
        assertEquals(List.of("note-never-read"), untold(heat
                + "do A \"a\" { handles Tip then -> End } check B \"b\" { notes Hot yes -> End no -> End }" + END));
    }

    /** The only way to A is by the third "no", and by then Warn has been passed twice. */
    @Test
    void should_count_bounds_when_it_decides_what_every_path_passes() {
        String heat = note("Hot", "warning", "heat") + "part Tip \"t\" hazards heat\n";
        assertEquals(List.of(), untold(heat + """
                check Ask "q" { yes -> End no -> Warn at most 2 times, else A }
                check Warn "w" { notes Hot yes -> Ask no -> Ask }
                do A "a" { handles Tip then -> End }
                """ + END));
        assertEquals(List.of("note-after-need"), untold(heat + """
                check Ask "q" { yes -> Warn no -> Ask at most 2 times, else A }
                check Warn "w" { notes Hot yes -> Ask no -> End }
                do A "a" { handles Tip then -> End }
                """ + END));
    }

    @Test
    void should_propose_the_step_that_every_path_passes_before_all_that_need_the_note() {
        String text = head() + note("Hot", "warning", "heat") + """
                part Tip "t" hazards heat
                check Start "s" { yes -> Ask no -> End }
                check Ask "q" { yes -> A no -> B }
                do A "a" { handles Tip then -> End }
                do B "b" { handles Tip then -> End }
                """ + END;
        Finding found = Texts.findings("note-never-read", text).get(0);
        assertEquals("A needs a note that covers heat: \"Tip\" declares heat; another step needs one as well.", found.message());
        assertEquals(List.of("Read \"Hot\" at \"A\"", "Read \"Hot\" at \"Ask\", before every step that needs it"),
                found.fixes().stream().map(Fix::title).toList());
        assertEquals(List.of(), untoldText(found.fixes().get(1).applied()));
        assertEquals(List.of("note-after-need"), untoldText(found.fixes().get(0).applied()));
    }

    @Test
    void should_add_a_note_behind_those_read_already_and_to_a_conclusion() {
        String text = head() + note("Hot", "warning", "heat") + note("Sharp", "caution", "motion")
                + "do A \"a\" { notes Sharp hazards heat then -> End }" + END;
        assertTrue(Texts.findings("note-never-read", text).get(0).fixes().get(0).applied().contains("notes Sharp, Hot hazards"));
        String end = head() + note("Hot", "warning", "heat") + "check A \"a\" { yes -> Fin no -> Fin } conclude Fin \"f\" { hazards heat finds nothing }";
        assertEquals(List.of(), untoldText(Texts.findings("note-never-read", end).get(0).fixes().get(0).applied()));
    }

    @Test
    void should_ask_for_a_charge_note_where_stored_charge_may_be_touched() {
        String charge = "condition Charge { present, absent } charged when present point C1 \"c\" part Fuse \"f\"\n";
        String probe = "measure M \"m\" { dc voltage at C1 under 5 V -> End at least 5 V -> End }" + END;
        assertEquals(List.of("note-never-read"), untold(charge + probe));
        assertEquals(List.of("note-never-read"), untold(charge + "do A \"a\" { handles Fuse then -> End }" + END));
        assertEquals(List.of(), untold(charge + "condition Cover { fitted, removed } ends fitted "
                + "do A \"a\" { needs Cover fitted handles Fuse then -> End }" + END));
        assertEquals(List.of(), untold(charge.replace("charged when", "starts absent charged when") + probe));
        assertEquals(List.of(), untold(charge + "measure M \"m\" { temperature at C1 under 5 degC -> End at least 5 degC -> End }" + END));
    }

    @Test
    void should_ask_for_a_shock_note_at_the_step_that_switches_an_open_unit_on() {
        String bench = """
                condition Supply { off, on } live when on starts off
                condition Cover { fitted, removed } starts fitted ends fitted
                condition Pack { out, in } live when in starts out
                point Bulk "b" carries up to 325 V dc
                part Cell "c" hazards battery
                """ + note("Shock", "danger", "shock");
        String open = "do Open \"o\" { notes Shock sets Cover removed then -> Power }";
        assertEquals(List.of("note-after-need"), untold(bench + open + "do Power \"p\" { sets Supply on then -> End }" + END), "read before, and not there");
        assertEquals(List.of(), untold(bench + open + "do Power \"p\" { notes Shock sets Supply on then -> End }" + END));
        Finding late = findings("note-after-need", bench + open + "do Power \"p\" { sets Supply on then -> End }" + END).get(0);
        assertEquals("A path comes to \"Power\", which itself reads no note that covers shock: it switches on while something is open, and \"Bulk\" carries up to 325 V.",
                late.message());
        assertEquals(List.of("Read \"Shock\" at \"Power\""), late.fixes().stream().map(fix -> fix.title()).toList());
        assertEquals(List.of(), untold(bench + "do Power \"p\" { sets Supply on then -> End }" + END), "a closed unit is switched on as every day");
        assertEquals(List.of(), untold(bench.replace("325 V", "24 V") + open + "do Power \"p\" { sets Supply on then -> End }" + END), "nothing to touch");
        assertEquals(List.of(), untold(bench.replace("hazards battery", "hazards battery, static") + note("Live", "notice", "static") + note("Acid", "warning", "battery")
                + open + "do Power \"p\" { notes Live, Acid handles Cell sets Pack in then -> End }" + END), "a battery brings its own voltage");
        assertEquals(List.of(), untold(bench + open + "do Power \"p\" { sets Cover fitted, Supply on then -> End }" + END), "closed in the same step");
        assertEquals(List.of("note-never-read"), untold(bench + "do Power \"p\" { sets Cover removed, Supply on then -> End }" + END), "opened in the same step");
        String low = bench.replace("325 V", "24 V");
        assertEquals(List.of("note-after-need"), untold("equipment \"e\" class II\n" + low + open + "do Power \"p\" { sets Supply on then -> End }" + END), "mains is inside");
        assertEquals(List.of(), untold("equipment \"e\" class III\n" + low + open + "do Power \"p\" { sets Supply on then -> End }" + END));
        String unknown = bench.replace("carries up to 325 V dc", "");
        assertEquals(List.of("note-after-need"), untold(unknown + open + "do Power \"p\" { sets Supply on then -> End }" + END), "advised where nobody says");
        String routine = "routine On \"r\" { exits lit do Plug \"p\" { sets Supply on then -> lit } }";
        assertEquals(List.of(), untold(bench + routine + open + "perform Power \"p\" by On { notes Shock lit -> End }" + END));
        assertEquals(List.of("note-after-need"), untold(bench + routine + open + "perform Power \"p\" by On { lit -> End }" + END));
    }

    @Test
    void should_ask_for_a_data_note_before_an_act_that_wipes() {
        assertEquals(List.of("note-never-read"), untold("do A \"a\" { erases \"settings\" then -> End }" + END));
        assertEquals(List.of(), untold(note("Data", "notice", "data") + "do A \"a\" { notes Data erases \"settings\" then -> End }" + END));
    }

    @Test
    void should_want_a_check_before_anything_is_wiped_on_every_path() {
        String data = note("Data", "notice", "data");
        String wipe = "do Wipe \"w\" { erases \"settings\" then -> End }" + END;
        assertEquals(1, findings("erase-without-backup-check", data + wipe).size());
        assertEquals(0, findings("erase-without-backup-check", data
                + "check Kept \"k\" { notes Data yes -> Wipe no -> End }" + wipe).size());
        assertEquals(1, findings("erase-without-backup-check", data
                + "check Kept \"k\" { yes -> Wipe no -> End }" + wipe).size(), "a question without the note is no such check");
        assertEquals(1, findings("erase-without-backup-check", data + "check Or \"o\" { yes -> Kept no -> Wipe }"
                + "check Kept \"k\" { notes Data yes -> Wipe no -> End }" + wipe).size(), "one path goes round it");
        Finding found = findings("erase-without-backup-check", data + wipe).get(0);
        assertEquals(List.of(), Texts.findings("erase-without-backup-check", found.fixes().get(0).applied()));
    }

    @Test
    void should_accept_a_wipe_that_needs_a_copy_which_only_a_check_or_a_warned_step_can_bring_about() {
        String text = note("Data", "notice", "data") + """
                condition Copy { none, taken }
                check Ask "a" { yes -> Wipe proves Copy taken no -> %s }
                do Take "t" { %s sets Copy taken then -> Wipe }
                do Wipe "w" { needs Copy taken erases "settings" then -> End }
                """ + END;
        assertEquals(0, findings("erase-without-backup-check", text.formatted("End", "notes Data")).size());
        assertEquals(0, findings("erase-without-backup-check", text.formatted("Take", "notes Data")).size());
        assertEquals(1, findings("erase-without-backup-check", text.formatted("Take", "")).size());
    }

    @Test
    void should_hold_the_signal_word_of_every_hazard_against_whom_it_hurts() {
        for (Hazard hazard : Hazard.values()) {
            for (String word : List.of("danger", "warning", "caution", "notice")) {
                List<Finding> found = findings("signal-word-fit", note("N", word, hazard.word()) + "check A \"a\" { yes -> End no -> End }" + END);
                assertEquals(hazard.hurtsPeople() == word.equals("notice") ? 1 : 0, found.size(), word + " " + hazard);
                found.forEach(one -> one.fixes().forEach(fix -> assertEquals(List.of(),
                        Texts.findings("signal-word-fit", fix.applied()), fix.applied())));
            }
        }
        assertEquals(List.of(), findings("signal-word-fit", note("N", "danger", "shock, data") + END));
    }

    @Test
    void should_never_call_anything_safe() {
        Stream<String> words = Stream.of("need-not-established", "live-measurement", "charge-not-proved-absent", "left-open",
                "note-never-read", "note-after-need", "erase-without-backup-check", "signal-word-fit")
                .flatMap(rule -> Texts.findings(rule, head() + note("Hot", "notice", "heat") + """
                        condition Supply { off, on } live when on starts on ends off
                        condition Charge { present, absent } charged when present
                        point P1 "p" carries up to 400 V hazards heat
                        check Ask "q" { yes -> Ohms no -> Hot }
                        check Hot "q" { notes Hot yes -> Ohms no -> Ohms }
                        measure Ohms "o" { resistance at P1 needs Charge absent under 1 ohm -> Wipe at least 1 ohm -> Wipe }
                        do Wipe "w" { erases "all" then -> End }
                        """ + END).stream())
                .flatMap(finding -> Stream.of(finding.message(), finding.advice()));
        List<String> said = words.toList();
        assertTrue(said.size() >= 12, said.toString());
        said.forEach(sentence -> assertTrue(Arrays.stream(sentence.toLowerCase(Locale.ROOT).split("\\W+"))
                .noneMatch("safe"::equals), sentence));
    }

    private static String head() {
        return "procedure P \"p\"\n";
    }

    private static List<Finding> findings(String rule, String text) {
        return Texts.findings(rule, head() + text);
    }

    private static List<String> untold(String text) {
        return untoldText(head() + text);
    }

    /** Which of the two rules about reading notes have something to say. */
    private static List<String> untoldText(String text) {
        return Stream.of("note-never-read", "note-after-need").filter(rule -> !Texts.findings(rule, text).isEmpty()).toList();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

/** The fault table as it is read, and where it takes each fault in the tree. */
class FaultWalkTest {
    private static final String TIMER = """
            procedure Timer "Timer does not switch off"
            fault Relay "Relay stuck" { cases 3 shows Click no 70 % or yes remedy Change }
            fault Coil "Coil open" { cases 1 shows Click no, Ohms 90 ohm remedy Change }
            fault Sensor "Sensor open" { shows Click yes, Ohms within }
            check Click "Does the relay click?" { takes 1 min yes -> Passed no -> Ohms }
            measure Ohms "Coil" { resistance expects 60 ohm .. 80 ohm takes 4 min outside -> Change within -> Change }
            do Change "Change the relay" { takes 5 min then -> TryIt }
            check TryIt "Does it switch off?" { verifies repair takes 2 min yes -> Changed no -> Click at most 1 times, else Passed }
            conclude Changed "Relay changed" { finds Relay, Coil }
            conclude Passed "Passed on" { finds Sensor refers to "the timer bench" }
            """;

    /** Plain bands: nothing says which of them is normal. */
    private static final String BANDS = TIMER.replace("expects 60 ohm .. 80 ohm takes 4 min outside -> Change within -> Change",
            "takes 4 min low under 85 ohm -> Change high at least 85 ohm -> Change").replace("Ohms within", "Ohms low");

    private static Fault fault(Procedure procedure, String name) {
        return procedure.faults().stream().filter(f -> f.name().text().equals(name)).findFirst().orElseThrow();
    }

    private static Step step(Procedure procedure, String name) {
        return procedure.steps().stream().filter(s -> s.name().text().equals(name)).findFirst().orElseThrow();
    }

    private static String path(List<PathStep> path) {
        return String.join(", ", path.stream().map(PathStep::toString).toList());
    }

    @Test
    void should_weigh_faults_and_give_the_rest_to_a_result_without_a_share() {
        Procedure timer = Texts.procedure(TIMER);
        FaultTable table = FaultTable.of(timer);

        assertEquals(List.of("0.6", "0.2", "0.2"), List.of(table.weight(0).toString(), table.weight(1).toString(),
                table.weight(2).toString()));
        assertEquals(Optional.of(Exact.of("0.3")), table.cell(fault(timer, "Relay"), step(timer, "Click")).shares().get("yes"));
        assertTrue(table.stated(fault(timer, "Relay"), step(timer, "Ohms")).isSilent());
        assertTrue(table.follows(fault(timer, "Relay"), step(timer, "Ohms")));
        assertEquals(List.of("within"), List.copyOf(table.cell(fault(timer, "Relay"), step(timer, "Ohms")).outcomes()));
        assertEquals(List.of("outside"), List.copyOf(table.cell(fault(timer, "Coil"), step(timer, "Ohms")).outcomes()));
    }

    @Test
    void should_take_all_faults_alike_where_no_weight_is_above_nothing() {
        FaultTable table = FaultTable.of(Texts.procedure("procedure P \"P\" fault A \"A\" { cases 0 } fault B \"B\" { cases 0 }"));

        assertEquals(Exact.ratio(1, 2), table.weight(1));
    }

    @Test
    void should_tell_apart_only_what_is_sure_to_show_differently() {
        Procedure timer = Texts.procedure(TIMER);
        FaultTable table = FaultTable.of(timer);

        assertTrue(table.apart(fault(timer, "Relay"), fault(timer, "Coil"), timer.steps()), "Ohms is normal for Relay, and not for Coil");
        assertEquals(List.of("Click", "Ohms"), timer.steps().stream()
                .filter(step -> table.apart(fault(timer, "Coil"), fault(timer, "Sensor"), List.of(step))).map(s -> s.name().text()).toList());
    }

    @Test
    void should_say_nothing_of_a_step_of_which_nothing_says_what_is_normal() {
        Procedure timer = Texts.procedure(BANDS);
        FaultTable table = FaultTable.of(timer);

        assertTrue(table.cell(fault(timer, "Relay"), step(timer, "Ohms")).isSilent());
        assertFalse(table.apart(fault(timer, "Relay"), fault(timer, "Coil"), timer.steps()));
        assertTrue(table.isSilentAbout(step(timer, "TryIt")));
    }

    /** What is marked as normal is shown by every fault that says nothing else, except where a repair is judged or nothing is said at all. */
    @Test
    void should_take_what_is_normal_where_a_fault_says_nothing_else() {
        Procedure timer = Texts.procedure(BANDS.replace("low under", "low under").replace("yes -> Passed no -> Ohms", "yes normal -> Passed no -> Ohms")
                .replace("yes -> Changed no", "yes normal -> Changed no").replace("fault Sensor \"Sensor open\" { shows Click yes, Ohms low }",
                        "fault Sensor \"Sensor open\" { shows Ohms low } fault Blank \"b\" { cases 1 }"));
        FaultTable table = FaultTable.of(timer);

        assertTrue(table.follows(fault(timer, "Sensor"), step(timer, "Click")));
        assertEquals(List.of("yes"), List.copyOf(table.cell(fault(timer, "Sensor"), step(timer, "Click")).outcomes()));
        assertTrue(table.cell(fault(timer, "Sensor"), step(timer, "TryIt")).isSilent(), "it verifies a repair");
        assertTrue(table.cell(fault(timer, "Blank"), step(timer, "Click")).isSilent(), "nothing at all is said of it");
        assertTrue(table.saysNothingOf(fault(timer, "Blank")));
    }

    @Test
    void should_come_to_each_conclusion_as_likely_as_its_shares_say() {
        Procedure timer = Texts.procedure(BANDS);
        FaultWalk relay = FaultWalks.of(timer).of(fault(timer, "Relay"));

        assertEquals(List.of("Changed", "Passed"), relay.endings().stream().map(e -> e.conclusion().name().text()).sorted().toList());
        FaultWalk.Ending passed = relay.endings().stream().filter(e -> !e.finds()).findFirst().orElseThrow();
        assertTrue(passed.known());
        assertEquals("Click (yes), Passed", path(passed.path()));
        assertEquals(Optional.empty(), passed.probability(), "what Ohms shows for it nobody says");
    }

    @Test
    void should_give_probabilities_where_all_shares_are_known() {
        Procedure timer = Texts.procedure(TIMER.replace("no 70 % or yes remedy", "no 70 % or yes, Ohms within remedy"));
        FaultWalk relay = FaultWalks.of(timer).of(fault(timer, "Relay"));

        assertEquals(List.of("Changed 0.7", "Passed 0.3"), relay.endings().stream()
                .map(e -> e.conclusion().name() + " " + e.probability().orElseThrow()).sorted().toList());
    }

    @Test
    void should_pass_what_verifies_a_repair_once_it_is_done_and_not_before() {
        Procedure timer = Texts.procedure(TIMER);
        FaultWalk coil = FaultWalks.of(timer).of(fault(timer, "Coil"));
        FaultWalk sensor = FaultWalks.of(Texts.procedure(TIMER.replace("shows Click yes, Ohms within", "shows Click no")))
                .all().get(2);

        assertEquals(List.of("yes"), coil.shownAt(step(timer, "TryIt")));
        assertEquals("Click (no), Ohms (outside), Change (done), TryIt (yes), Changed", path(coil.endings().get(0).path()));
        assertTrue(coil.endings().get(0).repaired());
        assertEquals(List.of("Passed"), sensor.endings().stream().map(e -> e.conclusion().name().text()).toList());
    }

    @Test
    void should_go_through_one_repair_after_another_to_the_one_that_helps() {
        FaultWalks walks = FaultWalks.of(Texts.procedure("""
                procedure Timer "Timer"
                fault A "A" { shows Look dark remedy FixA }
                fault B "B" { shows Look dark remedy FixB }
                check Look "Look" { dark -> FixA light -> None }
                do FixA "A" { then -> TryA }
                check TryA "Try" { verifies repair yes -> IsA no -> FixB }
                do FixB "B" { then -> TryB }
                check TryB "Try" { verifies repair yes -> IsB no -> None }
                conclude IsA "A" { finds A }
                conclude IsB "B" { finds B }
                conclude None "None" { finds nothing }
                """));

        assertEquals(List.of("IsA"), walks.all().get(0).endings().stream().map(e -> e.conclusion().name().text()).toList());
        assertEquals(List.of("IsB"), walks.all().get(1).endings().stream().map(e -> e.conclusion().name().text()).toList());
        assertEquals(List.of(), Ambiguity.in(new Subject(Texts.procedure("procedure P \"P\""), Optional.empty())).orElseThrow().groups());
    }

    @Test
    void should_name_the_step_where_tree_and_table_part() {
        FaultWalk.Parting parting = FaultWalks.of(Texts.procedure(TIMER.replace("finds Sensor ", "")
                .replace("conclude Changed", "check Odd \"Odd\" { yes -> SensorBad no -> SensorBad } "
                        + "conclude SensorBad \"Sensor\" { finds Sensor } conclude Changed")
                .replace("no -> Ohms }", "no -> Ohms twice -> Odd }"))).all().get(2).parting().orElseThrow();

        assertEquals("Click", parting.at().name().text());
        assertEquals("yes", parting.outcome());
        assertEquals("Passed", parting.leadsTo().orElseThrow().name().text());
    }

    @Test
    void should_name_the_last_step_asked_where_the_fault_goes_round_for_ever() {
        FaultWalk.Parting parting = FaultWalks.of(Texts.procedure("""
                procedure Timer "Timer"
                fault A "A" { shows Look dark, Wait long }
                check Look "Look" { dark -> Wait light -> IsA }
                check Wait "Wait" { long -> Look short -> IsA }
                conclude IsA "A" { finds A }
                """)).all().get(0).parting().orElseThrow();

        assertEquals("Wait", parting.at().name().text());
        assertEquals("Look (dark), Wait", path(parting.path()));
    }
}

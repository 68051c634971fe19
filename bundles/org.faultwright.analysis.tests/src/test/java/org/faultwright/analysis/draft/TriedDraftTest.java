/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TriedDraftTest {
    private static final String HEAD = """
            procedure Timer "Timer does not switch off"
            equipment "Kettle timer"
            revision 1 draft
            complaints "does not switch off"
            """;
    private static final String TABLE = HEAD + """
            // out of the last hundred job slips
            fault Coil "Coil weak" { cases 10 shows Smell yes, Lever free remedy ChangeRelay }
            fault Sensor "Sensor open" { cases 20 shows Smell no, Lever free remedy ChangeSensor }
            fault Jam "Lever jammed" { cases 70 shows Lever jammed remedy FreeLever }
            fault Lost "Program lost" { cases 5 shows Smell no, Lever free, Code "E 05" }
            """;

    private static TriedDraft.Draft draft(String text) {
        return TriedDraft.of(Texts.procedure(text), one -> Texts.document(one.name(), one.content()), new Checker());
    }

    private static Procedure drafted(String text) {
        TriedDraft.Draft draft = draft(text);
        return Texts.procedure(draft.text().orElseThrow(() -> new AssertionError(draft.remarks())));
    }

    private static List<String> worse(Procedure procedure) {
        return new Checker().check(procedure).stream().filter(finding -> finding.severity() != Severity.ADVICE)
                .map(finding -> finding.rule() + ": " + finding.message()).toList();
    }

    @Test
    void should_draft_from_a_fault_table_alone() {
        Procedure draft = drafted(TABLE);

        assertEquals(List.of(), draft.problems());
        assertEquals(List.of("ambiguity-group: No step that is asked tells \"Sensor\" and \"Lost\" apart."), worse(draft), "the table does not tell them apart");
        for (FaultWalk walk : FaultWalks.of(draft).all()) {
            assertTrue(walk.reachesFinding(), walk.fault().name().text());
            assertTrue(walk.endings().stream().allMatch(end -> end.finds() || !end.known()), walk.fault().name().text());
        }
        assertTrue(draft.source().content().contains("// out of the last hundred job slips"));
        assertEquals("SeeIt", draft.begin().orElseThrow().text());
    }

    /** "below" comes first among the outcomes, and is written where the step ends. */
    @Test
    void should_write_out_in_its_place_what_went_without_saying() {
        Procedure draft = drafted("""
                procedure Rail "Rail is low"
                otherwise AskTheMaker
                instrument Meter "Meter" { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits }
                point P "TP1"
                fault Fuse "Fuse" { cases 3 shows Volts below remedy NewFuse }
                fault Knob "Knob turned" { cases 2 shows Volts above remedy TurnTheKnobBack }
                measure Volts "Rail" {
                    dc voltage at P using Meter
                    takes 1 min
                    expects 24 V +/- 5 %
                    source "House rule" dated 2026-01-05
                    within -> AskTheMakerOrSomebodyElseWhoKnows
                }
                conclude AskTheMaker { refers to "the maker" }
                conclude AskTheMakerOrSomebodyElseWhoKnows { refers to "the maker" }
                """);

        assertEquals(List.of(), draft.problems());
        FaultWalks.of(draft).all().forEach(walk -> assertTrue(walk.reachesFinding(), draft.source().content()));
    }

    @Test
    void should_say_what_the_table_leaves_open_and_write_nothing_into_it() {
        TriedDraft.Draft draft = draft(TABLE);

        assertTrue(draft.remarks().contains("The table does not say what \"Code\" shows for \"Sensor\"; the draft takes it to be \"other\"."),
                draft.remarks().toString());
        assertTrue(draft.text().orElseThrow().contains("shows Smell no, Lever free remedy ChangeSensor"), draft.text().orElseThrow());
    }

    private static final String BENCH = HEAD + """
            condition Supply { off, on } live when on starts off ends off
            condition Cover { fitted, removed } starts fitted ends fitted
            condition Charge { present, absent } charged when present becomes present when Supply on proved at Bulk at most 60 V starts present
            point Bulk "C1" carries up to 325 V dc hazards charge
            part Board "Board"
            note Shock danger { covers shock, charge hazard "C1 stays charged." consequence "It can kill." avoid "Prove it dead." }
            routine MakeDead "Prove it dead" {
                exits dead normal, notDead
                do Off "Pull the plug" { sets Supply off takes 1 min then -> Read }
                measure Read "Read C1" {
                    dc voltage at Bulk
                    needs Supply off
                    notes Shock
                    takes 1 min
                    source "House rule" dated 2026-01-05
                    gone at most 60 V -> dead proves Charge absent
                    left over 60 V -> notDead
                }
            }
            do On "Plug in" { notes Shock sets Supply on takes 1 min }
            do Open "Take the cover off" { needs Supply off sets Cover removed takes 2 min }
            do Shut "Fit the cover" { needs Supply off sets Cover fitted takes 2 min }
            check SeeIt "Does it run?" { confirms complaint needs Supply on takes 1 min runs still }
            """.replace(" runs still }", " runs -> SeeIt still -> SeeIt }");

    @Test
    void should_come_to_a_repair_from_the_safe_state_without_being_told() {
        Procedure draft = drafted(BENCH + """
                fault Fuse "Fuse" { cases 3 shows SeeIt still, Glow no remedy NewFuse }
                fault Lamp "Lamp" { cases 1 shows SeeIt still, Glow yes remedy NewLamp }
                do NewFuse "Fit a fuse" { needs Cover removed handles Board takes 3 min }
                do NewLamp "Fit a lamp" { takes 3 min }
                """);

        assertEquals(List.of(), new Checker().check(draft).stream().filter(finding -> finding.severity() == Severity.ERROR).toList());
        List<String> way = FaultWalks.of(draft).all().get(0).endings().stream().filter(FaultWalk.Ending::finds).findFirst().orElseThrow().path()
                .stream().map(move -> move.toString().replaceFirst(" .*", "")).toList();
        int repair = way.indexOf("NewFuse");
        assertTrue(way.subList(0, repair).stream().anyMatch(step -> step.startsWith("DoMakeDead")), way.toString());
        assertEquals(1, way.subList(0, repair).stream().filter(step -> step.startsWith("Open")).count(), "opened once: " + way);
    }

    @Test
    void should_write_nothing_where_an_error_is_left_and_tell_it() {
        TriedDraft.Draft draft = draft(BENCH + """
                fault Fuse "Fuse" { cases 3 shows SeeIt still, Glow no remedy NewFuse }
                fault Lamp "Lamp" { cases 1 shows SeeIt still, Glow yes remedy NewLamp }
                do NewFuse "Fit a fuse" { needs Supply on, Cover removed handles Board takes 3 min }
                do NewLamp "Fit a lamp" { takes 3 min }
                """);

        assertTrue(draft.text().isEmpty());
        assertTrue(draft.remarks().stream().anyMatch(remark -> remark.startsWith("live-work: \"NewFuse\"")), draft.remarks().toString());
    }

    @Test
    void should_leave_a_tree_alone_that_is_whole_and_draft_the_same_only_once() {
        String once = draft(TABLE).text().orElseThrow();

        TriedDraft.Draft twice = draft(once);

        assertTrue(twice.text().isEmpty());
        assertTrue(twice.remarks().get(0).startsWith("The steps are all there"), twice.remarks().toString());
    }

    @Test
    void should_follow_a_repair_with_what_its_author_lets_follow_it() {
        Procedure draft = drafted(HEAD + """
                fault Coil "Coil" { cases 1 shows Click no remedy ChangeCoil }
                fault Arm "Arm" { cases 9 shows Click yes remedy FreeArm }
                do ChangeCoil "Change the coil" { takes 2 min then -> LongRun }
                check LongRun "Let it run for an hour. Did it stop?" { verifies repair takes 1 h stopped -> Nothing ran -> Done }
                check ShortRun "Let it run. Did it stop?" { verifies repair takes 1 min stopped -> Nothing ran -> DoneToo }
                conclude Done "Coil" { finds Coil }
                conclude DoneToo "Arm" { finds Arm }
                conclude Nothing "Not it" { refers to "x" }
                """);

        Step change = draft.steps().stream().filter(step -> step.name().text().equals("ChangeCoil")).findFirst().orElseThrow();
        assertTrue(change.outcomes().get(0).target().orElseThrow().text().startsWith("LongRun"), draft.source().content());
        assertEquals("ran", draft.steps().stream().filter(step -> step.name().text().startsWith("LongRun")).flatMap(step -> step.outcomes().stream())
                .filter(outcome -> outcome.target().orElseThrow().text().equals("Done")).findFirst().orElseThrow().key());
    }

    @Test
    void should_take_a_reading_before_what_is_computed_from_it() {
        Procedure draft = drafted(HEAD + """
                instrument Meter "Meter" { dc voltage up to 60 V resolution 1 mV accuracy 0.5 % of reading + 2 digits }
                fault Coil "Coil" { cases 1 shows Drop above remedy ChangeCoil }
                fault Arm "Arm" { cases 9 shows Drop within remedy FreeArm }
                measure In "Before" { dc voltage using Meter takes 1 min source "Sheet 1" dated 2026-01-05 }
                measure Out "Behind" { dc voltage using Meter takes 1 min source "Sheet 1" dated 2026-01-05 }
                calculate Drop "What is lost?" { value In - Out expects at most 2 V takes 10 s source "Sheet 1" dated 2026-01-05 }
                """);

        assertEquals(List.of(), worse(draft));
    }

    /** Steps declared with their limits and set-ups, some without results: what the demo's author had before the evening. */
    @Test
    void should_draft_from_steps_without_arrows_and_keep_what_they_say() {
        Procedure draft = drafted(HEAD + """
                condition Supply "Supply" { off, on } live when on starts off ends off
                condition Cover "Cover" { fitted, removed } starts fitted ends fitted
                fault Fuse "Fuse blown" { cases 3 shows SeeIt dead, Lamp none, Ohms above remedy ChangeFuse }
                fault Board "Board dead" { cases 1 shows SeeIt dead, Lamp none, Ohms within }
                fault Jack "Jack loose" { cases 6 shows SeeIt dead, Lamp 3 blinks, Ohms within remedy SeatJack }
                indicator Panel "Lamp" { 3 blinks means "No input" source "Sheet 2" dated 2025-01-07 }
                check SeeIt "Switch on. Does it run?" { confirms complaint needs Supply on takes 1 min }
                observe Lamp "Count the blinks" at Panel { needs Supply on takes 1 min }
                instrument Meter "Meter" { resistance up to 600 ohm resolution 0.1 ohm accuracy 0.5 % of reading + 2 digits }
                measure Ohms "Fuse" {
                    resistance using Meter
                    expects at most 2 ohm
                    needs Supply off, Cover removed
                    takes 2 min
                    source "Sheet 3" dated 2025-01-07
                    // cold only
                    within -> Ohms
                    above  -> Ohms
                }
                do On "Switch on" { sets Supply on takes 10 s }
                do Off "Switch off and pull the plug" { sets Supply off takes 10 s }
                do Open "Lift the cover" { needs Supply off sets Cover removed takes 2 min }
                do Shut "Fit the cover" { needs Supply off sets Cover fitted takes 2 min }
                do ChangeFuse "Change the fuse" { needs Supply off, Cover removed takes 3 min }
                do SeatJack "Seat the jack" { needs Supply off takes 1 min }
                """);

        assertEquals(List.of(), draft.problems());
        assertEquals(List.of(), worse(draft));
        assertTrue(draft.source().content().contains("// cold only"));
        assertEquals(List.of("3 blinks", "none", "anything else"), draft.steps().stream()
                .filter(step -> step.name().text().equals("Lamp")).flatMap(step -> step.outcomes().stream()).map(o -> o.key()).toList());
    }

    @Test
    void should_repair_one_after_the_other_what_nothing_tells_apart() {
        Procedure draft = drafted(HEAD + """
                fault Coil "Coil" { cases 1 shows Click no remedy ChangeCoil }
                fault Arm "Arm" { cases 9 shows Click no remedy FreeArm }
                """);

        assertEquals(Set.of("unreachable-step", "unused-reading"), worse(draft).stream().map(found -> found.split(":")[0])
                .collect(Collectors.toSet()), "of Click, which tells nothing");
        assertEquals(List.of("SeeIt (yes), FreeArm (done), TryFreeArm (no), ChangeCoil (done), TryChangeCoil (yes), Coil"),
                FaultWalks.of(draft).all().get(0).endings().stream().filter(FaultWalk.Ending::finds).map(end -> String.join(", ",
                        end.path().stream().map(Object::toString).toList())).toList());
    }

    /** The demo's steps with every arrow led nowhere useful, and no conclusions: drafted anew, clean but for advice. */
    @ParameterizedTest
    @ValueSource(strings = {"LundavikTillDrawer", "OllenbyFaintLabels", "TarnholmWeakFlash", "HavendyneColdIron", "BrinmoorDeadCharger",
        "OrrisbyScaleReadsWrong", "QuerrinRecorderDropsOut", "WexholtCloudyLaminator"})
    void should_draft_the_demo_anew_without_an_error(String name) throws IOException {
        Path file = Path.of("..", "..", "procedures-demo", name + ".procedure");
        Procedure demo = (Procedure) ProcedureReader.overFiles().read(file);
        String table = beforeSteps(Files.readString(file), demo);

        TriedDraft.Draft draft = TriedDraft.of((Procedure) ProcedureReader.overFiles().read(new SourceText(file.toString(), table)),
                ProcedureReader.overFiles()::read, new Checker());

        Procedure drafted = (Procedure) ProcedureReader.overFiles().read(new SourceText(file.toString(), draft.text().orElseThrow(() -> new AssertionError(draft.remarks()))));
        assertEquals(List.of(), drafted.problems());
        List<String> found = new Checker().check(drafted).stream()
                .filter(f -> f.severity() == Severity.ERROR && !f.rule().equals("changed-after-release")).map(Finding::message).toList();
        assertEquals(List.of(), found, draft.text().orElseThrow());
        assertTrue(FaultWalks.of(drafted).all().stream().allMatch(FaultWalk::reachesFinding));
    }

    private static String beforeSteps(String text, Procedure demo) {
        int first = demo.writtenSteps().get(0).at().offset();
        assertTrue(demo.faults().stream().allMatch(fault -> fault.at().end() < first), "the faults stand before the steps");
        return text.substring(0, first).replaceAll("(?m)^(begin at|otherwise) \\w+", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"procedure P \"P\"", "procedure P \"P\" fault F \"F\" { } check { nonsense"})
    void should_say_why_there_is_no_draft(String text) {
        TriedDraft.Draft draft = draft(text);

        assertTrue(draft.text().isEmpty());
        assertEquals(1, draft.remarks().size());
        assertTrue(draft.remarks().get(0).endsWith("."), draft.remarks().toString());
    }
}

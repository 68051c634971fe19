/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Checker;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Texts;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DraftTreeTest {
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

    private static Procedure drafted(String text) {
        return Texts.procedure(DraftTree.of(Texts.procedure(text)).text().orElseThrow());
    }

    private static List<String> worse(Procedure procedure) {
        return new Checker().check(procedure).stream().filter(finding -> finding.severity() != Severity.ADVICE)
                .map(finding -> finding.rule() + ": " + finding.message()).toList();
    }

    @Test
    void should_draft_from_a_fault_table_alone() {
        Procedure draft = drafted(TABLE);

        assertEquals(List.of(), draft.problems());
        assertEquals(List.of(), worse(draft));
        for (FaultWalk walk : FaultWalks.of(draft).all()) {
            assertTrue(walk.reachesFinding(), walk.fault().name().text());
            assertTrue(walk.endings().stream().allMatch(end -> end.finds() || !end.known()), walk.fault().name().text());
        }
        assertTrue(draft.source().content().contains("// out of the last hundred job slips"));
        assertEquals("SeeIt", draft.begin().orElseThrow().text());
    }

    @Test
    void should_say_what_it_has_written_into_the_table() {
        DraftTree.Draft draft = DraftTree.of(Texts.procedure(TABLE));

        assertEquals("The table did not say what Code shows for Sensor: other is written there.", draft.remarks().get(0));
        assertTrue(draft.text().orElseThrow().contains("shows Smell no, Lever free, Code other remedy ChangeSensor"));
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
        assertEquals(List.of("SeeIt (yes), FreeArm (done), TryFreeArm (no), ChangeCoil (done), TryChangeCoil (yes), FoundCoil"),
                FaultWalks.of(draft).all().get(0).endings().stream().filter(FaultWalk.Ending::finds).map(end -> String.join(", ",
                        end.path().stream().map(Object::toString).toList())).toList());
    }

    /** The demo's steps with every arrow led nowhere useful, and no conclusions: drafted anew, clean but for advice. */
    @ParameterizedTest
    @ValueSource(strings = {"LundavikTillDrawer", "OllenbyFaintLabels", "TarnholmWeakFlash", "HavendyneColdIron"})
    void should_draft_the_demo_anew_without_an_error(String name) throws IOException {
        Path file = Path.of("..", "..", "procedures-demo", name + ".procedure");
        Procedure demo = (Procedure) ProcedureReader.overFiles().read(file);
        String table = beforeSteps(Files.readString(file), demo);

        DraftTree.Draft draft = DraftTree.of((Procedure) ProcedureReader.overFiles().read(new SourceText(file.toString(), table)));

        Procedure drafted = (Procedure) ProcedureReader.overFiles().read(new SourceText(file.toString(), draft.text().orElseThrow()));
        assertEquals(List.of(), drafted.problems());
        List<String> found = new Checker().check(drafted).stream()
                .filter(f -> f.severity() == Severity.ERROR && !f.rule().equals("changed-after-release")).map(Finding::message).toList();
        assertEquals(List.of(), found, draft.text().orElseThrow());
        assertTrue(FaultWalks.of(drafted).all().stream().allMatch(FaultWalk::reachesFinding));
    }

    private static String beforeSteps(String text, Procedure demo) {
        int first = demo.writtenSteps().get(0).at().offset();
        assertTrue(demo.faults().stream().allMatch(fault -> fault.at().end() < first), "the faults stand before the steps");
        return text.substring(0, first).replaceAll("(?m)^begin at \\w+", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {"procedure P \"P\"", "procedure P \"P\" fault F \"F\" { } check { nonsense"})
    void should_say_why_there_is_no_draft(String text) {
        DraftTree.Draft draft = DraftTree.of(Texts.procedure(text));

        assertTrue(draft.text().isEmpty());
        assertEquals(1, draft.remarks().size());
        assertTrue(draft.remarks().get(0).endsWith("."), draft.remarks().toString());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.compare.ProcedureComparison;
import org.faultwright.analysis.faults.KeptArrows;
import org.faultwright.analysis.paths.RunningOn;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.SheetChange;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A step runs on to the one below it, and no change of the text leads it elsewhere without saying so. */
class RunningOnTest {
    private static final String HEAD = """
            procedure P "p"
            otherwise Refer
            condition Supply { off, on } starts off ends off
            fault Worn "Worn" { shows Volts below remedy Mend }
            routine Open "Open it" { exits open normal, stuck
                do Turn "Turn" { ARROW }
                check Moves "Moves?" { yes normal -> open no -> stuck } }
            routine Try "Try it" { exits good normal, bad check Judge "Good?" { verifies repair yes -> good no -> bad } }
            routine Wait "Wait" { exits rested do Sit "Sit" { then -> rested } }
            """;
    private static final String STEPS = """
            check See "?" { light normal -> Fine dark -> Volts }
            measure Volts "V" { dc voltage expects 5 V +/- 5 % below -> Fine A }
            do Mend "Mend" { takes 1 min B }
            perform Opened by Open { C }
            perform Waited by Wait { D }
            perform Tried by Try { good -> Fine }
            conclude Fine { finds nothing }
            conclude Refer { refers to "Bench" }
            """;
    private static final String LONG = HEAD.replace("ARROW", "then -> Moves") + STEPS.replace("A }", "within -> Mend above -> Refer }").replace("B }", "then -> Opened }")
            .replace("C }", "open -> Waited stuck -> Refer }").replace("D }", "rested -> Tried }").replace("good -> Fine", "good -> Fine bad -> Refer");
    private static final String SHORT = HEAD.replace("ARROW ", "") + STEPS.replaceAll(" [A-D] }", " }");

    private static Document read(String text) {
        return Texts.document(text, Map.of());
    }

    private static List<Map<String, List<String>>> arrows(String text) {
        return read(text).graphs().stream().map(ArrowTargets::of).toList();
    }

    private static List<String> rules(String text) {
        return Texts.findings(text).stream().map(Finding::rule).sorted().toList();
    }

    @Test
    void should_mean_what_the_same_text_written_out_means() {
        assertEquals(arrows(LONG), arrows(SHORT));
        assertEquals(List.of(), ProcedureComparison.of((Procedure) read(LONG), (Procedure) read(SHORT)));
        assertEquals(rules(LONG), rules(SHORT));
        assertEquals(5, read(SHORT).graphs().stream().mapToInt(graph -> RunningOn.arrows(graph).size()).sum());
    }

    @Test
    void should_show_a_comparison_that_a_step_was_put_between() {
        String between = SHORT.replace("perform Opened", "do Look \"Look\" { takes 1 min }\nperform Opened");

        assertTrue(ProcedureComparison.of((Procedure) read(SHORT), (Procedure) read(between)).stream().anyMatch(one -> one.toString().contains("Mend")
                && one.toString().contains("Look")), ProcedureComparison.of((Procedure) read(SHORT), (Procedure) read(between)).toString());
    }

    /** Into a conclusion, out of a routine, from what judges a repair, and where several outcomes might be meant, it must stand in the text. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', value = {
            "perform Tried by Try { good -> Fine } | perform Tried by Try { } do Next \"n\" { then -> Fine } | empty-outcomes",
            "perform Tried by Try { good -> Fine } | do Last \"l\" { takes 1 min } | empty-outcomes",
            "perform Waited by Wait { } perform Tried by Try { good -> Fine } | perform Waited by Wait { } | empty-outcomes",
            "check Moves \"Moves?\" { yes normal -> open no -> stuck } | | empty-outcomes",
            "exits open normal, stuck | exits open, stuck | empty-outcomes",
            "dc voltage expects 5 V +/- 5 % below -> Fine | dc voltage | empty-outcomes",
            "do Mend \"Mend\" { takes 1 min } | check Mend \"Mend\" { takes 1 min } | empty-outcomes",
            "do Mend \"Mend\" { takes 1 min } | do Mend \"Mend\" { takes 1 min verifies repair } | empty-outcomes",
            "perform Opened by Open { } | perform Opened by Nobody { } | unknown-name",
            "otherwise Refer | // nowhere | empty-outcomes",
            "perform Opened by Open { } | conclude Opened { finds nothing } | empty-outcomes",
            "perform Opened by Open { } | do Waited \"w\" { } | empty-outcomes"})
    void should_not_run_on_where_a_reader_could_be_deceived(String was, String is, String rule) {
        String text = SHORT.replaceAll("\\n(?=perform Tried)", " ").replace(was, is == null ? "" : is);

        assertFalse(text.equals(SHORT.replaceAll("\\n(?=perform Tried)", " ")), was);
        assertTrue(rules(text).contains(rule), rules(text).toString());
    }

    @Test
    void should_lead_nowhere_while_no_step_says_yet_where_it_leads() {
        String undrafted = "procedure P \"p\" do A \"a\" { } do B \"b\" { } check C \"c\" { } conclude Fine { finds nothing }";

        assertEquals(List.of(), RunningOn.arrows((StepGraph) read(undrafted)));
        assertEquals(1, RunningOn.arrows((StepGraph) read(undrafted.replace("do B \"b\" { }", "do B \"b\" { then -> Fine }"))).size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"do A \"a\" {", "do A \"a\" { do B \"b\" { then -> A }", "do A \"a\" { } do \"b\" { } do B \"b\" { then -> A }", "do A \"a\" { } do A \"a\" { then -> A }",
            "do A \"a\" { } } do B \"b\" { then -> A }", "do A \"}", "measure A \"a\" { dc voltage expects } do B \"b\" { then -> A }", "perform A by A { } do B { then -> A }",
            "routine R { exits R do R \"r\" { } do S \"s\" { then -> R } } perform A by R { } do B { then -> A }", "do A \"a\" { then } do B \"b\" { then -> A }", "do A \"a\" { then -> } do B \"b\" { then -> A }",
            "routine R { exits x perform P by S { } do Y { then -> x } } routine S { exits y perform Q by R { } do Z { then -> y } } perform A by R { } do B { then -> A }"})
    void should_bear_what_cannot_be_read(String steps) {
        List<Finding> found = Texts.findings("procedure P \"p\" " + steps);

        assertFalse(found.isEmpty());
        assertTrue(found.stream().noneMatch(one -> one.rule().equals("rule-failed")), found.toString());
    }

    @Test
    void should_write_the_arrow_out_in_lines_and_on_one_line() {
        String lines = SHORT.replace("do Mend \"Mend\" { takes 1 min }", "do Mend \"Mend\" {\n    takes 1 min\n}");
        Procedure one = (Procedure) read(lines);
        StepChange.Offered change = (StepChange.Offered) new StepEdits(one, one).turn(step(one, "Mend"), 0, false, "Waited");

        assertTrue(change.fix().applied().contains("do Mend \"Mend\" {\n    takes 1 min\n    then -> Waited\n}"), change.fix().applied());
        Procedure other = (Procedure) read(SHORT);
        assertTrue(((StepChange.Offered) new StepEdits(other, other).turn(step(other, "Mend"), 0, false, "Waited")).fix().applied()
                .contains("do Mend \"Mend\" { takes 1 min then -> Waited }"));
        StepGraph routine = one.graphs().get(1);
        Fix within = ((StepChange.Offered) new StepEdits(one, routine).add(routine.steps().get(0), new NewStep(NewStep.Kind.DO, "Fresh", "New"))).fix();
        assertTrue(within.applied().contains("do Turn \"Turn\" { then -> Moves }"), within.applied());
    }

    private static Step step(StepGraph graph, String name) {
        return graph.writtenSteps().stream().filter(one -> one.name().text().equals(name)).findFirst().orElseThrow();
    }

    @Test
    void should_keep_the_arrows_when_a_column_of_the_table_becomes_a_step() {
        Procedure procedure = (Procedure) read(SHORT);
        SheetChange change = new SheetChange(FaultSheet.of(new Subject(procedure, Optional.empty()), List.of()).orElseThrow());
        change.addStep("Is it warm?", List.of("warm", "cold"));
        Map<String, List<String>> after = new LinkedHashMap<>(arrows(change.fix("Add").orElseThrow().applied()).get(0));

        after.keySet().retainAll(arrows(SHORT).get(0).keySet());
        assertEquals(arrows(SHORT).get(0), after);
    }

    // ---- changes against the same changes of the text in which all is written

    static IntStream seeds() {
        return IntStream.range(0, 40);
    }

    /** A procedure and a routine at random, with every arrow written, or without those that lead to the step below and need not be. */
    private static String drawn(int seed, boolean all) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder("procedure P \"p\"\n" + (random.nextBoolean() ? "otherwise Refer\n" : "")
                + "routine Open \"Open it\" {\n    exits open normal, stuck\n" + steps(random, all, "    ", "S", List.of("open", "stuck")) + "}\n"
                + "routine Try \"Try it\" { exits good normal, bad check Judge \"Good?\" { verifies repair yes -> good no -> bad } }\n"
                + "fault Worn \"Worn\" { cases 3 shows T0 no remedy T1 }\n");
        text.append(steps(random, all, "", "T", List.of("Fine", "Refer")));
        return text + "conclude Fine { finds Worn }\nconclude Refer { refers to \"Bench\" }\nexample \"e\" { T0 no ends at Refer }\n";
    }

    private static String steps(Random random, boolean all, String indent, String prefix, List<String> ends) {
        StringBuilder text = new StringBuilder();
        int count = 3 + random.nextInt(5);
        for (int i = 0; i < count; i++) {
            String name = prefix + i;
            List<String> others = new ArrayList<>(ends);
            for (int j = 0; j < count; j++) {
                if (j != i) {
                    others.add(prefix + j);
                }
            }
            boolean below = i + 1 < count && random.nextInt(4) > 0;
            String next = below ? prefix + (i + 1) : others.get(random.nextInt(others.size()));
            boolean unsaid = !all && i + 1 < count && next.equals(prefix + (i + 1));
            String other = others.get(random.nextInt(others.size()));
            String gap = random.nextInt(3) == 0 ? " " : "\n" + indent + "    ";
            String end = gap.equals(" ") ? " }" : "\n" + indent + "}";
            boolean routine = prefix.equals("T");
            text.append(indent).append(switch (i == 0 ? 0 : random.nextInt(routine ? 5 : 3)) {
                case 0 -> "check " + name + " \"?\" {" + gap + "yes normal -> " + next + gap + "no -> " + other + end;
                case 1 -> "do " + name + " \"d\" {" + gap + "takes 1 min" + (unsaid ? "" : gap + "then -> " + next) + end;
                case 2 -> "measure " + name + " \"m\" {" + gap + "dc voltage" + gap + "expects 5 V +/- 5 %" + gap + "below -> " + other
                        + (unsaid ? "" : gap + "within -> " + next) + gap + "above -> " + ends.get(1) + end;
                case 3 -> "perform " + name + " by Open {" + (unsaid ? "" : gap + "open -> " + next) + gap + "stuck -> " + other + end;
                default -> "perform " + name + " by Try {" + gap + "good -> " + next + gap + "bad -> " + other + end;
            });
            text.append(random.nextInt(4) == 0 ? " // as ever\n" : "\n");
        }
        return text.toString();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void should_change_as_the_text_changes_in_which_all_is_written(int seed) {
        String all = drawn(seed, true);
        String some = drawn(seed, false);
        assertEquals(arrows(all), arrows(some), some);
        Document whole = read(all);
        Document brief = read(some);
        for (int g = 0; g < whole.graphs().size(); g++) {
            StepEdits onWhole = new StepEdits(whole, whole.graphs().get(g));
            StepEdits onBrief = new StepEdits(brief, brief.graphs().get(g));
            for (Step step : whole.graphs().get(g).writtenSteps()) {
                Step same = step(brief.graphs().get(g), step.name().text());
                agree(onWhole.takeOut(step), onBrief.takeOut(same), "take out " + step.name(), some);
                for (NewStep.Kind kind : NewStep.Kind.values()) {
                    NewStep fresh = new NewStep(kind, "Fresh", "New", kind == NewStep.Kind.MEASURE
                            ? Optional.of(new NewStep.Reading("dc voltage", "Rail", "", "Meter", "24 V +/- 5 %")) : Optional.empty());
                    agree(onWhole.add(step, fresh), onBrief.add(same, fresh), "add behind " + step.name(), some);
                    for (int i = 0; i < step.outcomes().size(); i++) {
                        agree(onWhole.insert(step, i, false, fresh), onBrief.insert(same, i, false, fresh), "insert behind " + step.name() + " " + i, some);
                    }
                }
                for (int i = 0; i < step.outcomes().size(); i++) {
                    for (Step to : whole.graphs().get(g).writtenSteps()) {
                        agree(onWhole.turn(step, i, false, to.name().text()), onBrief.turn(same, i, false, to.name().text()), "turn " + step.name() + " " + i, some);
                    }
                }
            }
        }
    }

    private static void agree(StepChange whole, StepChange brief, String what, String text) {
        assertEquals(whole.getClass(), brief.getClass(), () -> what + "\n" + whole + "\n" + brief + "\n" + text);
        if (whole instanceof StepChange.Offered one && brief instanceof StepChange.Offered other) {
            String after = other.fix().applied();
            assertTrue(other.holds(read(after)), () -> what + "\n" + text + "\n" + after);
            assertEquals(arrows(one.fix().applied()), arrows(after), () -> what + "\n" + text + "\n" + after);
        }
    }

    /** The fixes of every rule, in both texts. */
    @ParameterizedTest
    @MethodSource("seeds")
    void should_fix_as_the_text_is_fixed_in_which_all_is_written(int seed) {
        Map<String, List<Map<String, List<String>>>> whole = fixed(drawn(seed, true));
        Map<String, List<Map<String, List<String>>>> brief = fixed(drawn(seed, false));

        brief.forEach((what, arrows) -> {
            if (whole.containsKey(what)) {
                assertEquals(whole.get(what), arrows, () -> what + "\n" + drawn(seed, false));
            }
        });
    }

    private static Map<String, List<Map<String, List<String>>>> fixed(String text) {
        Map<String, List<Map<String, List<String>>>> fixed = new LinkedHashMap<>();
        Texts.findings(text).forEach(finding -> finding.fixes().forEach(fix -> fixed.put(finding.rule() + ": " + finding.message() + " " + fix.title(), arrows(fix.applied()))));
        return fixed;
    }

    /** Whatever is put between a step and the one below it, or takes one of them away, the arrow stands in the text then. */
    @Test
    void should_write_out_each_arrow_that_a_change_parts() {
        Document document = read(SHORT);
        KeptArrows running = KeptArrows.in(new Subject(document, Optional.empty()));
        for (StepGraph graph : document.graphs()) {
            for (RunningOn.Arrow arrow : RunningOn.arrows(graph)) {
                int place = arrow.below().at().offset();
                Fix between = running.kept(Fix.replacing("x", new SourceRange(document.source(), place, 0), "do Fresh \"f\" { then -> " + arrow.below().name() + " }\n"));

                List<Map<String, List<String>>> after = new ArrayList<>();
                arrows(between.applied()).forEach(one -> after.add(new LinkedHashMap<>(one)));
                after.forEach(one -> one.remove("Fresh"));
                assertEquals(arrows(SHORT), after, between.applied());
                assertEquals(2, between.edits().size());
            }
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.ChangingCheck;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;

/** Lines of the demo are typed and deleted key by key; what the changed text means, and what is found in it, is the same as from nothing. */
class TypingTest {
    private static final Path DEMO = Path.of("../../procedures-demo");

    private static final Checker QUICK = new Checker(RuleSet.quick(), Optional.empty());

    /** Every so many lines; 1 types all of the demo. */
    private static final int EVERY = Integer.getInteger("faultwright.typing.every", 611);

    private static List<Path> demo() throws IOException {
        try (Stream<Path> files = Files.walk(DEMO)) {
            return files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
    }

    @Test
    void should_read_and_check_a_text_after_each_key_as_from_nothing() throws IOException {
        int keys = 0;
        for (Path file : demo()) {
            keys += type(file);
        }
        assertTrue(keys > 100, "only " + keys + " keys were typed");
    }

    private static int type(Path file) throws IOException {
        String text = Files.readString(file);
        ProcedureReader reader = ProcedureReader.overFiles();
        ProcedureReader.Changing changing = reader.changing();
        ChangingCheck check = QUICK.changing();
        int keys = 0;
        int start = 0;
        for (int line = 0; start < text.length(); line++) {
            int end = text.indexOf('\n', start) < 0 ? text.length() : text.indexOf('\n', start);
            if (line % EVERY == EVERY / 2) {
                for (int typed = start; typed <= end; typed++) {
                    assertSame(file, reader, changing, check, text.substring(0, typed) + text.substring(end));
                    keys++;
                }
                for (int deleted = start; deleted <= end; deleted += 3) {
                    assertSame(file, reader, changing, check, text.substring(0, start) + text.substring(deleted));
                    keys++;
                }
            }
            start = end + 1;
        }
        return keys;
    }

    private static void assertSame(Path file, ProcedureReader reader, ProcedureReader.Changing changing, ChangingCheck check, String content) {
        SourceText text = new SourceText(file.toString(), content);
        Document after = changing.read(text);
        Document fromNothing = reader.read(text);
        if (!fromNothing.equals(after)) {
            assertEquals(fromNothing.problems(), after.problems(), () -> content);
            assertEquals(fromNothing.toString(), after.toString(), () -> content);
        }
        assertEquals(fromNothing, after);
        assertEquals(QUICK.assess(QUICK.subject(fromNothing)), check.assess(QUICK.subject(after)), () -> content);
    }

    private static Procedure procedure(String text) {
        return (Procedure) ProcedureReader.overFiles().read(new SourceText("Test.procedure", text));
    }

    private static final String LAMP = """
            procedure Lamp "Lamp stays dark"
            equipment "Lamp"
            revision 1 draft
            complaints "dark"
            point Mains "Plug" carries up to 24 V dc

            check SeeIt "Is it dark?" {
                confirms complaint
                takes 1 min
                yes -> Bulb
                no  -> Fine
            }
            check Bulb "Is the bulb black?" {
                takes 1 min
                yes -> Fine
                no  -> Fine
            }
            conclude Fine "Nothing found" {
                finds nothing
                report "Tried as described."
            }
            """;

    private static List<String> names(Procedure procedure) {
        return procedure.steps().stream().map(step -> step.name().text()).toList();
    }

    private static List<String> rules(Procedure procedure) {
        return new Checker().check(procedure).stream().map(Finding::rule).toList();
    }

    @Test
    void should_cost_one_step_only_when_its_brace_is_missing() {
        Procedure read = procedure(LAMP.replace("no  -> Fine\n}\ncheck Bulb", "no  -> Fine\ncheck Bulb"));
        assertEquals(List.of("SeeIt", "Bulb", "Fine"), names(read));
        assertEquals(List.of("This \"check\" begins before the check SeeIt is closed; put a } before it."),
                read.problems().stream().map(ReadingProblem::message).toList());
        assertEquals(Optional.of("SeeIt"), read.problems().get(0).block().map(block -> block.name()));
    }

    @Test
    void should_find_one_thing_where_a_head_is_misspelt() {
        Procedure read = procedure(LAMP.replace("check Bulb", "chek Bulb"));
        assertEquals(List.of("\"chek\" begins nothing that can stand between declarations; did you mean check?"),
                read.problems().stream().map(ReadingProblem::message).toList());
        assertEquals(List.of("unreadable-text"), rules(read));
    }

    @Test
    void should_not_call_a_name_unknown_that_a_damaged_step_declares() {
        assertEquals(List.of("unreadable-text"), rules(procedure(LAMP.replace("check Bulb \"Is", "check Bulb Is"))));
    }

    @Test
    void should_keep_what_stands_around_a_quotation_mark_that_is_not_closed() {
        Procedure read = procedure(LAMP.replace("\"Is it dark?\"", "\"Is it dark?"));
        assertTrue(names(read).containsAll(List.of("Bulb", "Fine")), () -> names(read).toString());
        assertEquals(1, read.problems().size());
    }

    @Test
    void should_read_steps_that_stand_in_one_line() {
        Procedure read = procedure("procedure A \"a\" check B \"b\" { yes -> C no -> C } conclude C \"c\" { finds nothing }");
        assertEquals(List.of(), read.problems());
        Procedure broken = procedure("procedure A \"a\" check B \"b\" { yes > C no -> C } conclude C \"c\" { finds nothing }");
        assertTrue(names(broken).contains("C"));
        assertEquals(1, broken.problems().size());
    }

    @Test
    void should_read_whatever_it_is_given() {
        List<String> texts = new ArrayList<>(List.of("", "}", "{", "\"", "/*", "//", "check", "procedure", "procedure {", "}}}} check A {",
                "library L check A \"a\" {}", "->", "\n\n\n", "check A \"a\" {\nconclude B", "routine R {\n check A {\n}\n}\n}\n"));
        for (int end = 0; end < LAMP.length(); end += 7) {
            texts.add(LAMP.substring(0, end));
            texts.add(LAMP.substring(end));
        }
        ProcedureReader.Changing changing = ProcedureReader.overFiles().changing();
        for (String text : texts) {
            SourceText source = new SourceText("Test.procedure", text);
            assertEquals(ProcedureReader.overFiles().read(source), changing.read(source), () -> text);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;

class FixRunTest {
    private static final String TEXT = """
            procedure P "p"
            // kept
            point Rail "r"
            point Spare "never named"
            check A "a" {
                takes 1 min // kept too
                yes -> End
            }
            conclude End {
                finds nothing
            }
            """;

    @Test
    void should_apply_what_is_wanted_until_nothing_more_holds() {
        ProcedureReader reader = ProcedureReader.overFiles();
        FixRun run = new FixRun(reader::read, new Checker(), reader.read(new SourceText("P.procedure", TEXT)));
        List<FixRun.AppliedFix> made = new ArrayList<>();

        Optional<FixRun.AppliedFix> next = run.next(finding -> finding.rule().equals("unused-declaration"), 1);
        while (next.isPresent()) {
            made.add(next.get());
            next = run.next(finding -> finding.rule().equals("unused-declaration"), 1);
        }

        assertEquals(2, made.size(), made.toString());
        assertTrue(made.stream().allMatch(one -> one.finding().rule().equals("unused-declaration")));
        assertFalse(run.now().content().contains("point"), run.now().content());
        assertTrue(run.now().content().contains("// kept too"), run.now().content());
        assertTrue(run.own().stream().noneMatch(finding -> finding.rule().equals("unused-declaration")));
    }

    @Test
    void should_do_nothing_where_nothing_is_wanted_or_there_is_no_such_choice() {
        ProcedureReader reader = ProcedureReader.overFiles();
        FixRun run = new FixRun(reader::read, new Checker(), reader.read(new SourceText("P.procedure", TEXT)));

        assertEquals(Optional.empty(), run.next(finding -> false, 1));
        assertEquals(Optional.empty(), run.next(finding -> finding.rule().equals("unused-declaration"), 99));
        assertEquals(TEXT, run.now().content());
    }
}

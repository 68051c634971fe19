/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is held to make no difference, and what is not. */
class ConditionLaterTest {
    private static final String TEXT = """
            procedure P "P"
            condition Supply { off, on } live when on ENDS
            condition Charge { present, absent } charged when present becomes present when Supply on starts absent
            do Off "Off" { sets Supply off then -> Next }
            do Next "Next" { NEXT then -> End }
            conclude End "End" { finds nothing }
            """;

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            sets Supply on                | starts on ends off | Supply is set again before anything asks for it
            sets Supply off, Charge absent| starts on ends off | Supply is set again before anything asks for it
            needs Supply off                | starts on          |
            repairs                         | starts on ends off |
            repairs                         | starts on          | Supply is set again before anything asks for it
            handles Fuse                    | starts on          |
            """)
    void should_follow_a_condition_until_something_asks_for_it_or_sets_it_anew(String next, String ends, String reason) {
        Procedure procedure = procedure(next, ends);
        Step off = procedure.steps().get(0);

        assertEquals(Optional.ofNullable(reason), new ConditionLater(ProcedurePaths.of(procedure)).noMatter(off, off.frame().sets().get(0)));
    }

    @ParameterizedTest
    @CsvSource({"starts off, every path brings Supply off anyway", "starts on,"})
    void should_see_what_every_path_brings(String starts, String reason) {
        Procedure procedure = procedure("repairs", starts);
        Step off = procedure.steps().get(0);

        assertEquals(Optional.ofNullable(reason), new ConditionLater(ProcedurePaths.of(procedure)).broughtAnyway(off, off.frame().sets().get(0)));
    }

    private static Procedure procedure(String next, String ends) {
        String text = TEXT.replace("NEXT", next).replace("ENDS", ends);
        return (Procedure) new ProcedureReader((library, from) -> Optional.empty()).read(new SourceText("P.procedure", text));
    }
}

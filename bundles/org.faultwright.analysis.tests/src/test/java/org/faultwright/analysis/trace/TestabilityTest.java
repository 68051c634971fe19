/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

/** Fractions of detection and isolation after MIL-HDBK-2165 and IEEE Std 1522: definitions from memory, figures recomputed. */
class TestabilityTest {
    private static String rounded(Exact fraction) {
        return fraction.toDecimal(4, RoundingMode.HALF_UP).toPlainString();
    }

    private static final String TWO_TESTS = """
            procedure Box "Box with two tests"
            fault S1 "1" { cases 1 shows T1 good, T2 bad }
            fault S2 "2" { cases 2 shows T1 good, T2 good }
            fault S3 "3" { cases 10 shows T1 bad, T2 good }
            fault S4 "4" { cases 5 shows T1 bad, T2 bad }
            fault S5 "5" { cases 12 shows T1 bad, T2 bad }
            check T1 "First" { good -> T2 bad -> T2b }
            check T2 "Second" { good -> Nothing bad -> Is1 }
            check T2b "Second" { good -> Is3 bad -> Is45 }
            conclude Nothing "Works" { finds nothing }
            conclude Is1 "1" { finds S1 }
            conclude Is3 "3" { finds S3 }
            conclude Is45 "4 or 5" { finds S4, S5 }
            """.replace("T2 bad }\nfault S5", "T2 bad, T2b bad }\nfault S5").replace("cases 12 shows T1 bad, T2 bad",
            "cases 12 shows T1 bad, T2b bad").replace("cases 10 shows T1 bad, T2 good", "cases 10 shows T1 bad, T2b good");

    @Test
    void should_leave_a_group_of_two_and_one_undetected() {
        Testability box = Testability.in(new Subject(Texts.procedure(TWO_TESTS), Optional.empty())).orElseThrow();

        assertEquals("0.9333", rounded(box.detected()));
        assertEquals("0.3929", rounded(box.isolated(1)));
        assertEquals(Exact.ONE, box.isolated(2));
    }

    @Test
    void should_name_the_group_that_nothing_tells_apart() {
        List<Ambiguity.Group> groups = Ambiguity.in(new Subject(Texts.procedure(TWO_TESTS), Optional.empty())).orElseThrow().groups();

        assertEquals(List.of(List.of("S4", "S5")), groups.stream().map(group -> group.faults().stream()
                .map(fault -> fault.name().text()).toList()).toList());
        assertTrue(groups.get(0).acknowledged());
    }
}

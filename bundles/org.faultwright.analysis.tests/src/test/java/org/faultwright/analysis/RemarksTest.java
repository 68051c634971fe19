/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class RemarksTest {
    @Test
    void should_find_remarks_and_no_signs_in_quotation_marks() {
        assertEquals(List.of("// why", "/* how\n long */", "// \"odd"),
                Remarks.in("check A \"http://x /* no */ \\\" // no\" { // why\n /* how\n long */ } // \"odd"));
        assertEquals(List.of(), Remarks.in(""));
        assertEquals(List.of("// yes"), Remarks.in("\"never closed // yes"), "what may be a remark is kept");
    }

    @Test
    void should_leave_the_remarks_of_what_is_removed() {
        Finding finding = Texts.findings("unreachable-step", """
                procedure P "P"
                begin at A
                check A "A?" { yes -> Z no -> Z }
                do B "B" {
                    // cold only
                    takes 1 min
                    then -> Z
                }
                conclude Z "Z" { finds nothing }
                """).get(0);

        String after = finding.fixes().get(0).applied();

        assertTrue(after.contains("// cold only\nconclude Z") && !after.contains("do B"), after);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;

class OutcomeUntriedTest {
    @Test
    void should_count_one_as_one() {
        String text = "procedure P \"p\" check Look \"a\" { yes -> X no -> X } conclude X \"x\" { finds nothing }";

        assertEquals(List.of("No example is given for 2 outcomes and 1 conclusion; not tried: \"X\", \"Look\" yes and \"Look\" no."), messages(text));
        assertEquals(List.of("The one example takes 1 of 2 outcomes and 1 of 1 conclusion; not tried: \"Look\" no."),
                messages(text + " example \"e\" { Look yes ends at X }"));
    }

    private static List<String> messages(String text) {
        return Texts.findings(text).stream().filter(finding -> finding.rule().equals("outcome-untried")).map(Finding::message).toList();
    }
}

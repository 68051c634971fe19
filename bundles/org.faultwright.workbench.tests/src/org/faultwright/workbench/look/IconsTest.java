/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;

class IconsTest {
    @Test
    void should_have_a_picture_for_every_kind_of_block() {
        List<String> kinds = Stream.of(Step.KEYWORDS.stream(), Declarations.NONE.byKind().keySet().stream(), Stream.of("fault", "example", "library", "procedure"))
                .flatMap(kind -> kind).toList();

        assertEquals(List.of(), kinds.stream().filter(kind -> Icons.descriptor(kind).isEmpty()).toList());
    }
}

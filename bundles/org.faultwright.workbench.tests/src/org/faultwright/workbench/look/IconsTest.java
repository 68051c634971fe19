/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.ThingKind;
import org.junit.jupiter.api.Test;

class IconsTest {
    @Test
    void should_have_a_picture_for_every_kind_of_thing_that_names_one() {
        List<String> pictures = Stream.concat(Step.KEYWORDS.stream().map(word -> Icons.name(ThingKind.STEP, word)),
                Stream.of(ThingKind.values()).filter(kind -> kind != ThingKind.STEP).map(kind -> Icons.name(kind, kind.keyword())))
                .flatMap(Optional::stream).toList();

        assertTrue(pictures.size() > Step.KEYWORDS.size() + Declarations.NONE.byKind().size(), pictures.toString());
        assertEquals(List.of(), pictures.stream().filter(picture -> Icons.descriptor(picture).isEmpty()).toList());
    }

    @Test
    void should_have_a_picture_for_whatever_the_outline_lists() {
        Stream<ThingKind> listed = Stream.concat(Declarations.NONE.byKind().keySet().stream(), Stream.of(ThingKind.FAULT, ThingKind.EXAMPLE));

        assertEquals(List.of(), listed.filter(kind -> Icons.name(kind, kind.keyword()).isEmpty()).toList());
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.ThingKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BlockKindsTest {
    /** What a text itself begins with is read before its blocks. */
    private static final Set<ThingKind> HEADS_OF_TEXTS = Set.of(ThingKind.PROCEDURE, ThingKind.LIBRARY);

    @Test
    void should_know_what_every_block_of_the_grammar_is() {
        List<String> words = Stream.concat(Step.KEYWORDS.stream(), Arrays.stream(ThingKind.values()).map(ThingKind::keyword)).filter(word -> !word.isEmpty())
                .filter(word -> !HEADS_OF_TEXTS.contains(ThingKind.begunBy(word))).sorted().toList();

        assertEquals(words, BlockReader.Loaded.HEADS.keywords().stream().sorted().toList());
        Step.KEYWORDS.forEach(word -> assertEquals(ThingKind.STEP, BlockReader.Loaded.HEADS.of(word).orElseThrow().kind()));
    }

    @Test
    void should_call_no_two_kinds_by_one_word() {
        List<String> words = Arrays.stream(ThingKind.values()).map(ThingKind::word).toList();

        assertEquals(words.size(), Set.copyOf(words).size());
        assertTrue(words.stream().noneMatch(String::isBlank));
    }

    @ParameterizedTest
    @CsvSource({"fault Worn { cases 3 }, FAULT", "measure Rail { }, STEP", "uses Bench, LIBRARY_USED", "procedure Lamp, PROCEDURE", "fualt Worn { }, WORDS", "'', ''", "}{, WORDS"})
    void should_say_what_a_block_is_without_parsing_it(String text, String expected) {
        String kinds = TextParts.of(text).at(0).map(part -> part.kind().name()).stream().collect(Collectors.joining());

        assertEquals(expected, kinds);
    }
}

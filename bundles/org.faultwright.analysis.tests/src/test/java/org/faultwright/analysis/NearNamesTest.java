/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearNamesTest {
    /** The first three are the usual examples of textbooks on edit distance; "ca" to "abc" tells the restricted form (3) from the full one (2). */
    @ParameterizedTest
    @CsvSource({"kitten, sitting, 3", "saturday, sunday, 3", "intention, execution, 5", "ca, abc, 3", "'', abc, 3",
            "heads, haeds, 1"})
    void should_count_slips(String one, String other, int slips) {
        assertEquals(slips, NearNames.slips(one, other));
        assertEquals(slips, NearNames.slips(other, one));
    }

    @Test
    void should_count_slips_as_the_plain_definition_does() {
        Random random = new Random(7);
        for (int i = 0; i < 500; i++) {
            String one = word(random);
            String other = word(random);
            assertEquals(byDefinition(one, other), NearNames.slips(one, other), one + " " + other);
        }
    }

    private static String word(Random random) {
        return random.ints(random.nextInt(6), 'a', 'd').collect(StringBuilder::new, StringBuilder::appendCodePoint,
                StringBuilder::append).toString();
    }

    /** The recursive definition of the optimal string alignment distance (Boytsov 2011). */
    private static int byDefinition(String a, String b) {
        if (a.isEmpty() || b.isEmpty()) {
            return a.length() + b.length();
        }
        String shorterA = a.substring(0, a.length() - 1);
        String shorterB = b.substring(0, b.length() - 1);
        int same = a.charAt(a.length() - 1) == b.charAt(b.length() - 1) ? 0 : 1;
        int least = Math.min(byDefinition(shorterA, shorterB) + same,
                1 + Math.min(byDefinition(shorterA, b), byDefinition(a, shorterB)));
        if (a.length() > 1 && b.length() > 1 && a.charAt(a.length() - 1) == b.charAt(b.length() - 2)
                && a.charAt(a.length() - 2) == b.charAt(b.length() - 1)) {
            least = Math.min(least, 1 + byDefinition(a.substring(0, a.length() - 2), b.substring(0, b.length() - 2)));
        }
        return least;
    }

    @ParameterizedTest
    @CsvSource({"HeadSuply, HeadSupply", "headsupply, HeadSupply", "HaedSupply, HeadSupply", "Head, HeadSupply", "Fna, Fan"})
    void should_propose_the_name_that_was_meant(String written, String meant) {
        assertEquals(List.of(meant), NearNames.of(written, List.of("HeadSupply", "Fan", "LampCode")));
    }

    @Test
    void should_propose_the_nearest_first_and_at_most_three() {
        assertEquals(List.of("Rail1", "Rail2", "Rail3"), NearNames.of("Rail", List.of("Rail4", "Rail3", "Rail2", "Rail1")));
        assertEquals(List.of("Converter", "Convertor"), NearNames.of("Conveter", List.of("Convertor", "Converter")));
    }

    @Test
    void should_propose_nothing_for_a_name_that_is_far_from_all() {
        assertEquals(List.of(), NearNames.of("Converter", List.of("Fan", "LampCode")));
    }
}

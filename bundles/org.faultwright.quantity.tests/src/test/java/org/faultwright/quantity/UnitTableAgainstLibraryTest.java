/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The table written down in this project is what the units library (JSR 385 with UCUM) says, entry for entry. */
class UnitTableAgainstLibraryTest {
    /** The library still has the electronvolt of CODATA 2006; that of SI Brochure 9, 2.2, is exact since 2019. */
    private static final Set<String> NEWER_HERE = Set.of("eV", "keV", "MeV");

    @TestFactory
    List<DynamicTest> should_agree_with_the_library_on() {
        List<Unit> linear = Units.all().stream()
                .filter(unit -> !unit.isLogarithmic() && !NEWER_HERE.contains(unit.ucum())).toList();
        assertTrue(linear.size() > 150, "only " + linear.size());
        return linear.stream().map(unit -> DynamicTest.dynamicTest(unit.ucum(), () -> agree(unit))).toList();
    }

    private static void agree(Unit unit) {
        Unit read = UcumLibrary.read(unit.ucum()).orElseThrow();
        assertEquals(unit.dimension(), read.dimension());
        assertEquals(unit.offset(), read.offset());
        // Angles go through π, which the library carries to 34 digits and a little noise beyond.
        Exact difference = unit.factor().minus(read.factor()).absolute();
        assertTrue(difference.signum() == 0 || unit.ucum().equals("deg")
                && difference.compareTo(Exact.of("1e-33")) < 0, read.factor() + " is not " + unit.factor());
    }

    @Test
    void should_differ_from_the_library_only_where_said() {
        assertEquals(Exact.of("1.602176487e-19"), UcumLibrary.read("eV").orElseThrow().factor());
    }

    @Test
    void should_never_let_the_library_convert_a_level() {
        for (String code : List.of("dB", "B", "Np", "dB[V]", "B[W]", "[pH]")) {
            assertEquals(Optional.empty(), UcumLibrary.read(code), code);
        }
    }

    @Test
    void should_answer_any_text_without_an_error() {
        Random random = new Random(3);
        String letters = "mVgskK0123456789%*^'\"./()+-[]{}aH_";
        int known = 0;
        for (int i = 0; i < 10_000; i++) {
            StringBuilder code = new StringBuilder();
            for (int length = random.nextInt(5); length >= 0; length--) {
                code.append(letters.charAt(random.nextInt(letters.length())));
            }
            known += UcumLibrary.read(code.toString()).isPresent() ? 1 : 0;
        }
        assertTrue(known > 100, "only " + known);
    }

    @Test
    void should_survive_codes_that_are_none() {
        for (String code : List.of("", " ", "m/", "{", "}", "[", "]", "[]", "é", "10+3/ul", "m".repeat(10_000), "((((m", "m)",
                "\u0000", "1/0", "m99999999999", "0", "\"", "#", "K8919", "m[H2O]9999", "(m99)99", "'", "k\"s0", "2.%\"", "{a}{b}", "\n", ".", "..", "-", "+", "'", "''", "%%", "*")) {
            assertTrue(UcumLibrary.read(code).map(Unit::isKnown).orElse(true), code);
        }
    }
}

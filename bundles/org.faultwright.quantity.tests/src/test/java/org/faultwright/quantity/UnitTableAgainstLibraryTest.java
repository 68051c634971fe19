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
                .filter(unit -> !unit.isLogarithmic() && !unit.dimension().equals(Dimension.SOUND_LEVEL) && !NEWER_HERE.contains(unit.ucum())).toList();
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

    /** Products and quotients of prefixed units with exponents, drawn with a fixed seed; both sides read one code. */
    @Test
    void should_work_out_products_as_the_library_does() {
        List<String> atoms = List.of("V", "mA", "kOhm", "s", "min", "uF", "mm", "kg", "N", "bar", "[in_i]", "[lbf_av]", "K", "%",
                "Hz", "nS", "dam", "Eg", "W", "L", "mol", "QV", "rA");
        Random random = new Random(385);
        for (int i = 0; i < 400; i++) {
            StringBuilder code = new StringBuilder(random.nextInt(8) == 0 ? "/" : "");
            for (int parts = 1 + random.nextInt(4); parts > 0; parts--) {
                String atom = atoms.get(random.nextInt(atoms.size()));
                String exponent = random.nextInt(3) == 0 ? List.of("2", "3", "-1", "-2", "+2").get(random.nextInt(5)) : "";
                code.append(atom).append(exponent).append(parts > 1 ? random.nextBoolean() ? "." : "/" : "");
            }
            Unit read = UcumLibrary.read(code.toString()).orElseThrow(() -> new AssertionError(code));
            UcumCode.Product ours = UcumCode.read(code.toString()).orElseThrow();
            assertEquals(read.dimension(), ours.dimension(), code.toString());
            Exact ratio = ours.factor().dividedBy(read.factor());
            // The library divides to 34 digits.
            assertTrue(ratio.minus(Exact.ONE).absolute().compareTo(Exact.of("1e-30")) < 0, code + ": " + ours.factor() + ", " + read.factor());
        }
    }

    @Test
    void should_differ_from_the_library_in_none_of_many_texts_that_both_can_read() {
        Random random = new Random(3);
        String letters = "mVgskK0123456789%./()+-[]aHz";
        int both = 0;
        for (int i = 0; i < 20_000; i++) {
            StringBuilder code = new StringBuilder();
            for (int length = random.nextInt(5); length >= 0; length--) {
                code.append(letters.charAt(random.nextInt(letters.length())));
            }
            Optional<UcumCode.Product> ours = UcumCode.read(code.toString());
            if (ours.isPresent()) {
                Optional<Unit> read = UcumLibrary.read(code.toString());
                assertTrue(read.isPresent(), code + " is no code to the library");
                assertEquals(read.get().dimension(), ours.get().dimension(), code.toString());
                both++;
            }
        }
        assertTrue(both > 100, "only " + both);
    }

    @Test
    void should_take_no_level_for_a_linear_unit() {
        for (String code : List.of("dB", "B", "Np", "dB[V]", "B[W]", "[pH]")) {
            assertEquals(Optional.empty(), UcumLibrary.read(code), code);
            assertEquals(Optional.empty(), UcumCode.read(code), code);
        }
    }

    @Test
    void should_survive_codes_that_are_none() {
        for (String code : List.of("", " ", "m/", "{", "}", "[", "]", "[]", "é", "10+3/ul", "m".repeat(10_000), "((((m", "m)",
                "\u0000", "1/0", "m99999999999", "0", "\"", "#", "{a}{b}", "\n", ".", "..", "-", "+", "'", "''", "%%", "*", "K8919",
                "(m99)99", "k\"s0", "2.%\"", "{\u00e9}", "m{a", "10*", "10*-", "10*999", "Cel/s", "m\u0662", "()", "(", ")")) {
            assertEquals(code.equals("10*"), UcumCode.read(code).isPresent(), code);
        }
    }
}

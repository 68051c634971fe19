/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Set;

import org.fhir.ucum.Decimal;
import org.fhir.ucum.UcumEssenceService;
import org.junit.jupiter.api.Test;

/** An independent reading of the UCUM tables, org.fhir:ucum, agrees on linear units. */
class UcumOracleTest {
    /** Where that library differs: it has an older eV, rounds the degree and the mil, and counts the radian as a base unit. */
    private static final Set<String> LEFT_OUT = Set.of("eV", "keV", "MeV", "deg", "[mil_i]");

    @Test
    void should_agree_with_another_implementation() throws Exception {
        UcumEssenceService oracle;
        try (InputStream essence = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
            oracle = new UcumEssenceService(essence);
        }
        List<Unit> units = Units.all().stream().filter(unit -> !unit.isLogarithmic()
                && unit.offset().equals(Exact.ZERO) && !LEFT_OUT.contains(unit.ucum())
                && unit.dimension().light() == 0 && unit.dimension().sound() == 0 && !unit.ucum().endsWith("rad") && !unit.ucum().endsWith("sr")).toList();
        int compared = 0;
        for (Unit unit : units) {
            String base = units.stream().filter(other -> other.dimension().equals(unit.dimension())
                    && other.factor().equals(Exact.ONE)).map(Unit::ucum).findFirst().orElse("");
            if (base.isEmpty()) {
                continue;
            }
            Decimal converted = oracle.convert(new Decimal("7.1357924680"), unit.ucum(), base);
            BigDecimal expected = new BigDecimal(converted.asDecimal());
            // It carries only the significant digits of its definitions (3 for 1 in = 2.54 cm, 8 for 1 psi).
            BigDecimal ours = unit.toBase(Exact.of("7.1357924680")).toDecimal(new MathContext(30));
            BigDecimal allowed = expected.ulp().max(expected.movePointLeft(7));
            assertTrue(ours.subtract(expected).abs().compareTo(allowed) <= 0 && expected.precision() >= 3, unit.ucum() + ": " + ours + ", " + expected);
            compared++;
        }
        assertTrue(compared > 130, "only " + compared + " compared");
    }
}

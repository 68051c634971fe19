/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Rows of the UCUM functional tests (UcumFunctionalTests.xml of 11 October 2018, FHIR/Ucum-java), by their case
 * number. Left out are units that no bench uses.
 */
class UcumConformanceTest {
    // The suite rounds outcomes to the digits of the value given (3-113: 6.3 × 4 is "25"); so does this comparison.
    @ParameterizedTest(name = "{0}: {1} {2} = {4} {3}")
    @CsvSource({ "3-101,6.3,m,m,6.3", "3-102,6.3,mm,m,0.0063", "3-103,6.3,mm,cm,0.63", "3-104,6.3,s.m-1,s/m,6.3",
            "3-105,6.3,s.mm-1,s.m-1,6300", "3-106,6.3,s.mm-2,s.m-2,6300000", "3-108,6.3,s/m/g,s.m-1.g-1,6.3",
            "3-109,6.3,ms/m/g,s.m-1.g-1,0.0063", "3-110,6.3,s/mm/g,s.m-1.g-1,6300", "3-111,6.3,s/m/mg,s.m-1.g-1,6300",
            "3-111a,6.3,s/m.mg,s.m-1.g,0.0063", "3-112,6.3,ms/m,s/m,0.0063", "3-113,6.3,4.s/m,s/m,25", "3-114,6.30,4.s/m,s/m,25.2",
            "3-115,6.3,s/4/m,s/m,1.6", "3-116,6.3,s/mm,s/m,6300", "3-117,6.3,ms/mm,s/m,6.3", "3-118,6.30,[in_i],m,0.160",
            "3-119,6.300,[in_i],cm,16.0", "3-120,6.3,g.m.s-2.A-2,g.m.C-2,6.3", "3-125,1000,mm[Hg],g.s-2.m-1,133322000", "3-121,1,10*-7.s,s,1e-7",
            "3-126,1,S,g-1.m-2.C2.s,0.001", "3-129,1.2,g.m,m.g,1.2" })
    void should_convert(String id, String value, String from, String to, String outcome) {
        Unit source = Units.ofUcum(from).orElseThrow();
        Unit target = Units.ofUcum(to).orElseThrow();
        BigDecimal expected = new BigDecimal(outcome);

        Exact converted = target.fromBase(source.toBase(Exact.of(value)));

        assertEquals(target.dimension(), source.dimension(), id);
        MathContext digits = new MathContext(expected.precision());
        BigDecimal off = converted.toDecimal(digits).subtract(expected.round(digits)).abs();
        assertTrue(off.compareTo(expected.ulp()) <= 0, id + ": " + converted);
    }

    // Cases 1-102, 1-108, 1-210, 1-247, 1-249-a, 1-263, 1-277, 1-305, 1-115a, 1-116a, 1-118, 1-329, 1-285.
    @ParameterizedTest
    @ValueSource(strings = { "m/", "10+3/ul", "molv", "[BETH'U]", "[iIU]", "g/12h", "mg/12h", "mmol/kg[H20]",
            "rad2{\u9320}", "{a}rad2{b}", "{|}1", "U/12h", "mL/10h" })
    void should_refuse(String code) {
        assertTrue(Units.ofUcum(code).isEmpty());
    }

    // Cases 1-101, 1-104, 1-109, 1-123, 1-124, 1-127, 1-136, 1-140, 1-162, 1-165, 1-237, 1-257, 1-294, k=1=199, -246, -259, -267,
    // 1-111, 1-116, 1-117, 1-119, k=1=207, -192, -198, 1-345, 1-255.
    @ParameterizedTest
    @ValueSource(strings = { "m", "/m", "[ft_i]", "[in_i]", "[lb_av]", "1/d", "cm2", "mm[Hg]", "mmol", "deg", "Cel",
            "mL/min", "mbar", "kPa", "V", "Wb", "uV", "m3.kg-1.s-2", "rad2{a}", "%",
            "10*23", "{a}.rad2{b}", "1{c}", "{e}", "mbar.s/L", "mL/(kg.d)", "kg/(s.m2)", "umol/2.h", "10*6/L" })
    void should_accept(String code) {
        assertTrue(Units.ofUcum(code).isPresent());
    }
}

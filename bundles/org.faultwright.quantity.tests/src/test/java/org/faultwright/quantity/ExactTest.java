/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;

import org.junit.jupiter.api.Test;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

class ExactTest {
    @Test
    void should_not_round_as_binary_numbers_do() {
        assertEquals(Exact.of("0.3"), Exact.of("0.1").times(3));
        assertEquals("0.3", Exact.of("0.1").plus(Exact.of("0.2")).toString());
        assertEquals("0.016666666666666667", Exact.ratio(1, 60).toString());
        assertEquals("0.125", Exact.ratio(1, 8).toString());
        assertTrue(Exact.ratio(1, 8).isDecimal());
        assertFalse(Exact.ratio(1, 3).isDecimal());
    }

    @Test
    void should_reduce_numbers_about_the_size_of_a_word_as_it_does_large_ones() {
        Random random = new Random(9);
        BigInteger far = BigInteger.TWO.pow(90);
        long[] edges = {0, 1, -1, 2, 60, Long.MAX_VALUE, Long.MIN_VALUE, Long.MIN_VALUE + 1, 1L << 62, -(1L << 62)};
        for (int i = 0; i < 5_000; i++) {
            BigInteger above = BigInteger.valueOf(i % 4 == 0 ? edges[random.nextInt(edges.length)] : random.nextLong() >> random.nextInt(64));
            BigInteger below = BigInteger.valueOf(i % 5 == 0 ? edges[random.nextInt(edges.length)] : random.nextLong() >> random.nextInt(64));
            if (below.signum() != 0) {
                assertEquals(Exact.ratio(above.multiply(far), below.multiply(far)), Exact.ratio(above, below), above + "/" + below);
            }
        }
    }

    @Test
    void should_refuse_numbers_that_would_fill_the_memory() {
        assertThrows(NumberFormatException.class, () -> Exact.of("1e999999999"));
        assertThrows(NumberFormatException.class, () -> Exact.of("1e-999999999"));
        assertThrows(NumberFormatException.class, () -> Exact.of("9".repeat(100_000)));
        assertThrows(ArithmeticException.class, () -> Exact.of(new BigDecimal(BigInteger.ONE, -1_000_000)));
        assertThrows(NumberFormatException.class, () -> Exact.of(Double.NaN));
        assertThrows(ArithmeticException.class, () -> Exact.ONE.dividedBy(Exact.ZERO));
    }

    @Property(tries = 300)
    void should_add_and_multiply_as_decimals_do(@ForAll @Scale(6) BigDecimal a, @ForAll @Scale(6) BigDecimal b) {
        assertEquals(Exact.of(a.add(b)), Exact.of(a).plus(Exact.of(b)));
        assertEquals(Exact.of(a.subtract(b)), Exact.of(a).minus(Exact.of(b)));
        assertEquals(Exact.of(a.multiply(b)), Exact.of(a).times(Exact.of(b)));
        assertEquals(Integer.signum(a.compareTo(b)), Integer.signum(Exact.of(a).compareTo(Exact.of(b))));
        assertEquals(0, a.compareTo(new BigDecimal(Exact.of(a).toString())));
    }

    @Property(tries = 300)
    void should_undo_a_division_by_a_multiplication(@ForAll @Scale(4) BigDecimal a, @ForAll @Scale(4) BigDecimal b) {
        if (b.signum() != 0) {
            assertEquals(Exact.of(a), Exact.of(a).dividedBy(Exact.of(b)).times(Exact.of(b)));
        }
    }

    @Property(tries = 300)
    void should_round_roots_to_the_side_asked_for(@ForAll @BigRange(min = "0", max = "1e12") @Scale(8) BigDecimal a,
            @ForAll @IntRange(min = -200, max = 200) int exponent) {
        Exact square = Exact.of(a.scaleByPowerOfTen(exponent));

        Exact low = square.squareRoot(RoundingMode.FLOOR);
        Exact high = square.squareRoot(RoundingMode.CEILING);

        assertTrue(low.squared().compareTo(square) <= 0 && high.squared().compareTo(square) >= 0);
        Exact error = high.minus(low).times(Exact.of("1e19"));
        assertTrue(error.compareTo(high) <= 0, "not 20 digits of the root of " + square);
        // BigDecimal.sqrt of the JDK as a second opinion, to 15 digits.
        if (square.signum() > 0) {
            BigDecimal root = a.scaleByPowerOfTen(exponent).sqrt(new MathContext(20));
            assertEquals(1, Exact.of(root).dividedBy(high).doubleValue(), 1e-15);
        }
    }

    @Property(tries = 200)
    void should_find_the_whole_numbers_on_both_sides(@ForAll @Scale(3) BigDecimal a) {
        assertEquals(0, a.setScale(0, RoundingMode.FLOOR).compareTo(new BigDecimal(Exact.of(a).floor().toString())));
        assertEquals(0, a.setScale(0, RoundingMode.CEILING).compareTo(new BigDecimal(Exact.of(a).ceiling().toString())));
    }
}

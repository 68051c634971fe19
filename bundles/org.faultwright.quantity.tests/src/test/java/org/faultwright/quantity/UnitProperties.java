/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

/** Units of one dimension are one line with another scale on it; dimensions are a group under multiplication. */
class UnitProperties {
    private static final List<Unit> LINEAR = Units.all().stream().filter(unit -> !unit.isLogarithmic()).toList();

    @Provide
    Arbitrary<Unit> units() {
        return Arbitraries.of(LINEAR);
    }

    @Property(tries = 500)
    void should_come_back_from_the_base_unit(@ForAll("units") Unit unit, @ForAll @Scale(9) BigDecimal number) {
        Exact value = Exact.of(number);
        assertEquals(value, unit.fromBase(unit.toBase(value)));
    }

    @Property(tries = 500)
    void should_scale_and_add_differences(@ForAll("units") Unit unit, @ForAll @Scale(6) BigDecimal a, @ForAll @Scale(6) BigDecimal b) {
        Quantity one = Quantity.of(Exact.of(a), unit);
        Quantity other = Quantity.of(Exact.of(b), unit);
        Quantity both = Quantity.of(Exact.of(a).plus(Exact.of(b)), unit);

        assertEquals(both.difference(), one.difference().plus(other.difference()));
        assertEquals(both.base().minus(one.base()), other.difference());
    }

    /** Numbers with more digits than any instrument shows are refused when read; QuantityTextTest holds that. */
    @Property(tries = 300)
    void should_keep_a_quantity_when_it_is_printed_and_read(@ForAll("units") Unit unit,
            @ForAll @Scale(6) @BigRange(min = "-1e30", max = "1e30") BigDecimal number) {
        Quantity written = Quantity.of(Exact.of(number), unit);
        // behind a number, a unit that begins with one, such as 1/s, reads as a second number; Hz and rpm say the same
        if (!Character.isDigit(unit.symbol().charAt(0))) {
            assertEquals(written.base(), QuantityText.read(written.spelling()).quantity().base(), written.spelling());
        }
    }

    @Property(tries = 300)
    void should_form_a_group_of_dimensions(@ForAll("units") Unit a, @ForAll("units") Unit b, @ForAll("units") Unit c,
            @ForAll @IntRange(min = -4, max = 4) int n) {
        Dimension x = a.dimension();
        Dimension y = b.dimension();
        assertEquals(x.times(y), y.times(x));
        assertEquals(x.times(y).times(c.dimension()), x.times(y.times(c.dimension())));
        assertEquals(Dimension.NONE, x.per(x));
        assertEquals(x.times(y).power(n), x.power(n).times(y.power(n)));
    }
}

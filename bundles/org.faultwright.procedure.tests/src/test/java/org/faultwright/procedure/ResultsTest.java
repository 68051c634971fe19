/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResultsTest {
    private static final SourceText TEXT = new SourceText("test", "");
    private static final SourceRange HERE = new SourceRange(TEXT, 0, 0);
    private static final Unit VOLT = new Unit("V", "V", Dimension.VOLTAGE, Exact.ONE, Exact.ZERO, Unit.Status.KNOWN);

    @ParameterizedTest
    @CsvSource({"4.74, below", "4.75, within", "5, within", "5.25, within", "5.2500000000000000000001, above"})
    void should_place_a_reading_against_what_is_expected(String volts, String result) {
        Step step = measure(Optional.of(new Limit.Between(volts("4.75"), true, volts("5.25"), true, "4.75 V .. 5.25 V")),
                word("below"), word("within"), word("above"));

        assertEquals(result, Results.reading(step, Exact.of(volts)).orElseThrow().key());
    }

    @ParameterizedTest
    @CsvSource({"0.3, low", "0.30000000000000000001, high"})
    void should_never_let_binary_rounding_decide_a_band(String volts, String result) {
        Exact threeTenths = Exact.of("0.1").times(Exact.of(3));
        Quantity edge = new Quantity(threeTenths, VOLT, "0.3 V");
        Step step = measure(Optional.empty(),
                band("low", new Limit.NotAbove(edge, true, "at most 0.3 V")),
                band("high", new Limit.NotBelow(edge, false, "over 0.3 V")));

        assertEquals(result, Results.reading(step, Exact.of(volts)).orElseThrow().key());
    }

    @Test
    void should_take_outside_for_both_sides_of_a_limit() {
        Step step = measure(Optional.of(new Limit.Between(volts("1"), true, volts("2"), true, "1 V .. 2 V")),
                word("within"), word("outside"));

        assertEquals("outside", Results.reading(step, Exact.of("0.5")).orElseThrow().key());
        assertEquals("outside", Results.reading(step, Exact.of("2.5")).orElseThrow().key());
    }

    @Test
    void should_fall_back_on_anything_else_for_a_code_not_listed() {
        Step step = new Step.Observe(name("Lamp"), "Count", Optional.empty(), StepFrame.PLAIN,
                List.of(outcome(new Outcome.Code(name("3 blinks"))), outcome(new Outcome.AnythingElse(HERE))), HERE);

        assertEquals("3 blinks", Results.outcome(step, shown("3 blinks")).orElseThrow().key());
        assertEquals("anything else", Results.outcome(step, shown("9 blinks")).orElseThrow().key());
    }

    @Test
    void should_find_nothing_where_a_result_has_no_outcome() {
        Step step = measure(Optional.empty(), band("low", new Limit.NotAbove(volts("1"), false, "under 1 V")));

        assertEquals(Optional.empty(), Results.reading(step, Exact.ONE));
        assertEquals(Optional.empty(), Results.outcome(step, shown("high")));
    }

    private static Step measure(Optional<Limit> expects, Outcome... outcomes) {
        return new Step.Measure(name("Rail"), "Rail", Optional.of(new Written<>(QuantityKind.DC_VOLTAGE, HERE)),
                Optional.empty(), false, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                expects.map(limit -> new Step.Expectation(new Written<>(limit, HERE), Optional.empty())), List.of(),
                Optional.empty(), List.of(), StepFrame.PLAIN, List.of(outcomes), HERE);
    }

    private static Outcome word(String word) {
        return outcome(new Outcome.Word(name(word)));
    }

    private static Outcome band(String label, Limit limit) {
        return outcome(new Outcome.Band(Optional.of(name(label)), new Written<>(limit, HERE)));
    }

    private static Outcome outcome(Outcome.Head head) {
        return new Outcome(head, Optional.of(name("Next")), Optional.empty(), List.of(), HERE);
    }

    private static Showing.Possible shown(String words) {
        return new Showing.Possible(name(words), Optional.empty(), Optional.empty());
    }

    private static Quantity volts(String value) {
        return new Quantity(Exact.of(value), VOLT, value + " V");
    }

    private static Name name(String text) {
        return new Name(text, HERE);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.Expression;
import org.faultwright.quantity.measure.ReadingInput;
import org.faultwright.quantity.measure.RootSearch;

/**
 * Chooses the readings at which the uncertainty of a computed value is evaluated: what a reading's own step expects,
 * else the middle of the readings that lead to the computation. One reading is moved, where that can be done within the
 * readings that lead there, so that the result lies at the limit; those without an expected value are tried first.
 */
final class RepresentativeReadings {
    /** Readings that are tried; a bench computes with two or three. */
    private static final int TRIED = 4;
    /** Digits of a value that was moved, so that everything can be computed again by hand. */
    private static final MathContext DIGITS = new MathContext(4);

    private final Expression formula;
    private final List<ReadingPlace> places;

    RepresentativeReadings(Expression formula, List<ReadingPlace> places) {
        this.formula = formula;
        this.places = places;
    }

    List<ReadingInput> at(Exact limit) {
        Map<String, ReadingInput> inputs = new LinkedHashMap<>();
        Map<String, Double> values = new LinkedHashMap<>();
        for (ReadingPlace place : places) {
            ReadingPlace.StatedReading stated = place.stated().orElseGet(() -> new ReadingPlace.StatedReading(
                    ReadingPlace.middle(place.low(), place.high()), "middle of the readings that lead here"));
            inputs.put(place.name(), place.at(stated.value(), stated.why()));
            values.put(place.name(), stated.value().doubleValue());
        }
        for (ReadingPlace place : places.stream().sorted(Comparator.comparing((ReadingPlace one) -> one.stated().isPresent()))
                .limit(TRIED).toList()) {
            OptionalDouble moved = RootSearch.of(formula, values, place.name(), place.low().doubleValue(),
                    place.high().doubleValue(), limit.doubleValue());
            if (moved.isPresent()) {
                inputs.put(place.name(), place.at(rounded(moved.getAsDouble(), place.study().range().upTo().unit()),
                        "so that the result lies at the limit"));
                break;
            }
        }
        return new ArrayList<>(inputs.values());
    }

    private static Exact rounded(double base, Unit unit) {
        return unit.toBase(Exact.of(unit.fromBase(Exact.of(base)).toDecimal(DIGITS)));
    }
}

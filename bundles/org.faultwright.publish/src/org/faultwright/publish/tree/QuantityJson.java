/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;

/** Quantities and limits: the author's spelling, exact decimals with a UCUM code, and the value in coherent SI units. */
final class QuantityJson {
    private static final Map<Dimension, String> COHERENT = Map.ofEntries(
            Map.entry(Dimension.NONE, "1"), Map.entry(Dimension.SOUND_LEVEL, "dB[SPL]{A}"), Map.entry(Dimension.LENGTH, "m"), Map.entry(Dimension.MASS, "kg"),
            Map.entry(Dimension.TIME, "s"), Map.entry(Dimension.CURRENT, "A"), Map.entry(Dimension.TEMPERATURE, "K"),
            Map.entry(Dimension.FREQUENCY, "Hz"), Map.entry(Dimension.FORCE, "N"), Map.entry(Dimension.PRESSURE, "Pa"),
            Map.entry(Dimension.ENERGY, "J"), Map.entry(Dimension.POWER, "W"), Map.entry(Dimension.CHARGE, "C"),
            Map.entry(Dimension.VOLTAGE, "V"), Map.entry(Dimension.RESISTANCE, "Ohm"),
            Map.entry(Dimension.CAPACITANCE, "F"), Map.entry(Dimension.INDUCTANCE, "H"));

    private QuantityJson() {
    }

    static Json of(Quantity quantity) {
        Json json = new Json().put("text", quantity.spelling()).put("value", quantity.value().toString());
        if (!usable(quantity)) {
            return json;
        }
        json.put("unit", quantity.unit().ucum());
        base(json, quantity.base());
        return json.put("baseUnit", coherent(quantity.dimension()));
    }

    static Json of(Limit limit, Optional<QuantityKind> kind) {
        Json json = new Json().put("text", limit.spelling());
        List<Quantity> quantities = limit.quantities();
        if (quantities.isEmpty() || !quantities.stream().allMatch(QuantityJson::usable)) {
            return json;
        }
        Unit unit = quantities.get(0).unit();
        Interval interval = kind.map(limit::interval).orElseGet(limit::interval);
        json.put("nominal", limit.nominal().map(QuantityJson::of));
        json.put("lower", interval.lower().map(end -> end(end, unit, kind)));
        json.put("upper", interval.upper().map(end -> end(end, unit, kind)));
        return json.put("baseUnit", coherent(unit.dimension()));
    }

    private static Json end(Bound end, Unit unit, Optional<QuantityKind> kind) {
        boolean difference = kind.filter(QuantityKind.TEMPERATURE_DIFFERENCE::equals).isPresent();
        Exact value = difference ? end.value().dividedBy(unit.factor()) : unit.fromBase(end.value());
        Json json = new Json().put("value", value.toString()).put("unit", unit.ucum()).put("included", end.included());
        return base(json, end.value());
    }

    /** A value that decimals never end, such as one revolution a minute in hertz, is told to 17 digits and says so. */
    private static Json base(Json json, Exact base) {
        json.put("base", base.toString());
        return base.isDecimal() ? json : json.put("rounded", true);
    }

    private static boolean usable(Quantity quantity) {
        return quantity.unit().isKnown() && !quantity.unit().isLogarithmic() && !quantity.unit().ucum().isEmpty();
    }

    /** The UCUM code of the coherent SI unit. */
    static String coherent(Dimension dimension) {
        String known = COHERENT.get(dimension);
        if (known != null) {
            return known;
        }
        StringBuilder product = new StringBuilder();
        factor(product, "m", dimension.length());
        factor(product, "kg", dimension.mass());
        factor(product, "s", dimension.time());
        factor(product, "A", dimension.current());
        factor(product, "K", dimension.temperature());
        factor(product, "mol", dimension.amount());
        factor(product, "cd", dimension.light());
        return product.toString();
    }

    private static void factor(StringBuilder product, String unit, int exponent) {
        if (exponent != 0) {
            product.append(product.length() == 0 ? "" : ".").append(unit).append(exponent == 1 ? "" : exponent);
        }
    }
}

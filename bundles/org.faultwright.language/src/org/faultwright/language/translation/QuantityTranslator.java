/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.parsing.QuotedWords;
import org.faultwright.language.text.TextPackage;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityText;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.Sensor;

/** Numbers and quantities, exact. */
final class QuantityTranslator {
    private final ModelSource passage;

    private static final Pattern DECIMAL_COMMA = Pattern.compile("^(-?[0-9]+),([0-9]+)");

    QuantityTranslator(ModelSource passage) {
        this.passage = passage;
    }

    /** With a sensor, what that sensor gives: {@code 100 degC on Pt100} is a resistance. */
    Optional<Written<Quantity>> quantity(org.faultwright.language.text.QuantityText written) {
        return Optional.ofNullable(written).flatMap(text -> passage.node(text, TextPackage.Literals.QUANTITY_TEXT__TEXT))
                .map(this::quantity).map(quantity -> passage.node(written, TextPackage.Literals.QUANTITY_TEXT__SENSOR)
                        .map(sensor -> onSensor(quantity, sensor)).orElse(quantity))
                .map(quantity -> new Written<>(quantity, passage.range(written)));
    }

    private Quantity onSensor(Quantity temperature, INode sensor) {
        String name = SensorName.of(passage.words(sensor));
        Optional<Sensor> known = Sensor.named(name);
        if (known.isEmpty()) {
            passage.problem(passage.range(sensor), QuotedWords.words(name) + " is no sensor with a standard characteristic; write one of "
                    + Sensor.all().stream().map(Sensor::name).collect(Collectors.joining(", ")) + ".");
            return temperature;
        }
        Sensor.Converted signal = known.get().signal(temperature);
        signal.problem().ifPresent(problem -> passage.problem(passage.range(sensor), problem));
        String spelling = temperature.spelling() + " on " + passage.words(sensor);
        return signal.value().map(value -> new Quantity(value.value(), value.unit(), spelling)).orElse(temperature);
    }

    Optional<Written<Quantity>> single(List<org.faultwright.language.text.QuantityText> written, String what) {
        return passage.single(written, what).flatMap(this::quantity);
    }

    /** The quantity written at a node; what cannot be read is reported and counts as zero. */
    Quantity quantity(INode node) {
        if (node.getLength() == 0) {
            return new Quantity(Exact.ZERO, Unit.MISSING, "");
        }
        String written = passage.range(node).text();
        Matcher comma = DECIMAL_COMMA.matcher(written);
        if (comma.find()) {
            String pointed = comma.replaceFirst("$1.$2");
            passage.problem(passage.range(node), "A comma is no decimal point here; write " + pointed
                    + (comma.group(2).length() == 3 ? ", or " + comma.replaceFirst("$1$2") + " if it parts thousands." : "."));
            return QuantityText.read(pointed).quantity();
        }
        QuantityText.Reading reading = QuantityText.read(passage.words(node));
        reading.problem().ifPresent(problem -> passage.problem(passage.range(node), problem));
        return reading.quantity();
    }

    /** A plain number such as a weight or a percentage. */
    Exact number(INode node) {
        return quantity(node).value();
    }

    /** A whole number from 1 up to a million. */
    Optional<Written<Integer>> whole(INode node, String what) {
        String text = passage.words(node);
        SourceRange at = passage.range(node);
        if (text.matches("[0-9]{1,7}")) {
            int value = Integer.parseInt(text);
            if (value >= 1 && value <= 1_000_000) {
                return Optional.of(new Written<>(value, at));
            }
        }
        passage.problem(at, what + " is a whole number from 1 to 1000000; write one instead of " + QuotedWords.words(text) + ".");
        return Optional.empty();
    }
}

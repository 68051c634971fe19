/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.ACCURACY_TEXT__AMOUNT;
import static org.faultwright.language.text.TextPackage.Literals.DECLARATION_TEXT__TITLE;
import static org.faultwright.language.text.TextPackage.Literals.INSTRUMENT_TEXT__CALIBRATION_DUE;
import static org.faultwright.language.text.TextPackage.Literals.INSTRUMENT_TEXT__CATEGORY;
import static org.faultwright.language.text.TextPackage.Literals.NAMED_TEXT__NAME;
import static org.faultwright.language.text.TextPackage.Literals.RANGE_TEXT__KIND;
import static org.faultwright.language.text.TextPackage.Literals.RANGE_TEXT__SENSOR;

import java.util.List;
import java.util.Optional;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.text.AccuracyText;
import org.faultwright.language.text.InstrumentText;
import org.faultwright.language.text.RangeText;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Accuracy;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** Instruments with their ranges and accuracy statements. */
final class InstrumentTranslator {
    private final ModelSource passage;
    private final QuantityTranslator quantities;
    private final LimitTranslator limits;
    private final Vocabulary vocabulary;

    InstrumentTranslator(ModelSource passage, QuantityTranslator quantities, LimitTranslator limits, Vocabulary vocabulary) {
        this.passage = passage;
        this.quantities = quantities;
        this.limits = limits;
        this.vocabulary = vocabulary;
    }

    Instrument instrument(InstrumentText written) {
        return new Instrument(passage.nameOrNone(written, NAMED_TEXT__NAME),
                passage.textOrNone(written, DECLARATION_TEXT__TITLE),
                written.getRanges().stream().flatMap(range -> range(range).stream()).toList(),
                quantities.single(written.getRated(), "The rated voltage"),
                passage.single(written, INSTRUMENT_TEXT__CATEGORY, "The measurement category")
                        .flatMap(node -> quantities.whole(node, "The measurement category")),
                limits.single(written.getValidAt(), "The range of temperatures"),
                quantities.quantity(written.getCalibrationEvery()),
                vocabulary.day(written, INSTRUMENT_TEXT__CALIBRATION_DUE), passage.range(written));
    }

    /** A range that lacks its kind or upper end is left out; the gap has been reported. */
    private Optional<Written<MeterRange>> range(RangeText written) {
        Optional<Written<QuantityKind>> kind = vocabulary.kind(written, RANGE_TEXT__KIND);
        Optional<Quantity> upTo = quantities.quantity(written.getUpTo()).map(Written::value);
        if (kind.isEmpty() || upTo.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Written<>(new MeterRange(kind.get().value(),
                quantities.quantity(written.getFrom()).map(Written::value), upTo.get(), resolution(written, upTo.get()).asDifferenceOf(upTo.get().unit()),
                accuracy(written, upTo.get()), value(written.getInput(), "The input resistance"),
                quantities.quantity(written.getInputCapacitance()).map(Written::value),
                value(written.getBurden(), "The burden"), value(written.getLowestFrequency(), "The bandwidth"),
                value(written.getHighestFrequency(), "The bandwidth"), written.isTrueRms(),
                passage.node(written, RANGE_TEXT__SENSOR).map(passage::words).map(SensorName::of).orElse("")), passage.range(written)));
    }

    private Optional<Quantity> value(List<org.faultwright.language.text.QuantityText> written, String what) {
        return quantities.single(written, what).map(Written::value);
    }

    private Quantity resolution(RangeText written, Quantity upTo) {
        return value(written.getResolution(), "The resolution").orElseGet(() -> {
            passage.problem(passage.range(written),
                    "This range has no resolution; write the value of its last digit, as in resolution 1 mV.");
            return new Quantity(Exact.ZERO, upTo.unit(), "0");
        });
    }

    private Accuracy accuracy(RangeText written, Quantity upTo) {
        Exact ofReading = Exact.ZERO;
        Exact ofRange = Exact.ZERO;
        Exact digits = Exact.ZERO;
        Optional<Quantity> amount = Optional.empty();
        for (AccuracyText term : written.getAccuracy()) {
            Optional<INode> node = passage.node(term, ACCURACY_TEXT__AMOUNT);
            if (node.isEmpty()) {
                continue;
            }
            Quantity read = quantities.quantity(node.get()).asDifferenceOf(upTo.unit());
            String unit = read.unit().symbol();
            if (unit.equals("%") && "range".equals(term.getBase())) {
                ofRange = ofRange.plus(read.value());
            } else if (unit.equals("%")) {
                ofReading = ofReading.plus(read.value());
            } else if (AccuracyWords.countDigits(unit)) {
                digits = digits.plus(read.value());
            } else if (amount.isEmpty()) {
                amount = Optional.of(read);
            } else {
                passage.problem(passage.range(term), "The accuracy has two amounts; add them up and write one.");
            }
        }
        return new Accuracy(ofReading, ofRange, digits, amount);
    }
}

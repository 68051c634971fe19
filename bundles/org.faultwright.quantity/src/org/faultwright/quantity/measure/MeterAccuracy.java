/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Optional;
import java.util.stream.Stream;

import org.faultwright.quantity.Accuracy;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** What an accuracy statement says about one reading. */
public final class MeterAccuracy {
    private static final Exact HUNDRED = Exact.of(100);

    private MeterAccuracy() {
    }

    /**
     * The half-width a of the interval ±a about a reading, in the coherent SI unit:
     * percent of reading + percent of range + digits × resolution + amount. A percentage of a temperature
     * is one of the number shown, in the unit of the range.
     *
     * @param reading in the coherent SI unit
     */
    public static Exact halfWidth(MeterRange range, Exact reading) {
        Accuracy accuracy = range.accuracy();
        Exact shown = range.kind() == QuantityKind.TEMPERATURE_DIFFERENCE ? reading
                : range.upTo().unit().fromBase(reading).times(range.upTo().unit().factor());
        return shown.absolute().times(accuracy.percentOfReading()).dividedBy(HUNDRED)
                .plus(range.upTo().difference().absolute().times(accuracy.percentOfRange()).dividedBy(HUNDRED))
                .plus(range.resolution().difference().times(accuracy.digits()))
                .plus(accuracy.amount().map(Quantity::difference).orElse(Exact.ZERO));
    }

    /** One sentence on what is wrong with the data of the range, if something is. */
    public static Optional<String> problem(MeterRange range) {
        Accuracy accuracy = range.accuracy();
        if (!range.upTo().fits(range.kind()) || !range.resolution().fits(range.kind())
                || range.from().isPresent() && !range.from().get().fits(range.kind())
                || accuracy.amount().isPresent() && !accuracy.amount().get().fits(range.kind())) {
            return Optional.of("The range up to " + range.upTo() + " is not written in units of " + range.kind().words() + ".");
        }
        if (range.resolution().difference().signum() <= 0) {
            return Optional.of("The range up to " + range.upTo()
                    + " has a resolution that is not above zero; write the value of its last digit.");
        }
        if (range.shown().isEmpty() || range.shown().width().filter(width -> width.signum() > 0).isEmpty()) {
            return Optional.of("The range up to " + range.upTo() + " ends where it begins or before; check its two ends.");
        }
        boolean negative = accuracy.percentOfReading().signum() < 0 || accuracy.percentOfRange().signum() < 0
                || accuracy.digits().signum() < 0 || accuracy.amount().isPresent() && accuracy.amount().get().difference().signum() < 0;
        return negative
                ? Optional.of("The accuracy of the range up to " + range.upTo()
                        + " has a negative share; write each as the amount that is added or taken away.")
                : Optional.empty();
    }

    /** The statement in words, such as {@code 0.5 % of reading + 2 × 1 mV}. */
    static String words(MeterRange range) {
        Accuracy accuracy = range.accuracy();
        String words = Stream.of(share(accuracy.percentOfReading(), " % of reading"),
                share(accuracy.percentOfRange(), " % of range"),
                share(accuracy.digits(), " × " + range.resolution().spelling()),
                accuracy.amount().map(Quantity::spelling).orElse(""))
                .filter(part -> !part.isEmpty()).reduce((one, other) -> one + " + " + other).orElse("0");
        return words;
    }

    private static String share(Exact amount, String unit) {
        return amount.signum() == 0 ? "" : amount + unit;
    }
}

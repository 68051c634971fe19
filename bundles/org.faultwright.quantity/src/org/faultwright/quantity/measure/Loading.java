/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;
import org.faultwright.quantity.ValueText;

/**
 * How much connecting the instrument changes what it reads. A voltage behind the source resistance R is
 * read by the input resistance Ri as Ri/(R+Ri) of itself, a current through R falls to R/(R+Rb) when the
 * burden Rb comes into its path (Thévenin). Inductances and capacitances are left out: dc and low frequency.
 *
 * @param undisturbed what is there without the instrument, in the coherent SI unit
 * @param reading     what the instrument then reads, exact
 * @param source      R, in ohm
 * @param instrument  Ri or Rb, in ohm
 * @param range       the range in use
 */
public record Loading(Exact undisturbed, Exact reading, Exact source, Exact instrument, MeterRange range) {

    /** Absent when the kind is neither voltage nor current, when the instrument's data do not say, or a resistance is negative. */
    public static Optional<Loading> of(Exact undisturbed, Quantity sourceResistance, MeterRange range) {
        Optional<Exact> instrument = range.kind().isVoltage() ? resistance(range.input()) : burden(range);
        Exact source = sourceResistance.base();
        if (instrument.isEmpty() || !sourceResistance.dimension().equals(Dimension.RESISTANCE) || source.signum() < 0
                || instrument.get().plus(source).signum() <= 0) {
            return Optional.empty();
        }
        Exact left = range.kind().isVoltage() ? instrument.get() : source;
        return Optional.of(new Loading(undisturbed,
                undisturbed.times(left).dividedBy(instrument.get().plus(source)), source, instrument.get(), range));
    }

    private static Optional<Exact> resistance(Optional<Quantity> stated) {
        return stated.filter(r -> r.dimension().equals(Dimension.RESISTANCE)).map(Quantity::base).filter(r -> r.signum() >= 0);
    }

    /** A burden is stated as a resistance, or as the voltage dropped at the upper end of the range. */
    private static Optional<Exact> burden(MeterRange range) {
        if (!range.kind().isCurrent()) {
            return Optional.empty();
        }
        return resistance(range.burden()).or(() -> range.burden()
                .filter(drop -> drop.dimension().equals(Dimension.VOLTAGE) && range.upTo().base().signum() > 0)
                .map(drop -> drop.base().absolute().dividedBy(range.upTo().base())));
    }

    /** Reading minus undisturbed value; negative for a positive value. */
    public Exact error() {
        return reading.minus(undisturbed);
    }

    /** The error as a part of the undisturbed value, from −1 to 0. */
    public Exact relativeError() {
        Exact lost = range.kind().isVoltage() ? source : instrument;
        return lost.negated().dividedBy(source.plus(instrument));
    }

    /** The error as a part of the width of the limits; absent for limits without a width above zero. */
    public Optional<Exact> shareOf(Interval limits) {
        return limits.width().filter(width -> width.signum() > 0).map(width -> error().absolute().dividedBy(width));
    }

    public List<BudgetLine> explain() {
        Unit unit = range.upTo().unit();
        boolean voltage = range.kind().isVoltage();
        String law = voltage ? "Thévenin source R with input resistance Ri" : "Thévenin source R with burden Rb in the path";
        Unit ohm = Units.named("ohm");
        return List.of(
                new BudgetLine("source resistance R", ValueText.significant(source, ohm, 4, RoundingMode.HALF_UP), "", "the point's data"),
                new BudgetLine(voltage ? "input resistance Ri" : "burden Rb",
                        ValueText.significant(instrument, ohm, 4, RoundingMode.HALF_UP), "", "the instrument's data"),
                new BudgetLine("reading expected", ValueText.significant(reading, unit, 6, RoundingMode.HALF_UP),
                        voltage ? "V·Ri/(R + Ri)" : "I·R/(R + Rb)", law),
                new BudgetLine("error by loading", String.format(Locale.ROOT, "%.3f %%", relativeError().doubleValue() * 100),
                        voltage ? "−R/(R + Ri)" : "−Rb/(R + Rb)", law));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;
import java.util.ArrayList;
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
 * burden Rb comes into its path (Thévenin). An alternating voltage of known frequency meets the input capacitance C
 * beside Ri as well and is read as |Zi/(R+Zi)| with Zi = Ri/(1+jωRiC), which is Ri/(R+Ri) · 1/√(1+(ωRpC)²) with Rp of R
 * and Ri side by side. Inductances, and capacitances at the source, are left out.
 *
 * @param undisturbed what is there without the instrument, in the coherent SI unit
 * @param reading     what the instrument then reads, exact
 * @param source      R, in ohm
 * @param instrument  Ri or Rb, in ohm
 * @param capacitor   what the input capacitance does; absent for dc, or where frequency or capacitance are not stated
 * @param range       the range in use
 */
public record Loading(Exact undisturbed, Exact reading, Exact source, Exact instrument, Optional<Shunt> capacitor,
        MeterRange range) {
    /**
     * The input capacitance at one frequency.
     *
     * @param frequency   in hertz
     * @param capacitance in farad
     * @param factor      1/√(1+(ωRpC)²), by which the reading falls further; to 15 digits
     */
    public record Shunt(Exact frequency, Exact capacitance, Exact factor) {
        private static Shunt of(Exact frequency, Exact capacitance, Exact parallel) {
            double product = 2 * Math.PI * frequency.doubleValue() * parallel.doubleValue() * capacitance.doubleValue();
            double factor = 1 / Math.hypot(1, product);
            return new Shunt(frequency, capacitance, Double.isFinite(factor) ? Exact.of(factor) : Exact.ZERO);
        }
    }

    /** @param frequency of an alternating voltage, the highest stated; one that is negative does not count */
    public static Optional<Loading> of(Exact undisturbed, Quantity sourceResistance, MeterRange range,
            Optional<Quantity> frequency) {
        Optional<Exact> instrument = range.kind().isVoltage() ? resistance(range.input()) : burden(range);
        Exact source = sourceResistance.base();
        if (instrument.isEmpty() || !sourceResistance.dimension().equals(Dimension.RESISTANCE) || source.signum() < 0
                || instrument.get().plus(source).signum() <= 0) {
            return Optional.empty();
        }
        Exact sum = instrument.get().plus(source);
        Exact left = range.kind().isVoltage() ? instrument.get() : source;
        Optional<Shunt> capacitor = capacitance(range).flatMap(farad -> frequency.filter(stated -> stated.unit().isKnown()
                && stated.dimension().equals(Dimension.FREQUENCY)).map(Quantity::base).filter(hertz -> hertz.signum() > 0)
                .map(hertz -> Shunt.of(hertz, farad, instrument.get().times(source).dividedBy(sum))));
        Exact reading = undisturbed.times(left).dividedBy(sum).times(capacitor.map(Shunt::factor).orElse(Exact.ONE));
        return Optional.of(new Loading(undisturbed, reading, source, instrument.get(), capacitor, range));
    }

    private static Optional<Exact> capacitance(MeterRange range) {
        return range.inputCapacitance().filter(stated -> range.kind().isVoltage() && range.kind().isAlternating()
                && stated.unit().isKnown() && stated.dimension().equals(Dimension.CAPACITANCE)).map(Quantity::base)
                .filter(farad -> farad.signum() > 0);
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
        Exact left = range.kind().isVoltage() ? instrument : source;
        return left.dividedBy(source.plus(instrument)).times(capacitor.map(Shunt::factor).orElse(Exact.ONE)).minus(Exact.ONE);
    }

    /** The error as a part of the width of the limits; absent for limits without a width above zero. */
    public Optional<Exact> shareOf(Interval limits) {
        return limits.width().filter(width -> width.signum() > 0).map(width -> error().absolute().dividedBy(width));
    }

    public List<BudgetLine> explain() {
        Unit unit = range.upTo().unit();
        boolean voltage = range.kind().isVoltage();
        String law = voltage ? "Thévenin source R with input " + (capacitor.isPresent() ? "Ri and C side by side" : "resistance Ri")
                : "Thévenin source R with burden Rb in the path";
        Unit ohm = Units.named("ohm");
        List<BudgetLine> lines = new ArrayList<>(List.of(
                new BudgetLine("source resistance R", significant(source, ohm), "", "the point's data"),
                new BudgetLine(voltage ? "input resistance Ri" : "burden Rb", significant(instrument, ohm), "",
                        "the instrument's data")));
        capacitor.ifPresent(shunt -> {
            lines.add(new BudgetLine("input capacitance C", significant(shunt.capacitance(), Units.named("F")), "",
                    "the instrument's data"));
            lines.add(new BudgetLine("frequency f", significant(shunt.frequency(), Units.named("Hz")), "", "the point's data"));
        });
        String further = capacitor.isPresent() ? " · 1/√(1 + (2πf·C·R·Ri/(R + Ri))²)" : "";
        lines.add(new BudgetLine("reading expected", ValueText.significant(reading, unit, 6, RoundingMode.HALF_UP),
                (voltage ? "V·Ri/(R + Ri)" : "I·R/(R + Rb)") + further, law));
        lines.add(new BudgetLine("error by loading", percent(relativeError().doubleValue() * 100),
                capacitor.isPresent() ? "reading/V − 1" : voltage ? "−R/(R + Ri)" : "−Rb/(R + Rb)", law));
        return List.copyOf(lines);
    }

    private static String percent(double error) {
        return error != 0 && Math.abs(error) < 0.001 ? "less than 0.001 %" : String.format(Locale.ROOT, "%.3f %%", error);
    }

    private static String significant(Exact value, Unit unit) {
        return ValueText.significant(value, unit, 4, RoundingMode.HALF_UP);
    }
}

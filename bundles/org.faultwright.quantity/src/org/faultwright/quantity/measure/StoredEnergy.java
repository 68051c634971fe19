/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Units;
import org.faultwright.quantity.ValueText;

/**
 * What a charged capacitor holds, and how it drains, from nominal values. It says what to be ready for; that a charge
 * is gone is proved by measuring.
 *
 * @param volts  the voltage it is charged to, in volts, above zero
 * @param farads its capacitance, in farads, above zero
 * @param ohms   what drains it, in ohms, above zero; absent where nothing is known to
 */
public record StoredEnergy(Exact volts, Exact farads, Optional<Exact> ohms) {
    /** 60 V dc: the limit of energy source class 1 in IEC 62368-1, and the reduced one of IEC 61140. */
    public static final Quantity SAFE = Quantity.of("60", "V");
    private static final MathContext DIGITS = new MathContext(6, RoundingMode.CEILING);
    private static final BigInteger SIXTY = BigInteger.valueOf(60);

    /** @throws IllegalArgumentException where a value is not above zero */
    public StoredEnergy {
        if (volts.signum() <= 0 || farads.signum() <= 0 || ohms.filter(value -> value.signum() <= 0).isPresent()) {
            throw new IllegalArgumentException("voltage, capacitance and resistance are above zero");
        }
    }

    /** W = C·V²/2, in joules. */
    public Quantity energy() {
        return quantity(farads.times(volts.squared()).dividedBy(Exact.of(2)), "J");
    }

    /** Q = C·V, in coulombs. */
    public Quantity charge() {
        return quantity(farads.times(volts), "C");
    }

    /**
     * t = R·C·ln(V₀/V), in seconds, rounded up to six digits; zero where the voltage is not above it, absent where
     * nothing drains it.
     *
     * @param safe the voltage to reach, in volts
     * @throws IllegalArgumentException where that is not above zero: a discharge never gets there
     */
    public Optional<Quantity> timeTo(Exact safe) {
        if (safe.signum() <= 0) {
            throw new IllegalArgumentException("a discharge never reaches 0 V");
        }
        return ohms.map(resistance -> volts.compareTo(safe) <= 0 ? quantity(Exact.ZERO, "s")
                : quantity(Exact.of(resistance.times(farads).times(Exact.of(Math.log(volts.dividedBy(safe).doubleValue())))
                        .toDecimal(DIGITS)), "s"));
    }

    /**
     * V(t) = V₀·e^(−t/RC), in volts; the full voltage where nothing drains it.
     *
     * @param seconds from zero up
     */
    public Quantity after(Exact seconds) {
        return quantity(ohms.map(resistance -> Exact.of(volts.times(Exact.of(Math.exp(-seconds.doubleValue()
                / resistance.times(farads).doubleValue()))).toDecimal(DIGITS))).orElse(volts), "V");
    }

    /** The same with one more resistance across it, such as a bleed lead. @param more in ohms, above zero */
    public StoredEnergy drainedAlsoBy(Exact more) {
        return new StoredEnergy(volts, farads, Optional.of(ohms.map(resistance -> resistance.times(more)
                .dividedBy(resistance.plus(more))).orElse(more)));
    }

    /** For a card or a screen: {@code 24.9 J and 153 mC at 325 V; 13 min 15 s down to 60 V through 1 MΩ}. */
    public String inWords() {
        return up(energy()) + " and " + up(charge()) + " at " + up(quantity(volts, "V"))
                + ohms.flatMap(resistance -> timeTo(SAFE.base()).map(time -> drain(time, quantity(resistance, "ohm"))))
                        .orElse("; nothing is stated that drains it");
    }

    private static String drain(Quantity time, Quantity resistance) {
        return time.value().signum() == 0 ? "; not above " + SAFE
                : "; " + duration(time.value()) + " down to " + SAFE + " through " + up(resistance);
    }

    /** Rounded up to whole seconds, from an hour on to whole minutes. */
    private static String duration(Exact seconds) {
        BigInteger whole = seconds.ceiling().toDecimal(0).toBigInteger();
        BigInteger[] minutes = whole.divideAndRemainder(SIXTY);
        if (minutes[0].compareTo(SIXTY) < 0) {
            return minutes[0].signum() == 0 ? whole + " s" : minutes[0] + " min " + minutes[1] + " s";
        }
        BigInteger[] hours = minutes[0].add(BigInteger.valueOf(minutes[1].signum())).divideAndRemainder(SIXTY);
        return hours[0] + " h " + hours[1] + " min";
    }

    private static String up(Quantity quantity) {
        return ValueText.significant(quantity.base(), quantity.unit(), 3, RoundingMode.UP);
    }

    private static Quantity quantity(Exact value, String unit) {
        return Quantity.of(value, Units.named(unit));
    }
}

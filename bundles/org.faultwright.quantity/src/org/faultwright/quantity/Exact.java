/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;

/**
 * An exact rational number. Limits are compared with these, so that binary rounding never decides a
 * band: 0.1 × 3 is 0.3, and one revolution a minute is exactly 1/60 Hz.
 */
public final class Exact implements Comparable<Exact> {
    public static final Exact ZERO = new Exact(BigInteger.ZERO, BigInteger.ONE);
    public static final Exact ONE = new Exact(BigInteger.ONE, BigInteger.ONE);

    /** A text of a few letters, such as 1e999999999, must not become a number that fills the memory. */
    private static final int LARGEST_EXPONENT = 2000;
    private static final MathContext PRINTED = new MathContext(17);

    private final BigInteger numerator;
    private final BigInteger denominator;

    private Exact(BigInteger numerator, BigInteger denominator) {
        this.numerator = numerator;
        this.denominator = denominator;
    }

    public static Exact of(long value) {
        return new Exact(BigInteger.valueOf(value), BigInteger.ONE);
    }

    /** @throws ArithmeticException if its exponent lies outside ±2000 */
    public static Exact of(BigDecimal value) {
        if (Math.abs((long) value.scale()) > LARGEST_EXPONENT) {
            throw new ArithmeticException("exponent out of range: " + -(long) value.scale());
        }
        return value.scale() <= 0
                ? new Exact(value.toBigIntegerExact(), BigInteger.ONE)
                : ratio(value.unscaledValue(), BigInteger.TEN.pow(value.scale()));
    }

    /**
     * Reads decimal notation such as {@code 4.75} or {@code 1e-3}.
     *
     * @throws NumberFormatException if it is none, is longer than 2000 characters or has an exponent outside ±2000
     */
    public static Exact of(String decimal) {
        if (decimal.length() > LARGEST_EXPONENT) {
            throw new NumberFormatException("a number of " + decimal.length() + " characters");
        }
        try {
            return of(new BigDecimal(decimal));
        } catch (ArithmeticException outOfRange) {
            throw (NumberFormatException) new NumberFormatException(outOfRange.getMessage()).initCause(outOfRange);
        }
    }

    /** The number a double stands for, exactly. @throws NumberFormatException if it is infinite or no number */
    public static Exact of(double binary) {
        return of(new BigDecimal(binary));
    }

    /** @throws ArithmeticException if the denominator is zero */
    public static Exact ratio(long numerator, long denominator) {
        return ratio(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    /** @throws ArithmeticException if the denominator is zero */
    public static Exact ratio(BigInteger numerator, BigInteger denominator) {
        if (denominator.signum() == 0) {
            throw new ArithmeticException("division by zero");
        }
        if (numerator.bitLength() < Long.SIZE - 1 && denominator.bitLength() < Long.SIZE - 1) {
            return lowest(numerator, denominator);
        }
        BigInteger shared = numerator.gcd(denominator);
        if (denominator.signum() < 0) {
            shared = shared.negate();
        }
        return shared.equals(BigInteger.ONE)
                ? new Exact(numerator, denominator)
                : new Exact(numerator.divide(shared), denominator.divide(shared));
    }

    /** The same for numbers of a usual size, several times as fast. */
    private static Exact lowest(BigInteger numerator, BigInteger denominator) {
        if (denominator.equals(BigInteger.ONE)) {
            return new Exact(numerator, denominator);
        }
        long above = numerator.longValue();
        long below = denominator.longValue();
        long shared = Math.abs(below);
        for (long rest = above % below; rest != 0;) {
            long next = shared % rest;
            shared = Math.abs(rest);
            rest = next;
        }
        if (below < 0) {
            shared = -shared;
        }
        return shared == 1 ? new Exact(numerator, denominator)
                : new Exact(BigInteger.valueOf(above / shared), BigInteger.valueOf(below / shared));
    }

    public Exact plus(Exact other) {
        // most units have no offset
        if (other.signum() == 0) {
            return this;
        }
        return denominator.equals(other.denominator)
                ? ratio(numerator.add(other.numerator), denominator)
                : ratio(numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                        denominator.multiply(other.denominator));
    }

    public Exact minus(Exact other) {
        return plus(other.negated());
    }

    public Exact times(Exact other) {
        // most units are those of the base
        if (other.isOne()) {
            return this;
        }
        return ratio(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    private boolean isOne() {
        return numerator.equals(BigInteger.ONE) && denominator.equals(BigInteger.ONE);
    }

    public Exact times(long other) {
        return ratio(numerator.multiply(BigInteger.valueOf(other)), denominator);
    }

    /** @throws ArithmeticException if the other number is zero */
    public Exact dividedBy(Exact other) {
        return ratio(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
    }

    public Exact squared() {
        return new Exact(numerator.multiply(numerator), denominator.multiply(denominator));
    }

    /** @param exponent from 0 up */
    public Exact power(int exponent) {
        return new Exact(numerator.pow(exponent), denominator.pow(exponent));
    }

    public Exact negated() {
        return new Exact(numerator.negate(), denominator);
    }

    public Exact absolute() {
        return numerator.signum() < 0 ? negated() : this;
    }

    public Exact min(Exact other) {
        return compareTo(other) <= 0 ? this : other;
    }

    public Exact max(Exact other) {
        return compareTo(other) >= 0 ? this : other;
    }

    public int signum() {
        return numerator.signum();
    }

    /** The largest whole number that is not above this one. */
    public Exact floor() {
        BigInteger[] parts = numerator.divideAndRemainder(denominator);
        return new Exact(parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0], BigInteger.ONE);
    }

    /** The smallest whole number that is not under this one. */
    public Exact ceiling() {
        return negated().floor().negated();
    }

    /**
     * A decimal of at least 20 significant digits next to the square root.
     *
     * @param direction {@code FLOOR} for one not above the root, {@code CEILING} for one not under it
     * @throws ArithmeticException if the number is negative
     */
    public Exact squareRoot(RoundingMode direction) {
        if (signum() < 0) {
            throw new ArithmeticException("square root of a negative number");
        }
        // Decimal digits of the root's whole part, near enough: a factor of 1000 is 10 bits.
        int whole = (numerator.bitLength() - denominator.bitLength()) * 3 / 20;
        int places = Math.max(0, 22 - whole);
        BigInteger scaled = numerator.multiply(BigInteger.TEN.pow(2 * places));
        BigInteger root = scaled.divide(denominator).sqrt();
        if (direction == RoundingMode.CEILING && !root.multiply(root).multiply(denominator).equals(scaled)) {
            root = root.add(BigInteger.ONE);
        }
        return ratio(root, BigInteger.TEN.pow(places));
    }

    public double doubleValue() {
        return toDecimal(new MathContext(20)).doubleValue();
    }

    /** The number rounded as the context says. */
    public BigDecimal toDecimal(MathContext precision) {
        return new BigDecimal(numerator).divide(new BigDecimal(denominator), precision);
    }

    /** The number rounded half up to this many places after the point. */
    public BigDecimal toDecimal(int places) {
        return toDecimal(places, RoundingMode.HALF_UP);
    }

    /** The number rounded to this many places after the point; a negative count rounds to tens, hundreds and so on. */
    public BigDecimal toDecimal(int places, RoundingMode rounding) {
        return new BigDecimal(numerator).divide(new BigDecimal(denominator), places, rounding);
    }

    /** Whether decimal notation with an end can write it, as it can 1/8 but not 1/3. */
    public boolean isDecimal() {
        BigInteger rest = denominator.shiftRight(denominator.getLowestSetBit());
        BigInteger five = BigInteger.valueOf(5);
        while (rest.compareTo(BigInteger.ONE) > 0) {
            BigInteger[] parts = rest.divideAndRemainder(five);
            if (parts[1].signum() != 0) {
                return false;
            }
            rest = parts[0];
        }
        return true;
    }

    @Override
    public int compareTo(Exact other) {
        return denominator.equals(other.denominator)
                ? numerator.compareTo(other.numerator)
                : numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Exact that && numerator.equals(that.numerator) && denominator.equals(that.denominator);
    }

    @Override
    public int hashCode() {
        return Objects.hash(numerator, denominator);
    }

    /** Exact in every case: plain decimal notation where the number has one that ends, else a fraction such as {@code 1/60}. */
    public String toFraction() {
        return isDecimal() ? new BigDecimal(numerator).divide(new BigDecimal(denominator)).stripTrailingZeros().toPlainString()
                : numerator + "/" + denominator;
    }

    /** Plain decimal notation, exact where the number has one, else to 17 significant digits. */
    @Override
    public String toString() {
        BigDecimal decimal = (isDecimal() ? new BigDecimal(numerator).divide(new BigDecimal(denominator))
                : toDecimal(PRINTED)).stripTrailingZeros();
        return decimal.precision() - decimal.scale() > 24 || decimal.scale() > 24
                ? decimal.toString()
                : decimal.toPlainString();
    }
}

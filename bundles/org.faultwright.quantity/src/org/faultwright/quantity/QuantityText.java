/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a quantity from text: {@code 24 V}, {@code 4.7 kohm}, {@code 4k7}, {@code -12 V}, {@code 1e-3 A}.
 * It never throws and never takes long, whatever the text.
 */
public final class QuantityText {
    /**
     * What was read.
     *
     * @param quantity value 0 where the number could not be read; the unit may be missing or unknown, which
     *                 {@link Unit#status()} says and is not a problem of reading
     * @param problem  one sentence with what is wrong and what to write instead
     */
    public record Reading(Quantity quantity, Optional<String> problem) {
    }

    private static final int MOST_DIGITS = 40;
    private static final int LARGEST_EXPONENT = 60;
    private static final int LONGEST_QUOTED = 30;
    private static final Pattern NUMBER = Pattern
            .compile("([+-]?)([0-9]*)(?:\\.([0-9]*))?(?:[eE]([+-]?[0-9]+))?(?![0-9.])");

    /** What follows the first digits of a number written with a decimal comma or with groups of three. */
    private static final Pattern GROUPED = Pattern.compile("(?:,|'|\\s+[0-9])[0-9,.'\\s]*");

    private QuantityText() {
    }

    /** Reads a number with its unit, with or without a space between; or a component code such as {@code 4R7}. */
    public static Reading read(String text) {
        String stripped = text.strip();
        Optional<Quantity> code = ComponentCode.read(stripped);
        if (code.isPresent()) {
            return new Reading(code.get(), Optional.empty());
        }
        String plain = stripped.replace('\u2212', '-');
        Matcher number = NUMBER.matcher(plain);
        if (!number.lookingAt() || digits(number) == 0) {
            return problem(stripped, Unit.MISSING, quoted(stripped) + " does not begin with a number; write it as in 24 V.");
        }
        String rest = plain.substring(number.end());
        if (GROUPED.matcher(rest).lookingAt()) {
            return problem(stripped, Units.named(GROUPED.matcher(rest).replaceFirst("")), quoted(stripped)
                    + " has a comma or a space in its number; write a point for decimals and no space, as in 1200.5 V.");
        }
        return read(stripped, number, Units.named(rest));
    }

    /** Reads a number and a unit that a grammar has already told apart; a component code may stand for the number. */
    public static Reading read(String number, String unit) {
        String spelling = unit.isBlank() ? number.strip() : number.strip() + " " + unit.strip();
        Unit named = Units.named(unit);
        Optional<Quantity> code = ComponentCode.read(number.strip());
        if (code.isPresent()) {
            return coded(code.get(), named, spelling);
        }
        Matcher matcher = NUMBER.matcher(number.strip().replace('\u2212', '-'));
        if (!matcher.matches() || digits(matcher) == 0) {
            return problem(spelling, named, quoted(number.strip()) + " is not a number; write it as in 4.75 or 1e-3.");
        }
        return read(spelling, matcher, named);
    }

    private static Reading coded(Quantity code, Unit unit, String spelling) {
        boolean same = unit.status() == Unit.Status.MISSING
                || unit.dimension().equals(code.dimension()) && unit.factor().equals(Exact.ONE) && unit.isKnown();
        return same ? new Reading(new Quantity(code.value(), code.unit(), spelling), Optional.empty())
                : problem(spelling, unit, quoted(spelling) + " gives two units; write either "
                        + quoted(code.spelling()) + " alone or a plain number with " + unit.symbol() + ".");
    }

    private static Reading read(String spelling, Matcher number, Unit unit) {
        int digits = digits(number);
        if (digits > MOST_DIGITS) {
            return problem(spelling, unit, "A number of " + digits + " digits is more than any instrument shows; write at most "
                    + MOST_DIGITS + ".");
        }
        String exponent = number.group(4) == null ? "0" : number.group(4);
        if (exponent.length() > 6 || Math.abs(Integer.parseInt(exponent)) > LARGEST_EXPONENT) {
            return problem(spelling, unit, "The exponent of " + quoted(spelling) + " is out of range; write one from -"
                    + LARGEST_EXPONENT + " to " + LARGEST_EXPONENT + ".");
        }
        return new Reading(new Quantity(Exact.of(number.group().endsWith(".") ? number.group() + "0" : number.group()),
                unit, spelling), Optional.empty());
    }

    private static int digits(Matcher number) {
        return number.group(2).length() + (number.group(3) == null ? 0 : number.group(3).length());
    }

    private static Reading problem(String spelling, Unit unit, String sentence) {
        return new Reading(new Quantity(Exact.ZERO, unit, spelling), Optional.of(sentence));
    }

    private static String quoted(String text) {
        return "'" + (text.length() <= LONGEST_QUOTED ? text : text.substring(0, LONGEST_QUOTED) + "…") + "'";
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Map;

import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.DimensionCheck.Form;
import org.faultwright.quantity.measure.DimensionCheck.Typed;

/** Dimensions, and what temperatures and levels allow. */
final class DimensionAlgebra extends Algebra<Typed> {
    private final Map<String, Typed> readings;

    DimensionAlgebra(Map<String, Typed> readings) {
        this.readings = readings;
    }

    @Override
    Typed reading(Expression.Reading reading) {
        if (!readings.containsKey(reading.name())) {
            unknownReading(reading);
        }
        return readings.getOrDefault(reading.name(), Typed.NUMBER);
    }

    @Override
    Typed constant(Expression.Constant constant) {
        Unit unit = constant.quantity().unit();
        if (unit.status() == Unit.Status.UNKNOWN) {
            problem(constant, "There is no unit " + unit.symbol() + ".");
        } else if (unit.isLogarithmic() && !unit.dimension().equals(Dimension.NONE)) {
            problem(constant, constant + " is a level; write it as the value it stands for.");
        }
        return Typed.of(unit);
    }

    @Override
    Typed number(long value) {
        return Typed.NUMBER;
    }

    @Override
    Typed sum(Expression place, Typed a, Typed b) {
        if (a.form() == Form.SOUND_LEVEL && b.form() == Form.SOUND_LEVEL) {
            problem(place, "Two sound levels cannot be added in " + place + ": two sources of 60 dB(A) together give 63 dB(A). Measure them together.");
            return a;
        }
        if (a.form() != b.form() && isLevelOfSound(a) && isLevelOfSound(b)) {
            return a.form() == Form.SOUND_LEVEL ? a : b;
        }
        same(place, a, b);
        if (a.form() == Form.TEMPERATURE && b.form() == Form.TEMPERATURE) {
            problem(place, "Two temperatures cannot be added in " + place + "; write the difference in K.");
        }
        return b.form() == Form.TEMPERATURE || a.form() == Form.KELVIN ? b : a;
    }

    @Override
    Typed difference(Expression place, Typed a, Typed b) {
        if (a.form() == Form.SOUND_LEVEL && isLevelOfSound(b)) {
            return b.form() == Form.SOUND_LEVEL ? new Typed(Dimension.NONE, Form.LEVEL) : a;
        }
        same(place, a, b);
        if (a.form() == Form.TEMPERATURE && b.form() == Form.TEMPERATURE) {
            return new Typed(Dimension.TEMPERATURE, Form.PLAIN);
        }
        if (b.form() == Form.TEMPERATURE) {
            problem(place, "A temperature cannot be taken from a difference in " + place + ".");
        }
        return a;
    }

    @Override
    Typed product(Expression place, Typed a, Typed b) {
        scalable(place, a);
        scalable(place, b);
        return new Typed(a.dimension().times(b.dimension()), Form.PLAIN);
    }

    @Override
    Typed quotient(Expression place, Typed a, Typed b) {
        scalable(place, a);
        scalable(place, b);
        return new Typed(a.dimension().per(b.dimension()), Form.PLAIN);
    }

    @Override
    Typed negation(Expression place, Typed a) {
        if (a.form() == Form.TEMPERATURE || a.form() == Form.SOUND_LEVEL) {
            scalable(place, a);
        }
        return a;
    }

    @Override
    Typed minimum(Expression place, Typed a, Typed b) {
        same(place, a, b);
        boolean mixed = a.form() == Form.TEMPERATURE && b.form() == Form.PLAIN
                || a.form() == Form.PLAIN && b.form() == Form.TEMPERATURE;
        if (mixed) {
            problem(place, "A temperature and a temperature difference are compared in " + place + ".");
        }
        return a.form() == Form.KELVIN ? b : a;
    }

    @Override
    Typed maximum(Expression place, Typed a, Typed b) {
        return minimum(place, a, b);
    }

    @Override
    Typed absolute(Expression place, Typed a) {
        return negation(place, a);
    }

    @Override
    Typed square(Expression place, Typed a) {
        return product(place, a, a);
    }

    @Override
    Typed squareRoot(Expression place, Typed a) {
        scalable(place, a);
        if (a.root().isEmpty()) {
            problem(place, "In " + place + " the root is of something that is no square; take it of volts squared or the like.");
        }
        return new Typed(a.root().orElse(Dimension.NONE), Form.PLAIN);
    }

    @Override
    Typed decibel(Expression place, Typed a, Typed b, int perDecade) {
        same(place, a, b);
        scalable(place, a);
        boolean powers = a.dimension().equals(Dimension.POWER);
        if (powers && perDecade == 20) {
            problem(place, "In " + place + " powers are compared; use " + Function.DB_OF_POWERS.words() + ".");
        } else if (!powers && perDecade == 10 && !a.dimension().equals(Dimension.NONE)) {
            problem(place, "In " + place + " no powers are compared; use " + Function.DB.words() + ".");
        }
        return new Typed(Dimension.NONE, Form.LEVEL);
    }

    @Override
    Typed power(Expression place, Typed a, Typed b) {
        Typed result = product(place, a, b);
        boolean known = a.dimension().equals(Dimension.VOLTAGE) && b.dimension().equals(Dimension.CURRENT)
                || a.dimension().equals(Dimension.CURRENT) && b.dimension().equals(Dimension.VOLTAGE);
        if (!known) {
            problem(place, "In " + place + " power takes a voltage and a current.");
        }
        return result;
    }

    private void same(Expression place, Typed a, Typed b) {
        if (!a.dimension().equals(b.dimension())) {
            problem(place, "In " + place + " the two sides are not the same kind of quantity; bring both to one.");
        } else if ((a.form() == Form.LEVEL) != (b.form() == Form.LEVEL)) {
            problem(place, "In " + place + " a level in dB meets a plain number; write both in dB or neither.");
        }
    }

    /** A sound level, or decibels that it differs by; of two sound levels only the first says so. */
    private static boolean isLevelOfSound(Typed a) {
        return a.form() == Form.SOUND_LEVEL || a.form() == Form.LEVEL && a.dimension().equals(Dimension.NONE);
    }

    private void scalable(Expression place, Typed a) {
        if (a.form() == Form.SOUND_LEVEL) {
            problem(place, "In " + place + " a sound level is used as a factor; only the difference of two sound levels can be computed.");
        } else if (a.form() == Form.TEMPERATURE) {
            problem(place, "In " + place + " a temperature is used as a factor; take a difference of two temperatures first.");
        } else if (a.form() == Form.LEVEL) {
            problem(place, "In " + place + " a level in dB is used as a factor; use the ratio that it stands for.");
        }
    }
}

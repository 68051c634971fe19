/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Map;

import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.DimensionCheck.ExpressionType;
import org.faultwright.quantity.measure.DimensionCheck.Form;

/** Dimensions, and what temperatures and levels allow. */
final class DimensionAlgebra extends Algebra<ExpressionType> {
    private final Map<String, ExpressionType> readings;

    DimensionAlgebra(Map<String, ExpressionType> readings) {
        this.readings = readings;
    }

    @Override
    ExpressionType reading(Expression.Reading reading) {
        if (!readings.containsKey(reading.name())) {
            unknownReading(reading);
        }
        return readings.getOrDefault(reading.name(), ExpressionType.NUMBER);
    }

    @Override
    ExpressionType constant(Expression.Constant constant) {
        Unit unit = constant.quantity().unit();
        if (unit.status() == Unit.Status.UNKNOWN) {
            problem(constant, "There is no unit " + unit.symbol() + ".");
        } else if (unit.isLogarithmic() && !unit.dimension().equals(Dimension.NONE)) {
            problem(constant, constant + " is a level; write it as the value it stands for.");
        }
        return ExpressionType.of(unit);
    }

    @Override
    ExpressionType number(long value) {
        return ExpressionType.NUMBER;
    }

    @Override
    ExpressionType sum(Expression place, ExpressionType a, ExpressionType b) {
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
    ExpressionType difference(Expression place, ExpressionType a, ExpressionType b) {
        if (a.form() == Form.SOUND_LEVEL && isLevelOfSound(b)) {
            return b.form() == Form.SOUND_LEVEL ? new ExpressionType(Dimension.NONE, Form.LEVEL) : a;
        }
        same(place, a, b);
        if (a.form() == Form.TEMPERATURE && b.form() == Form.TEMPERATURE) {
            return new ExpressionType(Dimension.TEMPERATURE, Form.PLAIN);
        }
        if (b.form() == Form.TEMPERATURE) {
            problem(place, "A temperature cannot be taken from a difference in " + place + ".");
        }
        return a;
    }

    @Override
    ExpressionType product(Expression place, ExpressionType a, ExpressionType b) {
        scalable(place, a);
        scalable(place, b);
        return new ExpressionType(a.dimension().times(b.dimension()), Form.PLAIN);
    }

    @Override
    ExpressionType quotient(Expression place, ExpressionType a, ExpressionType b) {
        scalable(place, a);
        scalable(place, b);
        return new ExpressionType(a.dimension().per(b.dimension()), Form.PLAIN);
    }

    @Override
    ExpressionType negation(Expression place, ExpressionType a) {
        if (a.form() == Form.TEMPERATURE || a.form() == Form.SOUND_LEVEL) {
            scalable(place, a);
        }
        return a;
    }

    @Override
    ExpressionType minimum(Expression place, ExpressionType a, ExpressionType b) {
        same(place, a, b);
        boolean mixed = a.form() == Form.TEMPERATURE && b.form() == Form.PLAIN
                || a.form() == Form.PLAIN && b.form() == Form.TEMPERATURE;
        if (mixed) {
            problem(place, "A temperature and a temperature difference are compared in " + place + ".");
        }
        return a.form() == Form.KELVIN ? b : a;
    }

    @Override
    ExpressionType maximum(Expression place, ExpressionType a, ExpressionType b) {
        return minimum(place, a, b);
    }

    @Override
    ExpressionType absolute(Expression place, ExpressionType a) {
        return negation(place, a);
    }

    @Override
    ExpressionType square(Expression place, ExpressionType a) {
        return product(place, a, a);
    }

    @Override
    ExpressionType squareRoot(Expression place, ExpressionType a) {
        scalable(place, a);
        if (a.root().isEmpty()) {
            problem(place, "In " + place + " the root is of something that is no square; take it of volts squared or the like.");
        }
        return new ExpressionType(a.root().orElse(Dimension.NONE), Form.PLAIN);
    }

    @Override
    ExpressionType decibel(Expression place, ExpressionType a, ExpressionType b, int perDecade) {
        same(place, a, b);
        scalable(place, a);
        boolean powers = a.dimension().equals(Dimension.POWER);
        if (powers && perDecade == 20) {
            problem(place, "In " + place + " powers are compared; use " + Function.DB_OF_POWERS.words() + ".");
        } else if (!powers && perDecade == 10 && !a.dimension().equals(Dimension.NONE)) {
            problem(place, "In " + place + " no powers are compared; use " + Function.DB.words() + ".");
        }
        return new ExpressionType(Dimension.NONE, Form.LEVEL);
    }

    @Override
    ExpressionType power(Expression place, ExpressionType a, ExpressionType b) {
        ExpressionType result = product(place, a, b);
        boolean known = a.dimension().equals(Dimension.VOLTAGE) && b.dimension().equals(Dimension.CURRENT)
                || a.dimension().equals(Dimension.CURRENT) && b.dimension().equals(Dimension.VOLTAGE);
        if (!known) {
            problem(place, "In " + place + " power takes a voltage and a current.");
        }
        return result;
    }

    private void same(Expression place, ExpressionType a, ExpressionType b) {
        if (!a.dimension().equals(b.dimension())) {
            problem(place, "In " + place + " the two sides are not the same kind of quantity; bring both to one.");
        } else if ((a.form() == Form.LEVEL) != (b.form() == Form.LEVEL)) {
            problem(place, "In " + place + " a level in dB meets a plain number; write both in dB or neither.");
        }
    }

    /** A sound level, or decibels that it differs by; of two sound levels only the first says so. */
    private static boolean isLevelOfSound(ExpressionType a) {
        return a.form() == Form.SOUND_LEVEL || a.form() == Form.LEVEL && a.dimension().equals(Dimension.NONE);
    }

    private void scalable(Expression place, ExpressionType a) {
        if (a.form() == Form.SOUND_LEVEL) {
            problem(place, "In " + place + " a sound level is used as a factor; only the difference of two sound levels can be computed.");
        } else if (a.form() == Form.TEMPERATURE) {
            problem(place, "In " + place + " a temperature is used as a factor; take a difference of two temperatures first.");
        } else if (a.form() == Form.LEVEL) {
            problem(place, "In " + place + " a level in dB is used as a factor; use the ratio that it stands for.");
        }
    }
}

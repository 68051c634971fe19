/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;
import java.util.Optional;
import java.util.function.BinaryOperator;

/**
 * Something an expression can be worked out in: dimensions, exact numbers, intervals, numbers with their
 * derivatives. Each keeps the first problem it meets and goes on with a value that stands in.
 */
abstract class Algebra<T> {
    private Optional<ExpressionProblem> problem = Optional.empty();

    abstract T reading(Expression.Reading reading);

    abstract T constant(Expression.Constant constant);

    /** A plain number. */
    abstract T number(long value);

    abstract T sum(Expression place, T a, T b);

    abstract T difference(Expression place, T a, T b);

    abstract T product(Expression place, T a, T b);

    abstract T quotient(Expression place, T a, T b);

    abstract T negation(Expression place, T a);

    abstract T minimum(Expression place, T a, T b);

    abstract T maximum(Expression place, T a, T b);

    abstract T absolute(Expression place, T a);

    abstract T square(Expression place, T a);

    abstract T squareRoot(Expression place, T a);

    /** @param perDecade 20 for voltages and currents, 10 for powers */
    abstract T decibel(Expression place, T a, T b, int perDecade);

    T power(Expression place, T voltage, T current) {
        return product(place, voltage, current);
    }

    T call(Expression.Call call, List<T> a) {
        if (!call.function().takes(a.size())) {
            problem(call, call.function().words() + " takes " + call.function().arguments() + ", not " + a.size() + ".");
            return number(0);
        }
        return switch (call.function()) {
            case MIN -> reduce(a, (x, y) -> minimum(call, x, y));
            case MAX -> reduce(a, (x, y) -> maximum(call, x, y));
            case ABS -> absolute(call, a.get(0));
            case RATIO -> quotient(call, a.get(0), a.get(1));
            case DIFFERENCE -> difference(call, a.get(0), a.get(1));
            case PARALLEL -> quotient(call, number(1), sum(call, a.stream().map(x -> quotient(call, number(1), x)).toList()));
            case POWER -> power(call, a.get(0), a.get(1));
            case SUM_OF_SQUARES -> squares(call, a);
            case RMS -> squareRoot(call, quotient(call, squares(call, a), number(a.size())));
            case SQRT -> squareRoot(call, a.get(0));
            case DB -> decibel(call, a.get(0), a.get(1), 20);
            case DB_OF_POWERS -> decibel(call, a.get(0), a.get(1), 10);
        };
    }

    private T squares(Expression place, List<T> a) {
        return sum(place, a.stream().map(x -> square(place, x)).toList());
    }

    private T sum(Expression place, List<T> a) {
        return reduce(a, (x, y) -> sum(place, x, y));
    }

    private T reduce(List<T> a, BinaryOperator<T> operation) {
        return a.stream().reduce(operation).orElseGet(() -> number(0));
    }

    final void problem(Expression place, String sentence) {
        if (problem.isEmpty()) {
            problem = Optional.of(new ExpressionProblem(place, sentence));
        }
    }

    final Optional<ExpressionProblem> problem() {
        return problem;
    }

    final void unknownReading(Expression.Reading reading) {
        problem(reading, "There is no reading named " + reading.name() + " here; take it in an earlier step.");
    }

    final void divisionByZero(Expression place) {
        problem(place, "In " + place + " the divisor can be 0; use readings that keep away from 0.");
    }

    final void negativeRoot(Expression place) {
        problem(place, "In " + place + " the root can be of a negative value; use readings that are not negative.");
    }

    final void levelOfNothing(Expression place) {
        problem(place, "In " + place + " the ratio can be 0 or negative; a level needs values above 0.");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.ComputedFormula;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.DimensionCheck;

/**
 * A fault or an example that tells a calculated value which the readings told beside it do not give. A number stands for all values that are
 * rounded to it; a reading that is not told is one that keeps its limit, and a step that is told more than once in one place is left alone.
 */
public final class CalculatedOtherwise implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("calculated-otherwise", Severity.ERROR, Group.EXAMPLES,
            "A fault or an example tells a calculated value that its own readings do not give.");

    private static final MathContext THREE_DIGITS = new MathContext(3);

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.MEANING;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().ifPresent(procedure -> Stream.concat(procedure.faults().stream().map(fault -> fault.shows()),
                procedure.examples().stream().map(example -> example.shows())).forEach(shows -> check(procedure, shows, findings)));
    }

    private static void check(Procedure procedure, List<Showing> shows, Findings findings) {
        Told told = Told.of(shows);
        for (Showing showing : told.once().values()) {
            if (procedure.step(showing.step()).orElse(null) instanceof Step.Calculate step) {
                check(step, showing.possible().get(0), procedure, told, findings);
            }
        }
    }

    /**
     * What one fault or one example tells.
     *
     * @param steps every step it tells of
     * @param once  those it tells one thing of, in reading order
     */
    private record Told(Set<String> steps, Map<String, Showing> once) {
        static Told of(List<Showing> shows) {
            Map<String, Showing> once = new LinkedHashMap<>();
            Map<String, List<Showing>> byStep = shows.stream()
                    .collect(Collectors.groupingBy(showing -> showing.step().text(), LinkedHashMap::new, Collectors.toList()));
            byStep.forEach((step, told) -> {
                if (told.size() == 1 && told.get(0).possible().size() == 1) {
                    once.put(step, told.get(0));
                }
            });
            return new Told(byStep.keySet(), once);
        }
    }

    /** What a reading can have been: what is told, else what a sound unit shows; absent where it is told in words. */
    private static Optional<Interval> values(String name, Step.Measure reading, Told told) {
        if (!told.steps().contains(name)) {
            return reading.expects().map(expects -> expects.limit().value()).filter(limit -> limit.fits(Results.kind(reading)))
                    .map(limit -> limit.interval(Results.kind(reading)));
        }
        return Optional.ofNullable(told.once().get(name)).flatMap(showing -> showing.possible().get(0).reading())
                .filter(value -> Results.isReadThere(reading, value)).map(value -> rounded(value, Results.kind(reading)));
    }

    private static void check(Step.Calculate step, Showing.Possible said, Procedure procedure, Told told, Findings findings) {
        ComputedFormula computed = ComputedFormula.of(step, procedure);
        Map<String, Interval> readings = new TreeMap<>();
        computed.readings().forEach((name, reading) -> values(name, reading, told).ifPresent(values -> readings.put(name, values)));
        if (computed.formula().isEmpty() || readings.size() < computed.readings().size() || !isOneOf(computed, unit(step, said))) {
            return;
        }
        computed.formula().get().interval(readings).result().filter(value -> !value.isEmpty() && value.lower().isPresent()
                && value.upper().isPresent()).filter(value -> !agrees(step, said, value))
                .ifPresent(value -> findings.report(said.words().at(), "\"" + step.name() + "\" is said to be " + said.words() + ", and "
                        + readings.keySet().stream().filter(told.once()::containsKey)
                                .map(name -> "\"" + name + "\" " + told.once().get(name).possible().get(0).words())
                                .collect(Collectors.collectingAndThen(Collectors.joining(" and "), from -> from.isEmpty() ? "" : "from " + from + " "))
                        + "it is " + said(value, unit(step, said)) + ".", "Correct the value or the readings."));
    }

    /** Whether the formula gives a quantity of that unit; where it does not, another rule tells of it. */
    private static boolean isOneOf(ComputedFormula computed, Optional<Unit> unit) {
        Map<String, QuantityKind> kinds = new TreeMap<>();
        computed.readings().forEach((name, reading) -> kinds.put(name, Results.kind(reading)));
        DimensionCheck check = computed.formula().orElseThrow().dimensionOfKinds(kinds);
        return check.problem().isEmpty() && unit.isPresent() && check.dimension().filter(unit.get().dimension()::equals).isPresent();
    }

    private static boolean agrees(Step.Calculate step, Showing.Possible told, Interval value) {
        if (told.reading().isPresent()) {
            return !Results.isReadThere(step, told.reading().get())
                    || !value.intersection(rounded(told.reading().get(), Results.kind(step))).isEmpty();
        }
        Optional<Outcome> outcome = Results.byKey(step, told.words().text());
        Optional<Outcome> low = Results.reading(step, value.lower().get().value());
        Optional<Outcome> high = Results.reading(step, value.upper().get().value());
        boolean crossing = Results.ends(step).anyMatch(value::contains);
        return crossing || outcome.isEmpty() || outcome.get().key().equals(Step.DOUBTFUL) || low.isEmpty() || high.isEmpty()
                || low.equals(outcome) || high.equals(outcome);
    }

    /** Every value that is written so: half a unit of the last digit to both sides; zeros at the end of a whole number may be rounding too. */
    private static Interval rounded(Quantity told, QuantityKind kind) {
        Exact half = told.lastDigit().dividedBy(Exact.of(2));
        Exact value = told.base(kind);
        return Interval.from(Bound.including(value.minus(half)), Bound.including(value.plus(half)));
    }

    private static Optional<Unit> unit(Step step, Showing.Possible told) {
        return told.reading().map(Quantity::unit).or(() -> Results.units(step).findFirst());
    }

    private static String said(Interval value, Optional<Unit> unit) {
        Exact middle = value.lower().get().value().plus(value.upper().get().value()).dividedBy(Exact.of(2));
        return unit.map(known -> ValueText.of(known.toBase(Exact.of(known.fromBase(middle).toDecimal(THREE_DIGITS))), known)).orElse("another value");
    }
}

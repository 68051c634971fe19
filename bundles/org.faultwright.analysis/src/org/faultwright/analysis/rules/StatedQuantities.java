/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Formula;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.DimensionCheck;

/** Every quantity written in a document, with what is meant by it there. */
final class StatedQuantities {
    private final List<StatedQuantity> found = new ArrayList<>();

    private StatedQuantities(Subject subject) {
        subject.document().own().points().forEach(this::point);
        subject.document().own().parts().forEach(this::part);
        subject.document().own().conditions().forEach(condition -> condition.proved().flatMap(proof -> proof.limit())
                .ifPresent(limit -> addLimit(limit, WantedQuantity.of("what counts as no charge at " + condition.name(), QuantityKind.DC_VOLTAGE))));
        subject.document().own().ambient().ifPresent(limit -> addLimit(limit,
                WantedQuantity.of("the temperature at the bench", QuantityKind.TEMPERATURE)));
        subject.document().own().instruments().forEach(this::instrument);
        for (StepGraph graph : subject.graphs()) {
            FormulaTypes types = new FormulaTypes(graph);
            graph.steps().forEach(step -> step(step, types));
        }
        subject.procedure().ifPresent(this::examples);
    }

    static List<StatedQuantity> of(Subject subject) {
        return subject.shared(StatedQuantities.class, StatedQuantities::new).found;
    }

    private void point(Point point) {
        point.carries().ifPresent(carries -> add(carries.upTo(),
                WantedQuantity.of("the voltage at " + point.name(), carries.kind())));
        point.carries().flatMap(Point.Carried::frequency).ifPresent(stated -> List.of(stated.lowest(), stated.highest()).stream()
                .distinct().forEach(written -> add(written, WantedQuantity.of("the frequency at " + point.name(), QuantityKind.FREQUENCY))));
        point.sourceResistance().ifPresent(written -> add(written,
                WantedQuantity.of("the source resistance of " + point.name(), QuantityKind.RESISTANCE)));
        point.stores().ifPresent(written -> add(written,
                WantedQuantity.of("what " + point.name() + " stores", QuantityKind.CAPACITANCE)));
        point.drainedBy().ifPresent(written -> add(written,
                WantedQuantity.of("what drains " + point.name(), QuantityKind.RESISTANCE)));
    }

    private void part(Part part) {
        part.drains().ifPresent(written -> add(written, WantedQuantity.of("what drains through " + part.name(), QuantityKind.RESISTANCE)));
        part.rated().ifPresent(written -> add(written, WantedQuantity.of("the rated power of " + part.name(), QuantityKind.POWER)));
    }

    private void instrument(Instrument instrument) {
        String of = " of " + instrument.name();
        instrument.rated().ifPresent(written -> add(written, WantedQuantity.of("the rated voltage" + of, QuantityKind.DC_VOLTAGE)));
        instrument.validAt().ifPresent(written -> addLimit(written,
                WantedQuantity.of("the ambient temperature" + of, QuantityKind.TEMPERATURE)));
        instrument.calibrationEvery().ifPresent(written -> add(written,
                WantedQuantity.of("the calibration interval" + of, "d", Dimension.TIME)));
        instrument.ranges().forEach(written -> range(of, written));
    }

    private void range(String of, Written<MeterRange> written) {
        MeterRange range = written.value();
        WantedQuantity reading = WantedQuantity.of("the " + range.kind().words() + " range" + of, range.kind());
        Optional<Unit> unit = Optional.of(range.upTo().unit()).filter(Unit::isKnown);
        range.from().ifPresent(from -> add(from, written.at(), "from", reading, unit));
        add(range.upTo(), written.at(), "to", reading, range.from().map(Quantity::unit).filter(Unit::isKnown));
        add(range.resolution(), written.at(), "resolution", reading, unit);
        range.accuracy().amount().ifPresent(amount -> add(amount, written.at(), "accuracy", reading, unit));
        range.input().ifPresent(input -> add(input, written.at(), "input",
                WantedQuantity.of("the input resistance" + of, QuantityKind.RESISTANCE), Optional.empty()));
        range.inputCapacitance().ifPresent(input -> add(input, written.at(), "input",
                WantedQuantity.of("the input capacitance" + of, QuantityKind.CAPACITANCE), Optional.empty()));
        range.burden().ifPresent(burden -> add(burden, written.at(), "burden",
                WantedQuantity.of("the burden" + of, "ohm", Dimension.RESISTANCE, Dimension.VOLTAGE), Optional.empty()));
        WantedQuantity bandwidth = WantedQuantity.of("the bandwidth" + of, QuantityKind.FREQUENCY);
        range.lowestFrequency().ifPresent(low -> add(low, written.at(), "bandwidth", bandwidth, Optional.empty()));
        range.highestFrequency().ifPresent(high -> add(high, written.at(), "bandwidth", bandwidth, Optional.empty()));
    }

    private void step(Step step, FormulaTypes types) {
        step.frame().precautions().rated().forEach(tool -> add(tool.upTo(),
                WantedQuantity.of("the rating of a tool at " + step.name(), QuantityKind.DC_VOLTAGE)));
        step.frame().takes().ifPresent(time -> addTime(time, "the time of " + step.name()));
        step.frame().waits().ifPresent(time -> addTime(time, "the wait of " + step.name()));
        if (step instanceof Step.Do task) {
            task.adjusts().forEach(one -> one.kind().ifPresent(kind -> one.to().ifPresent(limit -> addLimit(limit,
                    WantedQuantity.of("the setting of \"" + one.of() + "\"", kind.value())))));
        } else if (step instanceof Step.Measure measure) {
            measure.kind().ifPresent(kind -> measure(measure, kind.value()));
        } else if (step instanceof Step.Calculate calculate) {
            calculate(calculate, types.of(calculate));
        }
    }

    private void measure(Step.Measure step, QuantityKind kind) {
        step.rows().forEach(row -> addLimit(row.limit(), WantedQuantity.of("the limit of " + step.name() + " at " + row.point(), kind)));
        limits(step, step.expects(), WantedQuantity.of("the limit of " + step.name(), kind));
        step.range().ifPresent(range -> add(range, WantedQuantity.of("the range of " + step.name(), kind)));
        step.uncertainties().forEach(share -> add(share.halfWidth(), WantedQuantity.of("the allowance of " + step.name(), kind)));
        step.unitDeviation().ifPresent(spread -> add(spread, WantedQuantity.of("the deviation of good units at " + step.name(), kind)));
    }

    private void calculate(Step.Calculate step, Optional<DimensionCheck> formula) {
        String what = "the limit of " + step.name();
        boolean level = formula.filter(check -> check.form() == DimensionCheck.Form.LEVEL).isPresent();
        limits(step, step.expects(), level ? WantedQuantity.level(what) : formula.flatMap(DimensionCheck::dimension)
                .map(dimension -> WantedQuantity.of(what, Results.kind(step) == QuantityKind.TEMPERATURE_DIFFERENCE && dimension.equals(Dimension.TEMPERATURE)
                        ? "K" : DimensionWords.usualUnit(dimension), dimension))
                .orElseGet(() -> WantedQuantity.anything(what)));
        for (FormulaWords.Leaf leaf : FormulaWords.leaves(step)) {
            if (leaf.of() instanceof Formula.Constant constant) {
                found.add(new StatedQuantity(constant.quantity(), () -> Optional.of(leaf.at()), leaf.at(),
                        WantedQuantity.anything("the formula of " + step.name()), Optional.empty()));
            }
        }
    }

    private void limits(Step step, Optional<Step.Expectation> expects, WantedQuantity wanted) {
        expects.ifPresent(expectation -> addLimit(expectation.limit(), wanted));
        for (Outcome outcome : step.outcomes()) {
            if (outcome.head() instanceof Outcome.Band band) {
                addLimit(band.limit(), wanted);
            }
        }
    }

    private void examples(Procedure procedure) {
        procedure.examples().forEach(example -> example.within()
                .ifPresent(time -> addTime(time, "the time of the example " + example.called())));
    }

    private void addTime(Written<Quantity> time, String what) {
        add(time, WantedQuantity.of(what, "min", Dimension.TIME));
    }

    private void add(Written<Quantity> written, WantedQuantity wanted) {
        found.add(new StatedQuantity(written.value(), () -> Optional.of(written.at()), written.at(), wanted, Optional.empty()));
    }

    /** Each end of a limit on its own. */
    private void addLimit(Written<Limit> limit, WantedQuantity wanted) {
        List<Quantity> ends = limit.value().quantities();
        for (int i = 0; i < ends.size(); i++) {
            Quantity end = ends.get(i);
            int index = i;
            Optional<Unit> other = ends.stream().filter(one -> one != end).map(Quantity::unit).filter(Unit::isKnown)
                    .findFirst();
            found.add(new StatedQuantity(end, () -> SourceLocator.of(limit, index), limit.at(), wanted, other));
        }
    }

    private void add(Quantity quantity, SourceRange whole, String keyword, WantedQuantity wanted, Optional<Unit> neighbour) {
        found.add(new StatedQuantity(quantity, () -> new SourceLocator(whole).after(keyword).next(quantity.spelling()), whole,
                wanted, neighbour));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.Placed;
import org.faultwright.publish.plan.PlainClauses;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Section;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.ReadingBox;

/** What one kind of step says and another does not: where to probe, what to expect, what to write down. */
final class StepDetail {
    private static final Pattern PARTS = Pattern.compile("_|[^_ ]+");

    private final Plan plan;
    private final Tag box;
    private Placed placed;

    StepDetail(Plan plan, Tag box) {
        this.plan = plan;
        this.box = box;
    }

    void add(Placed step) {
        placed = step;
        Wording.tries(step.step().frame(), plan.scope()).forEach(first -> StepPart.line(box, "Try first", first));
        if (step.step() instanceof Step.Observe observe) {
            observe(observe);
        } else if (step.step() instanceof Step.Measure measure) {
            measure(measure);
        } else if (step.step() instanceof Step.Do task) {
            adjustments(task);
        } else if (step.step() instanceof Step.Calculate calculate) {
            calculate(calculate);
        } else if (step.step() instanceof Step.Perform perform) {
            perform(perform);
        }
        PlainClauses.of(step.step(), plan.procedure()).forEach(clause -> StepPart.line(box, clause.key(), clause.words()));
        if (step.step() instanceof Step.Conclude conclude) {
            remedies(conclude);
            conclude.report().ifPresent(report -> StepPart.line(box, "Report", report.value()));
        }
    }

    private void observe(Step.Observe step) {
        step.indicator().ifPresent(name -> {
            Optional<Indicator> indicator = plan.scope().indicator(name);
            String title = indicator.map(Indicator::title).filter(words -> !words.isBlank()).orElse(name.text());
            StepPart.line(box, "At", title + indicator.flatMap(Indicator::source)
                    .map(source -> " (codes from " + Wording.source(source) + ")").orElse(""));
        });
    }

    private void measure(Step.Measure step) {
        step.point().ifPresent(point -> StepPart.line(box, step.through() ? "Through" : "Where", Wording.point(point, plan.scope())
                + step.against().map(against -> ", against " + Wording.point(against, plan.scope())).orElse("")));
        step.point().flatMap(plan.scope()::point).flatMap(Point::storedEnergy)
                .ifPresent(stored -> StepPart.line(box, "Stores", stored.inWords()));
        Optional<Instrument> instrument = step.instrument().flatMap(plan.scope()::instrument);
        Optional<MeterRange> range = LimitStudy.of(plan.procedure(), step).map(LimitStudy::range);
        List<String> with = new ArrayList<>();
        step.instrument().ifPresent(name -> with.add(instrument.map(Instrument::title)
                .filter(title -> !title.isBlank()).orElse(name.text())));
        step.kind().ifPresent(kind -> with.add(kind.value().words()));
        step.sensor().ifPresent(sensor -> with.add("type " + sensor.value()));
        step.range().map(named -> Wording.printed(named.value())).or(() -> range.map(one -> Wording.printed(one.upTo())))
                .ifPresent(upTo -> with.add("range " + upTo));
        StepPart.line(box, "Instrument", String.join(", ", with));
        expects(step.expects(), Results.kind(step));
        zones(step);
        if (step.rows().isEmpty()) {
            reading(range.flatMap(ReadingBox::pattern), step.kind().map(kind -> kind.value()), step.expects());
        } else {
            step.against().ifPresent(against -> StepPart.line(box, "Against", Wording.point(against, plan.scope())));
            table(step);
        }
    }

    /** Several readings: where, the limit, and a box to write in. */
    private void table(Step.Measure step) {
        Tag table = box.add("table", "readings");
        Tag head = table.add("thead").add("tr");
        List.of("Where", "Limit", "Reading").forEach(column -> head.add("th").set("scope", "col").text(column));
        Tag rows = table.add("tbody");
        step.readings().forEach(one -> {
            Tag row = rows.add("tr");
            one.point().ifPresent(at -> row.add("th").set("scope", "row").text(Wording.point(at, plan.scope())));
            one.expects().ifPresent(expects -> row.add("td").text(Wording.printed(expects.limit().value())));
            Tag box = row.add("td", "reading");
            Optional<String> pattern = LimitStudy.of(plan.procedure(), one).map(LimitStudy::range).flatMap(ReadingBox::pattern);
            digits(box, pattern, one.kind().map(kind -> kind.value()), one.expects());
        });
    }

    /** Where a way for doubtful readings is written, the results themselves tell the zones. */
    private void zones(Step step) {
        if (step.outcomes().stream().noneMatch(outcome -> outcome.key().equals(Step.DOUBTFUL))) {
            LimitZones.of(plan.procedure(), step).ifPresent(zones -> StepPart.line(box, "Zones", zones.summary()));
        }
    }

    private void expects(Optional<Step.Expectation> expectation, QuantityKind kind) {
        expectation.ifPresent(expects -> {
            Limit limit = expects.limit().value();
            Tag line = box.add("p", "line limit").say("b", "key", "Limit").space().say("b", "", Wording.printed(limit));
            if (Wording.hasEndsToWorkOut(limit)) {
                line.space().text("that is " + IntervalText.of(limit.interval(kind), limit.quantities().get(0).unit()));
            }
        });
    }

    /** A blank for every digit where the display is known, else an empty box with the unit. */
    private void reading(Optional<String> pattern, Optional<QuantityKind> kind, Optional<Step.Expectation> expects) {
        digits(box.add("p", "line reading").say("b", "key", "Reading").space(), pattern, kind, expects);
    }

    private static void digits(Tag line, Optional<String> pattern, Optional<QuantityKind> kind, Optional<Step.Expectation> expects) {
        if (pattern.isEmpty()) {
            line.say("span", "blank", "").space().text(expects.flatMap(one -> one.limit().value().quantities().stream()
                    .findFirst()).map(Quantity::unit).map(unit -> unit.symbol())
                    .or(() -> kind.map(QuantityKind::usualUnit)).orElse(""));
            return;
        }
        // Digits stand as _, with gaps between; what stands together otherwise is a point, a sign or the unit.
        Matcher parts = PARTS.matcher(pattern.get());
        while (parts.find()) {
            boolean digit = parts.group().equals("_");
            line.say("span", digit ? "digit" : "mark", digit ? "" : parts.group());
        }
    }

    private void adjustments(Step.Do step) {
        step.adjusts().forEach(one -> one.to().ifPresent(to -> StepPart.line(box, "Set to", Wording.printed(to.value())
                + one.kind().map(kind -> ", " + kind.value().words()).orElse("") + (one.of().isBlank() ? "" : " of " + one.of()))));
    }

    private void calculate(Step.Calculate step) {
        step.formula().ifPresent(formula -> StepPart.line(box, "Formula", Formula.of(formula.value(), plan)));
        expects(step.expects(), Results.kind(step));
        ComputedStudy.of(plan.procedure(), step).flatMap(ComputedStudy::expected).map(limit -> limit.budget())
                .ifPresent(budget -> budget.expanded().filter(expanded -> expanded.signum() > 0).ifPresent(expanded ->
                        StepPart.line(box, "Uncertainty", "±" + ValueText.significant(expanded, budget.unit(), 2, RoundingMode.UP)
                                + " with these instruments (U, k = 2)")));
        zones(step);
        reading(Optional.empty(), Optional.empty(), step.expects());
    }

    private void perform(Step.Perform step) {
        if (!plan.inside(placed).isEmpty()) {
            return;
        }
        step.routine().ifPresent(name -> {
            Tag line = box.add("p", "line go").say("b", "key", "Follow").space();
            Optional<Section> routine = plan.routine(name);
            if (routine.isPresent()) {
                line.link(Plan.anchor(routine.get()), "", "To routine " + routine.get().letter())
                        .text("routine " + routine.get().letter());
                line.text(", " + routine.get().graph().title()).text("; then come back here.");
            } else {
                line.text(name.text());
            }
        });
    }

    private void remedies(Step.Conclude step) {
        List<Step> acts = step.finds().stream().flatMap(name -> plan.procedure().fault(name).stream())
                .flatMap(fault -> fault.remedies().stream()).flatMap(name -> plan.procedure().step(name).stream())
                .distinct().toList();
        if (!acts.isEmpty()) {
            Tag line = box.add("p", "line").say("b", "key", "Remedy").space().text(acts.size() == 1 ? "done at step" : "done at steps").space();
            NotesPart.steps(line, plan, acts);
        }
    }
}

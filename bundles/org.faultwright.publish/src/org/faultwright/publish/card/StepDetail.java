/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.PlainClauses;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;
import org.faultwright.quantity.measure.ReadingBox;

/** What one kind of step says and another does not: where to probe, what to expect, what to write down. */
final class StepDetail {
    private static final Pattern PARTS = Pattern.compile("_|[^_ ]+");

    private final CardPlan plan;
    private final CardSources sources;
    private final Map<String, String> instruments;
    private int visits = 1;

    /** @param instruments what each is called at a step, by its name */
    StepDetail(CardPlan plan, CardSources sources, Map<String, String> instruments) {
        this.plan = plan;
        this.sources = sources;
        this.instruments = instruments;
    }

    /** @param times how often a reading has room to be written */
    void visited(int times) {
        this.visits = times;
    }

    void add(Tag box, PlacedStep placed) {
        Step step = placed.step();
        if (step instanceof Step.Measure) {
            step.frame().hint().ifPresent(hint -> box.say("p", "line", hint.value()));
        }
        step.frame().precautions().tries().forEach(name -> StepPart.line(box, "Try first").say("b", "", Wording.tried(called(name))));
        if (step instanceof Step.Observe observe) {
            observe(box, observe);
        } else if (step instanceof Step.Measure measure) {
            measure(box, measure);
        } else if (step instanceof Step.Do task) {
            task.adjusts().forEach(one -> one.to().ifPresent(to -> StepPart.line(box, "Set").text(one.kind().map(kind -> kind.value().words()
                    + (one.of().isBlank() ? "" : " of ")).orElse("") + one.of()).space().say("b", "", Wording.printed(to.value()))));
        } else if (step instanceof Step.Calculate calculate) {
            calculate(box, calculate);
        } else if (step instanceof Step.Perform perform) {
            perform(box, perform, placed);
        }
        PlainClauses.of(step, plan.procedure()).forEach(clause -> StepPart.line(box, clause.key()).say("b", "", clause.words()));
        if (step instanceof Step.Conclude conclude) {
            conclude.report().ifPresent(report -> StepPart.line(box, "Report", "\u201C" + report.value() + "\u201D"));
        }
    }

    private String called(Name instrument) {
        return instruments.getOrDefault(instrument.text(), instrument.text());
    }

    private void observe(Tag box, Step.Observe step) {
        step.indicator().flatMap(plan.scope()::indicator).ifPresent((Indicator indicator) -> {
            Tag line = StepPart.line(box, "At").say("b", "", indicator.title().isBlank() ? indicator.name().text() : indicator.title());
            indicator.source().ifPresent(source -> sources.cite(line, source));
        });
    }

    private void measure(Tag box, Step.Measure step) {
        step.point().ifPresent(point -> {
            Tag line = StepPart.line(box, step.through() ? "Through" : "At").say("b", "", Wording.point(point, step, plan.scope()));
            step.against().ifPresent(against -> line.space().text("against").space().say("b", "", Wording.point(against, step, plan.scope())));
        });
        step.point().flatMap(plan.scope()::point).flatMap(Point::storedEnergy)
                .ifPresent(stored -> StepPart.line(box, "Stores").say("b", "", stored.inWords()));
        Optional<MeterRange> range = LimitStudy.of(plan.procedure(), step).map(LimitStudy::range);
        List<String> with = new ArrayList<>();
        step.kind().ifPresent(kind -> with.add(kind.value().words()));
        step.sensor().ifPresent(sensor -> with.add("type " + sensor.value()));
        step.instrument().ifPresent(name -> with.add(called(name)));
        Optional<String> upTo = step.range().map(named -> Wording.printed(named.value())).or(() -> range.map(one -> Wording.printed(one.upTo())));
        if (!with.isEmpty() || upTo.isPresent()) {
            Tag line = StepPart.line(box, "Measure", String.join(", ", with) + (with.isEmpty() || upTo.isEmpty() ? "" : ","));
            upTo.ifPresent(most -> line.space().say("span", "whole", "range " + most));
        }
        if (step.rows().isEmpty()) {
            reading(limit(box, step.expects(), Results.kind(step), range), range.flatMap(ReadingBox::pattern), step.kind().map(Written::value), step.expects());
            zones(box, step);
        } else {
            step.against().ifPresent(against -> StepPart.line(box, "Against").say("b", "", Wording.point(against, step, plan.scope())));
            table(box, step);
        }
    }

    /** Several readings: where, the limit, and a box to write in. */
    private void table(Tag box, Step.Measure step) {
        Tag table = box.add("table", "readings");
        Tag head = table.add("thead").add("tr");
        List.of("At", "Limit", "Reading").forEach(column -> head.add("th").set("scope", "col").text(column));
        Tag rows = table.add("tbody");
        step.readings().forEach(one -> {
            Tag row = rows.add("tr");
            one.point().ifPresent(at -> row.add("th").set("scope", "row").text(Wording.point(at, step, plan.scope())));
            one.expects().ifPresent(expects -> row.add("td").text(Wording.printed(expects.limit().value())));
            digits(row.add("td"), LimitStudy.of(plan.procedure(), one).map(LimitStudy::range).flatMap(ReadingBox::pattern),
                    one.kind().map(Written::value), one.expects());
        });
    }

    /** Where a way for doubtful readings is written, the results themselves tell the zones. */
    private void zones(Tag box, Step step) {
        if (step.outcomes().stream().noneMatch(outcome -> outcome.key().equals(Step.DOUBTFUL))) {
            LimitZones.of(plan.procedure(), step).ifPresent(zones -> box.say("p", "line zones", zones.summary()));
        }
    }

    /** The limit in its spelling, and its ends in the unit of the boxes where they have to be worked out. */
    private Tag limit(Tag box, Optional<Step.Expectation> expectation, QuantityKind kind, Optional<MeterRange> range) {
        Tag line = box.add("p", "line limit");
        expectation.ifPresent(expects -> {
            Limit limit = expects.limit().value();
            line.say("b", "", Wording.printed(limit));
            if (Wording.hasEndsToWorkOut(limit)) {
                Unit own = limit.quantities().get(0).unit();
                Unit unit = range.filter(shown -> ReadingBox.pattern(shown).isPresent()).map(shown -> shown.upTo().unit())
                        .filter(shown -> shown.dimension().equals(own.dimension()) && !shown.isLogarithmic()).orElse(own);
                line.space().text("= " + IntervalText.of(limit.interval(kind), unit).replace(" " + unit.symbol() + " to ", " to "));
            }
            expects.source().ifPresent(source -> sources.cite(line, source));
        });
        return line;
    }

    private void reading(Tag line, Optional<String> pattern, Optional<QuantityKind> kind, Optional<Step.Expectation> expects) {
        for (int visit = 0; visit < visits; visit++) {
            line.space().say("span", "key", visits == 1 ? "Reading" : Wording.VISITS.get(visit)).space();
            digits(line, pattern, kind, expects);
        }
    }

    /** A blank for every digit where the display is known, else an empty box with the unit; never broken over two lines. */
    private static void digits(Tag into, Optional<String> pattern, Optional<QuantityKind> kind, Optional<Step.Expectation> expects) {
        Tag line = into.add("span", "boxes");
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

    private void calculate(Tag box, Step.Calculate step) {
        step.formula().ifPresent(formula -> StepPart.line(box, "Value").say("b", "", PrintedFormula.of(formula.value(), plan)));
        ComputedStudy.of(plan.procedure(), step).flatMap(ComputedStudy::expected).map(limit -> limit.budget())
                .ifPresent(budget -> budget.expanded().filter(expanded -> expanded.signum() > 0).ifPresent(expanded ->
                        StepPart.line(box, "Uncertainty", "\u00B1" + ValueText.significant(expanded, budget.unit(), 2, RoundingMode.UP) + " (U, k = 2)")));
        Tag line = limit(box, step.expects(), Results.kind(step), Optional.empty());
        reading(line, Optional.empty(), Optional.empty(), step.expects());
        zones(box, step);
    }

    private void perform(Tag box, Step.Perform step, PlacedStep placed) {
        if (!plan.inside(placed).isEmpty()) {
            return;
        }
        step.routine().ifPresent(name -> {
            Tag line = box.add("p", "line go");
            Optional<CardSection> routine = plan.routine(name);
            if (routine.isPresent()) {
                line.text("Go and come back:").space();
                line.link(CardPlan.anchor(routine.get()), "way", "To routine " + routine.get().letter()).text(Wording.ARROW + " Routine " + routine.get().letter());
            } else {
                line.text(name.text());
            }
        });
    }
}

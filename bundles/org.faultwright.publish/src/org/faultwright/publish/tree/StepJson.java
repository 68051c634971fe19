/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.time.TimeToGo;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.quantity.QuantityKind;

/** One step with its results. */
final class StepJson implements Step.Cases<Json> {
    private final CardPlan plan;
    private final StepGraph graph;
    private final TimeToGo toGo;

    StepJson(CardPlan plan, StepGraph graph) {
        this.plan = plan;
        this.graph = graph;
        this.toGo = TimeToGo.of(graph, plan.scope());
    }

    Json of(Step step) {
        Json json = UncertaintyJson.put(step.match(this), plan.procedure(), step);
        frame(json, step.frame());
        json.put("entry", ReadingEntry.of(plan.procedure(), step).map(EntryJson::of));
        json.put("toGo", toGo.from(step).map(range -> {
            Json time = new Json().put("least", range.least().toString());
            range.most().ifPresent(most -> time.put("most", most.toString()));
            return time;
        }));
        return json.putAll("outcomes", step.outcomes(), outcome -> outcome(step, outcome));
    }

    private Json start(Step step, String kind) {
        return new Json().put("id", step.name().text()).put("number", plan.placed(graph, step).map(PlacedStep::label).orElseGet(() -> plan.label(step))).put("kind", kind)
                .put("title", step.title());
    }

    @Override
    public Json check(Step.Check step) {
        return start(step, "check");
    }

    @Override
    public Json observe(Step.Observe step) {
        return start(step, "observe").putText("indicator", step.indicator().map(Name::text));
    }

    @Override
    public Json measure(Step.Measure step) {
        Optional<QuantityKind> kind = step.kind().map(Written::value);
        return start(step, "measure").putText("quantity", kind.map(QuantityKind::words))
                .putText(step.through() ? "through" : "point", step.point().map(Name::text)).putText("against", step.against().map(Name::text))
                .putText("instrument", step.instrument().map(Name::text))
                .put("range", step.range().map(range -> QuantityJson.of(range.value())))
                .putText("sensor", step.sensor().map(Written::value))
                .put("expects", step.expects().map(expects -> expectation(expects, kind)))
                .putAll("readings", step.rows().isEmpty() ? List.of() : step.readings(), row -> row(row, kind))
                .putAll("uncertainty", step.uncertainties(), share -> new Json()
                        .put("halfWidth", QuantityJson.of(share.halfWidth().value())).put("of", share.of()))
                .put("unitDeviation", step.unitDeviation().map(spread -> QuantityJson.of(spread.value())));
    }

    private Json row(Step.Measure row, Optional<QuantityKind> kind) {
        return new Json().putText("point", row.point().map(Name::text))
                .put("limit", row.expects().map(expects -> QuantityJson.of(expects.limit().value(), kind)))
                .put("entry", ReadingEntry.ofRow(plan.procedure(), row).map(EntryJson::of));
    }

    private static Json expectation(Step.Expectation expects, Optional<QuantityKind> kind) {
        return new Json().put("limit", QuantityJson.of(expects.limit().value(), kind))
                .put("source", expects.source().map(StepJson::source));
    }

    @Override
    public Json carryOut(Step.Do step) {
        Json json = start(step, "do").putText("erases", step.erases().map(Written::value))
                .putAll("adjusts", step.adjusts(), StepJson::adjustment);
        return step.repairs().isPresent() ? json.put("repairs", true) : json;
    }

    private static Json adjustment(Step.Adjustment adjustment) {
        Optional<QuantityKind> kind = adjustment.kind().map(Written::value);
        return new Json().putText("quantity", kind.map(QuantityKind::words)).put("of", adjustment.of())
                .put("to", adjustment.to().map(limit -> QuantityJson.of(limit.value(), kind)));
    }

    @Override
    public Json calculate(Step.Calculate step) {
        return start(step, "calculate").put("value", step.formula().map(formula -> FormulaJson.of(formula.value())))
                .put("expects", step.expects().map(expects -> expectation(expects, Optional.empty())));
    }

    @Override
    public Json perform(Step.Perform step) {
        List<PlacedStep> inside = plan.placed(graph, step).map(plan::inside).orElse(List.of());
        return start(step, "perform").putText("routine", step.routine().map(Name::text))
                .putAll("inPlace", inside, place -> new Json().putTexts("path", place.path()).put("number", place.label()));
    }

    @Override
    public Json conclude(Step.Conclude step) {
        Json json = start(step, "conclude").putNames("finds", step.finds());
        if (step.findsNothing().isPresent()) {
            json.put("findsNothing", true);
        }
        return json.putText("refersTo", step.refersTo().map(Written::value))
                .putText("report", step.report().map(Written::value));
    }

    private void frame(Json json, StepFrame frame) {
        json.putAll("needs", frame.needs(), StepJson::setting).putAll("sets", frame.sets(), StepJson::setting)
                .putNames("notes", frame.notes()).putNames("handles", frame.handles())
                .put("takes", frame.takes().map(time -> QuantityJson.of(time.value())))
                .put("waits", frame.waits().map(time -> QuantityJson.of(time.value())))
                .putTexts("tools", frame.tools().stream().map(Written::value).toList())
                .putTexts("hazards", frame.hazards().stream().map(hazard -> hazard.value().word()).toList());
        if (frame.confirms().isPresent()) {
            json.put("confirmsComplaint", true);
        }
        if (frame.verifies().isPresent()) {
            json.put("verifiesRepair", true);
        }
        json.putText("liveBecause", frame.precautions().liveBecause().map(Written::value))
                .putNames("tries", frame.precautions().tries())
                .putTexts("tests", frame.precautions().tests().stream().map(test -> test.value().word()).toList())
                .putAll("ratedTools", frame.precautions().rated(), rated -> new Json()
                        .put("tool", rated.tool().value()).put("upTo", QuantityJson.of(rated.upTo().value())));
        json.putAll("pictures", frame.pictures(), DeclarationJson::picture);
        json.put("source", frame.source().map(StepJson::source)).putText("hint", frame.hint().map(Written::value));
    }

    private Json outcome(Step step, Outcome outcome) {
        Json json = new Json().put("key", outcome.key());
        if (outcome.head() instanceof Outcome.Band band) {
            Optional<QuantityKind> kind = step instanceof Step.Measure measure
                    ? measure.kind().map(Written::value) : Optional.empty();
            json.put("kind", "band").putText("label", band.label().map(Name::text))
                    .put("limit", QuantityJson.of(band.limit().value(), kind));
        } else if (outcome.head() instanceof Outcome.Code) {
            json.put("kind", "code").putText("meaning", meaning(step, outcome.key()));
        } else {
            json.put("kind", outcome.head() instanceof Outcome.AnythingElse ? "anythingElse" : "word");
        }
        json.put("to", outcome.target().filter(name -> !name.text().isBlank()).map(this::target));
        json.put("repeat", outcome.repeat().map(repeat -> new Json().put("atMost", repeat.atMost())
                .put("then", target(repeat.otherwise()))));
        return json.putAll("proves", outcome.proves(), StepJson::setting);
    }

    private Optional<String> meaning(Step step, String pattern) {
        return step instanceof Step.Observe observe ? observe.indicator().flatMap(plan.scope()::indicator).stream()
                .map(Indicator::codes).flatMap(List::stream).filter(code -> code.pattern().text().equals(pattern))
                .map(Indicator.Code::meaning).findFirst() : Optional.empty();
    }

    private Json target(Name name) {
        return new Json().put(graph.isExit(name) ? "exit" : "step", name.text());
    }

    static Json setting(Setting setting) {
        return new Json().put("condition", setting.condition().text()).put("value", setting.value().text());
    }

    static Json source(Source source) {
        return new Json().put("document", source.document()).putText("dated", source.dated().map(Object::toString));
    }
}

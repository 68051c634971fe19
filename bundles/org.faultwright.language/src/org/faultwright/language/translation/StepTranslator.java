/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.*;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.text.AdjustText;
import org.faultwright.language.text.CalculateText;
import org.faultwright.language.text.CheckText;
import org.faultwright.language.text.ConcludeText;
import org.faultwright.language.text.DoText;
import org.faultwright.language.text.LimitText;
import org.faultwright.language.text.MeasureText;
import org.faultwright.language.text.ObserveText;
import org.faultwright.language.text.PerformText;
import org.faultwright.language.text.StepText;
import org.faultwright.language.text.UncertaintyText;
import org.faultwright.language.text.util.TextSwitch;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Units;

/** The seven kinds of step. */
final class StepTranslator extends TextSwitch<Step> {
    private final Translators parts;
    private final ModelSource passage;
    private final FormulaTranslator expressions;

    StepTranslator(Translators parts, FormulaTranslator expressions) {
        this.parts = parts;
        this.passage = parts.passage;
        this.expressions = expressions;
    }

    List<Step> all(List<StepText> written) {
        return written.stream().map(step -> parts.kept.of(step, () -> doSwitch(step))).toList();
    }

    private Name name(StepText written) {
        return passage.nameOrNone(written, NAMED_TEXT__NAME);
    }

    private String title(StepText written) {
        return passage.textOrNone(written, STEP_TEXT__TITLE);
    }

    private StepFrame frame(StepText written) {
        parts.unread.withinBraces(written, STEP_TEXT__UNREAD);
        return parts.frames.frame(written.getFrame());
    }

    private List<Outcome> outcomes(StepText written) {
        return parts.outcomes.all(written.getOutcomes(), false);
    }

    private SourceRange at(StepText written) {
        return passage.range(written);
    }

    @Override
    public Step caseCheckText(CheckText written) {
        return new Step.Check(name(written), title(written), frame(written), outcomes(written), at(written));
    }

    @Override
    public Step caseObserveText(ObserveText written) {
        Optional<Name> indicator = passage.name(written, OBSERVE_TEXT__INDICATOR);
        return new Step.Observe(name(written), title(written), indicator, frame(written),
                parts.outcomes.all(written.getOutcomes(), indicator.isPresent()), at(written));
    }

    @Override
    public Step caseMeasureText(MeasureText written) {
        StepFrame frame = frame(written);
        Optional<Written<QuantityKind>> kind = parts.vocabulary.kind(written, MEASURE_TEXT__KIND);
        Optional<Name> point = passage.name(written, MEASURE_TEXT__POINT);
        Optional<Step.Expectation> expects = expectation(written.getExpects(), frame);
        List<Step.Row> rows = rows(written, point, expects);
        return new Step.Measure(name(written), title(written), kind,
                rows.isEmpty() ? point : Optional.empty(), written.isThrough(), passage.name(written, MEASURE_TEXT__AGAINST),
                passage.name(written, MEASURE_TEXT__INSTRUMENT), parts.quantities.quantity(written.getRange()),
                passage.node(written, MEASURE_TEXT__SENSOR)
                        .map(node -> new Written<>(SensorName.of(passage.words(node)), passage.range(node))),
                rows.isEmpty() ? expects : Optional.empty(), contributions(written, kind),
                parts.quantities.single(written.getUnitDeviation(), "The deviation of good units"), rows, frame, outcomes(written),
                at(written));
    }

    /** A point and a limit in the lines before the table are its first row. */
    private List<Step.Row> rows(MeasureText written, Optional<Name> point, Optional<Step.Expectation> expects) {
        List<Step.Row> rows = new ArrayList<>();
        if (written.getRows().isEmpty()) {
            return rows;
        }
        if (point.isPresent() && expects.isPresent()) {
            rows.add(new Step.Row(point.get(), expects.get().limit(), point.get().at()));
        } else {
            point.ifPresent(alone -> passage.problem(alone.at(), "In a table of readings each point has its limit; write at "
                    + alone + " expects and the limit."));
            expects.ifPresent(alone -> passage.problem(alone.limit().at(),
                    "In a table of readings each limit has its point; write at, the point, expects and the limit."));
        }
        written.getRows().forEach(row -> Optional.ofNullable(row.getLimit()).flatMap(parts.limits::limit).ifPresent(limit ->
                rows.add(new Step.Row(passage.nameOrNone(row, ROW_TEXT__POINT), limit, passage.range(row)))));
        return List.copyOf(rows);
    }

    private Optional<Step.Expectation> expectation(List<LimitText> written, StepFrame frame) {
        return parts.limits.single(written, "What this step expects")
                .map(limit -> new Step.Expectation(limit, frame.source()));
    }

    private List<Step.Contribution> contributions(MeasureText written, Optional<Written<QuantityKind>> kind) {
        boolean sound = kind.filter(measured -> measured.value() == QuantityKind.SOUND_LEVEL).isPresent();
        return written.getUncertainties().stream().flatMap(allowing -> contribution(allowing).stream()).map(one -> sound
                ? new Step.Contribution(new Written<>(one.halfWidth().value().asDifferenceOf(Units.named("dB(A)")), one.halfWidth().at()), one.of()) : one).toList();
    }

    private Optional<Step.Contribution> contribution(UncertaintyText written) {
        return parts.quantities.quantity(written.getHalfWidth()).map(halfWidth -> new Step.Contribution(halfWidth,
                passage.textOrNone(written, UNCERTAINTY_TEXT__OF)));
    }

    @Override
    public Step caseDoText(DoText written) {
        return new Step.Do(name(written), title(written),
                passage.single(written, DO_TEXT__ERASES, "What this step erases").map(passage::text),
                passage.single(written, DO_TEXT__REPAIRS, "That this step repairs").map(passage::range),
                written.getAdjusts().stream().map(this::adjustment).toList(), frame(written),
                outcomes(written), at(written));
    }

    private Step.Adjustment adjustment(AdjustText written) {
        return new Step.Adjustment(parts.vocabulary.kind(written, ADJUST_TEXT__KIND), passage.textOrNone(written, ADJUST_TEXT__OF),
                Optional.ofNullable(written.getLimit()).flatMap(parts.limits::limit), passage.range(written));
    }

    @Override
    public Step caseCalculateText(CalculateText written) {
        StepFrame frame = frame(written);
        return new Step.Calculate(name(written), title(written),
                passage.single(written.getFormula(), "What this step computes").flatMap(expressions::expression),
                expectation(written.getExpects(), frame), frame, outcomes(written), at(written));
    }

    @Override
    public Step casePerformText(PerformText written) {
        Name name = name(written);
        Optional<Name> routine = passage.name(written, PERFORM_TEXT__ROUTINE).or(() -> Optional.of(name).filter(one -> !one.text().isEmpty())
                .map(one -> new Name(one.text(), behindHead(written, one))));
        return new Step.Perform(name, title(written), routine, frame(written), outcomes(written), at(written));
    }

    /** Where the name of the routine would stand. */
    private SourceRange behindHead(PerformText written, Name name) {
        SourceRange last = passage.node(written, STEP_TEXT__TITLE).map(passage::range).orElse(name.at());
        return new SourceRange(last.source(), last.end(), 0);
    }

    @Override
    public Step caseConcludeText(ConcludeText written) {
        return new Step.Conclude(name(written), title(written), passage.names(written, CONCLUDE_TEXT__FINDS),
                passage.single(written, CONCLUDE_TEXT__FINDS_NOTHING, "That nothing is found").map(passage::range),
                text(written, passage.single(written, CONCLUDE_TEXT__REFERS_TO, "Whom the unit is referred to")),
                text(written, passage.single(written, CONCLUDE_TEXT__REPORT, "The report")), frame(written), at(written));
    }

    private Optional<Written<String>> text(StepText written, Optional<INode> node) {
        return node.map(passage::text);
    }
}

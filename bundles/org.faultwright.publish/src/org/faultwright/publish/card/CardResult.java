/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/**
 * How one result is told on a card.
 *
 * @param word   what is ticked
 * @param detail what it means, or the readings that it takes in; may be empty
 */
record CardResult(String word, String detail) {

    /** What stands beside a limit that a charge of either sign must keep. */
    private static final String EITHER_SIGN = "without its sign";

    static CardResult of(Step step, Outcome outcome, Scope scope, Optional<LimitZones> zones) {
        CardResult result = told(step, outcome, scope, zones);
        return Wording.holdsForEitherSign(step, outcome) ? new CardResult(result.word(), result.detail().isEmpty() ? EITHER_SIGN
                : result.detail() + ", " + EITHER_SIGN) : result;
    }

    /** Without the readings, for where the limit or its scale tells them already. */
    static CardResult brief(Step step, Outcome outcome, Scope scope, Optional<LimitZones> zones) {
        return new CardResult(told(step, outcome, scope, zones).word(), Wording.holdsForEitherSign(step, outcome) ? EITHER_SIGN : "");
    }

    private static CardResult told(Step step, Outcome outcome, Scope scope, Optional<LimitZones> zones) {
        if (outcome.head() instanceof Outcome.Band band) {
            String limit = Wording.printed(band.limit().value());
            return band.label().map(label -> new CardResult(PlainText.phrase(label.text()), limit))
                    .orElse(new CardResult(limit, ""));
        }
        if (outcome.head() instanceof Outcome.Code code) {
            return new CardResult(code.key(), meaning(step, code.key(), scope));
        }
        if (outcome.head() instanceof Outcome.AnythingElse) {
            return new CardResult(PlainText.phrase(outcome.key()), Wording.leftOver(step, scope));
        }
        if (step instanceof Step.Measure && outcome.key().equals(Step.DONE)) {
            return new CardResult("Written down", "");
        }
        Optional<CardResult> row = row(step, outcome, scope);
        if (row.isPresent()) {
            return row.get();
        }
        boolean toldApart = step.outcomes().stream().anyMatch(other -> other.key().equals(Step.DOUBTFUL));
        String byZone = zones.filter(known -> toldApart).map(known -> known.readings(outcome.key())).orElse("");
        return new CardResult(PlainText.phrase(outcome.key()), byZone.isEmpty() ? readings(step, outcome.key()) : byZone);
    }

    /** Of a table the result of one reading, by the title of its point. */
    private static Optional<CardResult> row(Step step, Outcome outcome, Scope scope) {
        return step instanceof Step.Measure measure ? measure.rows().stream().filter(row -> row.outside().equals(outcome.key()))
                .findFirst().map(row -> new CardResult(Step.OUTSIDE, scope.point(row.point()).map(point -> point.title())
                        .filter(title -> !title.isBlank()).orElse(row.point().text()))) : Optional.empty();
    }

    private static String meaning(Step step, String pattern, Scope scope) {
        return step instanceof Step.Observe observe ? observe.indicator().flatMap(scope::indicator).stream()
                .map(Indicator::codes).flatMap(List::stream).filter(code -> code.pattern().text().equals(pattern))
                .map(Indicator.Code::meaning).findFirst().orElse("") : "";
    }

    private static String readings(Step step, String key) {
        Optional<Limit> limit = expected(step);
        if (limit.isEmpty() || limit.get().quantities().isEmpty() || !limit.get().quantities().stream()
                .allMatch(quantity -> quantity.unit().isKnown() && !quantity.unit().isLogarithmic())) {
            return "";
        }
        Quantity first = limit.get().quantities().get(0);
        QuantityKind kind = step instanceof Step.Measure measure
                ? measure.kind().map(Written::value).orElse(QuantityKind.RATIO) : QuantityKind.RATIO;
        return zones(limit.get().interval(kind), key).map(zone -> IntervalText.of(zone, first.unit()))
                .collect(Collectors.joining(" or "));
    }

    private static Stream<Interval> zones(Interval limit, String key) {
        Stream<Interval> below = limit.lower().map(end -> Interval.below(end.opposite())).stream();
        Stream<Interval> above = limit.upper().map(end -> Interval.above(end.opposite())).stream();
        return switch (key) {
            case Step.BELOW -> below;
            case Step.WITHIN -> Stream.of(limit);
            case Step.ABOVE -> above;
            case Step.OUTSIDE -> Stream.concat(below, above);
            default -> Stream.empty();
        };
    }

    static Optional<Limit> expected(Step step) {
        Optional<Step.Expectation> expects = step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
        return expects.map(expectation -> expectation.limit().value());
    }
}

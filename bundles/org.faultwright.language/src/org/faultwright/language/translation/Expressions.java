/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.language.text.CallText;
import org.faultwright.language.text.ConstantText;
import org.faultwright.language.text.ExpressionText;
import org.faultwright.language.text.NegatedText;
import org.faultwright.language.text.QuotientText;
import org.faultwright.language.text.ReadingText;
import org.faultwright.language.text.SumText;
import org.faultwright.language.text.TextPackage;
import org.faultwright.language.text.util.TextSwitch;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Expression;

/** Values computed from readings. An expression with a gap is left out; the parser has reported the gap. */
final class Expressions extends TextSwitch<Optional<Expression>> {
    private final ModelSource passage;
    private final Quantities quantities;

    Expressions(ModelSource passage, Quantities quantities) {
        this.passage = passage;
        this.quantities = quantities;
    }

    Optional<Written<Expression>> expression(ExpressionText written) {
        try {
            return of(written).map(expression -> new Written<>(expression, passage.range(written)));
        } catch (StackOverflowError tooDeep) {
            passage.problem(passage.range(written), "This expression has too many terms to be read; split it up.");
            return Optional.empty();
        }
    }

    private Optional<Expression> of(ExpressionText written) {
        return Optional.ofNullable(written).flatMap(this::doSwitch);
    }

    @Override
    public Optional<Expression> caseSumText(SumText written) {
        return of(written.getLeft()).flatMap(left -> of(written.getRight())
                .map(right -> "+".equals(written.getOperator()) ? new Expression.Sum(left, right)
                        : new Expression.Difference(left, right)));
    }

    @Override
    public Optional<Expression> caseQuotientText(QuotientText written) {
        boolean product = "*".equals(written.getOperator()) || "×".equals(written.getOperator());
        return of(written.getLeft()).flatMap(left -> of(written.getRight())
                .map(right -> product ? new Expression.Product(left, right) : new Expression.Quotient(left, right)));
    }

    @Override
    public Optional<Expression> caseNegatedText(NegatedText written) {
        return of(written.getOf()).map(Expression.Negated::new);
    }

    @Override
    public Optional<Expression> caseCallText(CallText written) {
        List<Expression> arguments = new ArrayList<>();
        for (ExpressionText argument : written.getArguments()) {
            Optional<Expression> read = of(argument);
            if (read.isEmpty()) {
                return Optional.empty();
            }
            arguments.add(read.get());
        }
        return Optional.of(new Expression.Call(passage.textOrNone(written, TextPackage.Literals.CALL_TEXT__FUNCTION),
                List.copyOf(arguments)));
    }

    @Override
    public Optional<Expression> caseReadingText(ReadingText written) {
        return passage.name(written, TextPackage.Literals.READING_TEXT__STEP)
                .map(step -> new Expression.Reading(step.text()));
    }

    @Override
    public Optional<Expression> caseConstantText(ConstantText written) {
        return passage.node(written, TextPackage.Literals.CONSTANT_TEXT__TEXT)
                .map(node -> new Expression.Constant(quantities.quantity(node)));
    }
}

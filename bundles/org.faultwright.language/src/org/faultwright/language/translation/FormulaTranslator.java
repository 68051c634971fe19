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
import org.faultwright.quantity.Formula;

/** Values computed from readings. An expression with a gap is left out; the parser has reported the gap. */
final class FormulaTranslator extends TextSwitch<Optional<Formula>> {
    private final ModelSource passage;
    private final QuantityTranslator quantities;

    FormulaTranslator(ModelSource passage, QuantityTranslator quantities) {
        this.passage = passage;
        this.quantities = quantities;
    }

    Optional<Written<Formula>> expression(ExpressionText written) {
        try {
            return of(written).map(expression -> new Written<>(expression, passage.range(written)));
        } catch (StackOverflowError tooDeep) {
            passage.problem(passage.range(written), "This expression has too many terms to be read; split it up.");
            return Optional.empty();
        }
    }

    private Optional<Formula> of(ExpressionText written) {
        return Optional.ofNullable(written).flatMap(this::doSwitch);
    }

    @Override
    public Optional<Formula> caseSumText(SumText written) {
        return of(written.getLeft()).flatMap(left -> of(written.getRight())
                .map(right -> "+".equals(written.getOperator()) ? new Formula.Sum(left, right)
                        : new Formula.Difference(left, right)));
    }

    @Override
    public Optional<Formula> caseQuotientText(QuotientText written) {
        boolean product = "*".equals(written.getOperator()) || "×".equals(written.getOperator());
        return of(written.getLeft()).flatMap(left -> of(written.getRight())
                .map(right -> product ? new Formula.Product(left, right) : new Formula.Quotient(left, right)));
    }

    @Override
    public Optional<Formula> caseNegatedText(NegatedText written) {
        return of(written.getOf()).map(Formula.Negated::new);
    }

    @Override
    public Optional<Formula> caseCallText(CallText written) {
        List<Formula> arguments = new ArrayList<>();
        for (ExpressionText argument : written.getArguments()) {
            Optional<Formula> read = of(argument);
            if (read.isEmpty()) {
                return Optional.empty();
            }
            arguments.add(read.get());
        }
        return Optional.of(new Formula.Call(passage.textOrNone(written, TextPackage.Literals.CALL_TEXT__FUNCTION),
                List.copyOf(arguments)));
    }

    @Override
    public Optional<Formula> caseReadingText(ReadingText written) {
        return passage.name(written, TextPackage.Literals.READING_TEXT__STEP)
                .map(step -> new Formula.Reading(step.text()));
    }

    @Override
    public Optional<Formula> caseConstantText(ConstantText written) {
        return passage.node(written, TextPackage.Literals.CONSTANT_TEXT__TEXT)
                .map(node -> new Formula.Constant(quantities.quantity(node)));
    }
}

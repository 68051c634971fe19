/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.faultwright.language.text.TextPackage.Literals.LIMIT_TEXT__BOTH;
import static org.faultwright.language.text.TextPackage.Literals.LIMIT_TEXT__MINUS;
import static org.faultwright.language.text.TextPackage.Literals.LIMIT_TEXT__PLUS;

import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.faultwright.language.parsing.QuotedWords;
import org.faultwright.language.text.LimitText;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Tolerance;

/** Tolerances, limits and bands. A limit that lacks a quantity is left out; the parser has reported the gap. */
final class LimitTranslator {
    private static final Tolerance NONE = new Tolerance.Percent(Exact.ZERO);

    private final ModelSource passage;
    private final QuantityTranslator quantities;

    LimitTranslator(ModelSource passage, QuantityTranslator quantities) {
        this.passage = passage;
        this.quantities = quantities;
    }

    /** The one limit stated. */
    Optional<Written<Limit>> single(List<LimitText> written, String what) {
        return passage.single(written, what).flatMap(this::limit);
    }

    Optional<Written<Limit>> limit(LimitText written) {
        if (written.getLower() != null && !hasDigit(written)) {
            return Optional.empty();
        }
        if (isBareNumber(written)) {
            String number = spelling(written);
            passage.problem(passage.range(written), QuotedWords.words(number) + " alone is no limit; write "
                    + number + " +/- a tolerance, or " + number + " .. and the upper end, or at most or at least before it.");
            return Optional.empty();
        }
        return read(written).map(limit -> new Written<>(limit, passage.range(written)));
    }

    /** Whether only a number stands there, as in the code {@code 3 blinks}. */
    boolean isBareNumber(LimitText written) {
        return written.getLower() != null && !written.isOver() && written.getUpper() == null && !hasTolerance(written)
                && !saysRange(written);
    }

    private boolean hasDigit(LimitText written) {
        return spelling(written).chars().anyMatch(Character::isDigit);
    }

    /** A range that is broken off after its two points is no bare number. */
    private boolean saysRange(LimitText written) {
        return spelling(written).contains("..") || spelling(written).endsWith("+/-") || spelling(written).endsWith("±");
    }

    private boolean hasTolerance(LimitText written) {
        return written.getBoth() != null || written.getPlus() != null || written.getMinus() != null;
    }

    private Optional<Limit> read(LimitText written) {
        String spelling = spelling(written);
        if (written.getAtMost() != null) {
            return quantity(written.getAtMost()).map(upper -> new Limit.NotAbove(upper, true, spelling));
        }
        if (written.getUnder() != null) {
            return quantity(written.getUnder()).map(upper -> new Limit.NotAbove(upper, false, spelling));
        }
        if (written.getAtLeast() != null) {
            return quantity(written.getAtLeast()).map(lower -> new Limit.NotBelow(lower, true, spelling));
        }
        if (hasTolerance(written)) {
            return around(written, spelling);
        }
        if (written.getUpper() != null) {
            return quantity(written.getLower()).flatMap(lower -> quantity(written.getUpper()).map(upper ->
                    new Limit.Between(lower, !written.isOver(), upper, !written.isUpperExcluded(), spelling)));
        }
        return written.isOver() ? quantity(written.getLower()).map(lower -> new Limit.NotBelow(lower, false, spelling))
                : Optional.empty();
    }

    private Optional<Limit> around(LimitText written, String spelling) {
        if (written.isOver()) {
            passage.problem(passage.range(written), "A tolerance has two ends, so over does not fit before it; delete over.");
        }
        Optional<Tolerance> both = tolerance(written, LIMIT_TEXT__BOTH);
        Tolerance plus = both.or(() -> tolerance(written, LIMIT_TEXT__PLUS)).orElse(NONE);
        Tolerance minus = both.or(() -> tolerance(written, LIMIT_TEXT__MINUS)).orElse(NONE);
        return quantity(written.getLower()).map(nominal -> new Limit.AroundNominal(nominal, of(nominal, plus), of(nominal, minus), spelling));
    }

    /** A sound level differs from another by decibels. */
    private static Tolerance of(Quantity nominal, Tolerance tolerance) {
        return tolerance instanceof Tolerance.Amount amount ? new Tolerance.Amount(amount.amount().asDifferenceOf(nominal.unit())) : tolerance;
    }

    private Optional<Tolerance> tolerance(LimitText written, EStructuralFeature side) {
        return passage.node(written, side).map(this::tolerance);
    }

    private Tolerance tolerance(INode node) {
        Quantity amount = quantities.quantity(node);
        return amount.unit().symbol().equals("%") ? new Tolerance.Percent(amount.value()) : new Tolerance.Amount(amount);
    }

    private Optional<Quantity> quantity(org.faultwright.language.text.QuantityText written) {
        return quantities.quantity(written).map(Written::value);
    }

    private String spelling(LimitText written) {
        return passage.words(NodeModelUtils.findActualNodeFor(written));
    }
}

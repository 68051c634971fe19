/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import java.util.Optional;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.faultwright.language.text.AroundText;
import org.faultwright.language.text.BetweenText;
import org.faultwright.language.text.LimitText;
import org.faultwright.language.text.OverText;
import org.faultwright.language.text.TextPackage;
import org.faultwright.language.text.UnderText;
import org.faultwright.language.text.util.TextSwitch;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Tolerance;

/** Tolerances, limits and bands. A limit that lacks a quantity is left out; the parser has reported the gap. */
final class Limits extends TextSwitch<Optional<Limit>> {
    private final Passage passage;
    private final Quantities quantities;

    Limits(Passage passage, Quantities quantities) {
        this.passage = passage;
        this.quantities = quantities;
    }

    Optional<Written<Limit>> limit(LimitText written) {
        return Optional.ofNullable(written).flatMap(this::doSwitch)
                .map(limit -> new Written<>(limit, passage.range(written)));
    }

    Optional<Written<Limit>> single(List<LimitText> written, String what) {
        return passage.single(written, what).flatMap(this::limit);
    }

    @Override
    public Optional<Limit> caseAroundText(AroundText written) {
        Optional<Tolerance> both = tolerance(written, TextPackage.Literals.AROUND_TEXT__BOTH);
        Optional<Tolerance> plus = both.or(() -> tolerance(written, TextPackage.Literals.AROUND_TEXT__PLUS));
        Optional<Tolerance> minus = both.or(() -> tolerance(written, TextPackage.Literals.AROUND_TEXT__MINUS));
        return plus.isEmpty() && minus.isEmpty() ? Optional.empty()
                : quantities.quantity(written.getNominal()).map(nominal -> new Limit.AroundNominal(nominal.value(),
                        plus.orElse(NONE), minus.orElse(NONE), spelling(written)));
    }

    private static final Tolerance NONE = new Tolerance.Percent(Exact.ZERO);

    private Optional<Tolerance> tolerance(AroundText written, org.eclipse.emf.ecore.EStructuralFeature side) {
        return passage.node(written, side).map(this::tolerance);
    }

    private Tolerance tolerance(INode node) {
        Quantity amount = quantities.quantity(node);
        return amount.unit().symbol().equals("%") ? new Tolerance.Percent(amount.value()) : new Tolerance.Amount(amount);
    }

    @Override
    public Optional<Limit> caseBetweenText(BetweenText written) {
        return quantities.quantity(written.getLower()).flatMap(lower -> quantities.quantity(written.getUpper())
                .map(upper -> new Limit.Between(lower.value(), !written.isLowerExcluded(), upper.value(),
                        !written.isUpperExcluded(), spelling(written))));
    }

    @Override
    public Optional<Limit> caseUnderText(UnderText written) {
        return quantities.quantity(written.getUpper())
                .map(upper -> new Limit.NotAbove(upper.value(), written.isAtMost(), spelling(written)));
    }

    @Override
    public Optional<Limit> caseOverText(OverText written) {
        return quantities.quantity(written.getLower())
                .map(lower -> new Limit.NotBelow(lower.value(), written.isAtLeast(), spelling(written)));
    }

    private static String spelling(LimitText written) {
        return Passage.words(NodeModelUtils.findActualNodeFor(written));
    }
}

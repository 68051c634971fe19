/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.text.PossibleText;
import org.faultwright.language.text.ShowingText;
import org.faultwright.language.text.TextPackage;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityText;
import org.faultwright.quantity.Unit;

/** What steps show, in a fault's signature or in an example. */
final class ShowingTranslator {
    private static final Pattern NUMBER = Pattern.compile("[-\u2212]?[0-9].*|R[0-9]+");

    private final ModelSource passage;
    private final QuantityTranslator quantities;

    ShowingTranslator(ModelSource passage, QuantityTranslator quantities) {
        this.passage = passage;
        this.quantities = quantities;
    }

    List<Showing> all(List<ShowingText> written) {
        return written.stream().map(this::showing).toList();
    }

    private Showing showing(ShowingText written) {
        return new Showing(passage.nameOrNone(written, TextPackage.Literals.SHOWING_TEXT__STEP),
                written.getPossible().stream().flatMap(possible -> possible(possible).stream()).toList(),
                passage.range(written));
    }

    private Optional<Showing.Possible> possible(PossibleText written) {
        Optional<Exact> share = passage.node(written, TextPackage.Literals.POSSIBLE_TEXT__SHARE).map(quantities::number);
        return passage.node(written, TextPackage.Literals.POSSIBLE_TEXT__WORDS)
                .map(node -> new Showing.Possible(words(node), reading(node), share));
    }

    private Name words(INode node) {
        Name words = passage.name(node);
        return words.text().equals("then") ? new Name(Step.DONE, words.at()) : words;
    }

    /** A number with a unit. A code such as {@code 3 blinks} is none, as no unit is called blinks. */
    private Optional<Quantity> reading(INode node) {
        String written = passage.words(node);
        return NUMBER.matcher(written).matches() ? Optional.of(QuantityText.read(written)).filter(reading -> reading.problem().isEmpty()
                && reading.quantity().unit().status() != Unit.Status.UNKNOWN)
                .map(QuantityText.Reading::quantity) : Optional.empty();
    }
}

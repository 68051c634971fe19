/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.analysis.NearNames;
import org.faultwright.language.parsing.QuotedWords;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;

/** Words with a fixed meaning: kinds of quantity, hazards, signal words, days. */
final class Vocabulary {
    private final ModelSource passage;

    Vocabulary(ModelSource passage) {
        this.passage = passage;
    }

    Optional<Written<QuantityKind>> kind(EObject element, EStructuralFeature feature) {
        return passage.node(element, feature).flatMap(node -> kind(node)
                .map(kind -> new Written<>(kind, passage.range(node))));
    }

    private Optional<QuantityKind> kind(INode node) {
        String words = passage.words(node);
        Optional<QuantityKind> known = QuantityKind.inWords(words).or(() -> QuantityKind.inWords(words + " rms"));
        if (known.isEmpty() && node.getLength() > 0) {
            passage.problem(passage.range(node), unknownKind(words));
        }
        return known;
    }

    private static String unknownKind(String words) {
        if (words.equals("voltage") || words.equals("current")) {
            return "Say which " + words + " is meant: dc " + words + ", ac " + words + " rms or ac " + words + " peak.";
        }
        List<String> kinds = Arrays.stream(QuantityKind.values()).map(QuantityKind::words).toList();
        return QuotedWords.words(words) + " is no quantity that can be measured here; " + NearNames.of(words, kinds).stream().findFirst()
                .map(near -> "did you mean " + near + "?").orElse("write one of " + listed(kinds) + ".");
    }

    /** The form of a voltage: dc when not said. */
    QuantityKind voltage(Optional<INode> form) {
        if (form.isEmpty()) {
            return QuantityKind.DC_VOLTAGE;
        }
        String words = passage.words(form.get());
        switch (words) {
            case "dc":
                return QuantityKind.DC_VOLTAGE;
            case "ac", "ac rms":
                return QuantityKind.AC_VOLTAGE_RMS;
            case "ac peak":
                return QuantityKind.AC_VOLTAGE_PEAK;
            default:
                passage.problem(passage.range(form.get()), QuotedWords.words(words) + " is no form of a voltage; write dc, ac rms or ac peak.");
                return QuantityKind.DC_VOLTAGE;
        }
    }

    List<Written<Hazard>> hazards(EObject element, EStructuralFeature feature) {
        return passage.nodes(element, feature).stream().flatMap(node -> {
            Optional<Hazard> hazard = Hazard.named(passage.words(node));
            if (hazard.isEmpty()) {
                passage.problem(passage.range(node), QuotedWords.words(passage.words(node)) + " is no hazard that the language knows; write one of "
                        + listed(Arrays.stream(Hazard.values()).map(Hazard::word).toList()) + ".");
            }
            return hazard.map(known -> new Written<>(known, passage.range(node))).stream();
        }).toList();
    }

    /** The signal word; a word that is none is reported, and taken for a warning so that the note still counts. */
    SignalWord signalWord(Optional<INode> node) {
        return node.flatMap(word -> oneOf(SignalWord.values(), word, "signal word")).orElse(SignalWord.WARNING);
    }

    <E extends Enum<E>> Optional<E> oneOf(E[] known, INode node, String what) {
        String word = passage.words(node);
        Optional<E> found = Arrays.stream(known).filter(one -> lower(one).equals(word)).findFirst();
        if (found.isEmpty()) {
            passage.problem(passage.range(node), QuotedWords.words(word) + " is no " + what + "; write one of "
                    + listed(Arrays.stream(known).map(Vocabulary::lower).toList()) + ".");
        }
        return found;
    }

    private static String lower(Enum<?> one) {
        return one.name().toLowerCase(Locale.ROOT);
    }

    private static String listed(List<String> words) {
        return words.stream().limit(words.size() - 1L).collect(Collectors.joining(", ")) + " or "
                + words.get(words.size() - 1);
    }

    Optional<Written<LocalDate>> day(EObject element, EStructuralFeature feature) {
        return passage.node(element, feature).flatMap(node -> day(passage.words(node), node)
                .map(day -> new Written<>(day, passage.range(node))));
    }

    private Optional<LocalDate> day(String text, INode node) {
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeException noDay) {
            passage.problem(passage.range(node), QuotedWords.words(text) + " is no day of the calendar; write year, month and day as in 2026-01-31.");
            return Optional.empty();
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.parsing.LanguageSigns;
import org.faultwright.language.parsing.LanguageWords;
import org.faultwright.language.parsing.QuotedWords;
import org.faultwright.procedure.SourceRange;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/** Words that the grammar lets pass only so that the rest of a broken text can be read. */
final class UnreadWords {
    private final ModelSource passage;

    UnreadWords(ModelSource passage) {
        this.passage = passage;
    }

    /** Between declarations. A run of such words is one problem, at its first one. */
    void betweenDeclarations(EObject element, EStructuralFeature feature) {
        int end = -1;
        for (INode node : passage.nodes(element, feature)) {
            SourceRange at = passage.range(node);
            if (end < 0 || !passage.source().content().substring(end, at.offset()).isBlank()) {
                report(node, LanguageWords.DECLARATIONS, "begins nothing that can stand between declarations");
            }
            end = at.end();
        }
    }

    /** Within the braces of a step or declaration. */
    void withinBraces(EObject element, EStructuralFeature feature) {
        for (INode node : passage.nodes(element, feature)) {
            if (passage.words(node).equals("->")) {
                passage.unreadable(passage.range(node), arrow(node));
            } else {
                report(node, LanguageWords.LINES, "does not belong here");
            }
        }
    }

    /** Of a whole block that begins with no word of the language. */
    void block(SourceRange all) {
        String word = Pattern.compile("\\w+|\\S").matcher(all.text()).results().findFirst().map(MatchResult::group).orElse("");
        report(word, new SourceRange(all.source(), all.offset(), word.length()), LanguageWords.DECLARATIONS,
                "begins nothing that can stand between declarations");
    }

    private void report(INode node, List<String> known, String what) {
        String word = passage.words(node).strip().split("\\s+|(?<!^),", 2)[0];
        report(word, new SourceRange(passage.source(), passage.range(node).offset(), Math.min(word.length(), node.getLength())), known, what);
    }

    private void report(String word, SourceRange at, List<String> known, String what) {
        passage.unreadable(at, LanguageSigns.advice(word).or(() -> misplaced(word)).orElseGet(() -> QuotedWords.words(word) + " " + what
                + LanguageWords.near(known, word).map(near -> "; did you mean " + near + "?").orElse("; correct it or delete it.")));
    }

    static Optional<String> misplaced(String word) {
        if (word.equals("}")) {
            return Optional.of("This } closes nothing; delete it.");
        }
        if (LanguageWords.BEGINNINGS.contains(word)) {
            return Optional.of("One file holds one procedure or one library; put this one into a file of its own.");
        }
        return LanguageWords.DECLARATIONS.contains(word)
                ? Optional.of("A library holds declarations and routines only; put this " + word + " into a procedure.")
                : Optional.empty();
    }

    /** Most often the result word before the arrow has been taken for the unit of a number that has none. */
    private String arrow(INode node) {
        String[] before = passage.source().content().substring(0, passage.range(node).offset()).stripTrailing().split("\\s+");
        if (before.length > 1 && before[before.length - 2].matches("[0-9][0-9.]*")
                && Units.named(before[before.length - 1]).status() == Unit.Status.UNKNOWN) {
            return "Expected a result before ->, as " + QuotedWords.words(before[before.length - 1]) + " was read as the unit of "
                    + before[before.length - 2] + "; write the unit after the number, as in 24 V.";
        }
        String last = before[before.length - 1];
        return "Expected a result before ->, as in faint -> Next" + (last.matches("\\w+")
                ? "; " + QuotedWords.words(last) + " was read as part of what stands before it." : ".");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.antlr.ISyntaxErrorMessageProvider.IParserErrorContext;
import org.faultwright.language.text.DeclarationText;
import org.faultwright.language.text.OutcomeText;
import org.faultwright.language.text.StepText;

/** Says what the parser expected, from where in the grammar it stood. */
final class SyntaxExpectation {
    private final EObject element;
    private final INode node;

    SyntaxExpectation(IParserErrorContext context) {
        this.element = context.getCurrentContext();
        this.node = context.getCurrentNode();
    }

    /** One certain word or sign was expected. */
    String token(String name, SyntaxErrorPlace place) {
        String sign = name.startsWith("'") && name.endsWith("'") ? name.substring(1, name.length() - 1) : name;
        switch (sign) {
            case "->":
                return arrow(place);
            case "}":
                return closing(place);
            case "{":
                return "Expected { " + after(place) + "; what belongs to it stands between { and }.";
            case "RULE_STRING":
                return quotedText(place);
            case "RULE_NUMBER":
                return "Expected a number " + after(place) + ".";
            case "RULE_ID", "RULE_RCODED":
                return "Expected " + word(place) + ".";
            case "EOF":
                return QuotedWords.words(place.found()) + " cannot stand " + after(place) + "; correct it or delete it.";
            default:
                return "Expected \"" + sign + "\" " + after(place) + ".";
        }
    }

    /** One of several things was expected: name the part of the language they make up. */
    String part(SyntaxErrorPlace place) {
        String rule = rule().map(AbstractRule::getName).orElse("");
        if (place.before().isEmpty()) {
            return start(place);
        }
        if (rule.equals("Name")) {
            return name(place);
        }
        return feature().flatMap(LanguageParts::ofFeature).filter(what -> !rule.equals("QuantityText"))
                .or(() -> LanguageParts.ofRule(rule))
                .map(what -> "Expected " + what + " " + after(place) + ".")
                .orElseGet(() -> place.isEnd() ? closing(place) : QuotedWords.words(place.found()) + " cannot stand " + after(place) + "; correct it or delete it.");
    }

    private static String start(SyntaxErrorPlace place) {
        if (place.isEnd() && place.before().isEmpty()) {
            return "This text is empty; begin it with \"procedure\" or \"library\" and a name.";
        }
        return LanguageWords.near(LanguageWords.BEGINNINGS, place.found())
                .map(near -> QuotedWords.words(place.found()) + " begins no text of this language; did you mean " + near + "?")
                .orElse("Expected \"procedure\" or \"library\" and a name at the start of the text.");
    }

    private String name(SyntaxErrorPlace place) {
        String what = feature().flatMap(LanguageParts::ofFeature).orElse("a name");
        if (place.foundIsKeyword()) {
            return "Expected " + what + " " + after(place) + "; " + QuotedWords.words(place.found())
                    + " is a word of the language and cannot be one.";
        }
        return "Expected " + what + " " + after(place) + ".";
    }

    private String word(SyntaxErrorPlace place) {
        String what = feature().flatMap(LanguageParts::ofFeature).or(() -> Optional.ofNullable(element).map(EObject::eClass)
                .flatMap(kind -> LanguageParts.wordIn(kind.getName()))).orElse("a word");
        return what + " " + after(place);
    }

    private static String quotedText(SyntaxErrorPlace place) {
        String expected = "Expected a text in quotation marks " + after(place);
        return place.isEnd() || place.foundIsKeyword() || !Character.isLetter(place.found().charAt(0)) ? expected + "."
                : expected + "; write \"" + place.found() + "\".";
    }

    private String arrow(SyntaxErrorPlace place) {
        String head = element instanceof OutcomeText outcome && outcome.getHead() != null
                ? NodeModelUtils.getTokenText(NodeModelUtils.findActualNodeFor(outcome.getHead())) : place.before();
        String first = head.split("\\s+", 2)[0];
        String expected = "Expected \"->\" and the next step after the outcome " + QuotedWords.words(head);
        return LanguageWords.near(LanguageWords.LINES, first).map(near -> expected + "; or did you mean \"" + near + "\"?")
                .orElse(expected + ".");
    }

    private String closing(SyntaxErrorPlace place) {
        String what = owner();
        if (place.isEnd()) {
            return SyntaxMessages.ENDS_BEFORE + " " + what + " is closed; put a } at its end.";
        }
        if (LanguageWords.DECLARATIONS.contains(place.found())) {
            return "This \"" + place.found() + "\" begins before " + what + " is closed; put a } before it.";
        }
        String sentence = QuotedWords.words(place.found()) + " does not belong in " + what;
        return LanguageWords.near(LanguageWords.LINES, place.found()).map(near -> sentence + "; did you mean \"" + near + "\"?")
                .orElse(sentence + "; correct it or delete it, or put the } that closes " + what + " before it.");
    }

    /** What is being read, such as: the check SeeIt. */
    private String owner() {
        EObject owner = element;
        while (owner != null && !(owner instanceof StepText) && !(owner instanceof DeclarationText)) {
            owner = owner.eContainer();
        }
        if (owner == null) {
            return element == null ? "this" : LanguageParts.kind(element.eClass().getName());
        }
        String name = owner instanceof StepText step ? step.getName() : ((DeclarationText) owner).getName();
        return LanguageParts.kind(owner.eClass().getName()) + (name == null ? "" : " " + name);
    }

    private static String after(SyntaxErrorPlace place) {
        return place.before().isEmpty() ? "at the start of the text" : "after " + QuotedWords.words(place.before());
    }

    private Optional<AbstractRule> rule() {
        return Optional.ofNullable(node).map(INode::getGrammarElement)
                .flatMap(grammar -> grammar instanceof RuleCall call ? Optional.of(call.getRule())
                        : grammar instanceof AbstractRule rule ? Optional.of(rule) : Optional.empty());
    }

    private Optional<String> feature() {
        return Optional.ofNullable(node).map(INode::getGrammarElement)
                .flatMap(grammar -> Optional.ofNullable(GrammarUtil.containingAssignment(grammar)))
                .map(Assignment::getFeature);
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CompoundElement;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;

/** The beginnings of blocks, read from the grammar so that no list of words can lag behind it. */
final class BlockHeads {
    private static final List<String> DOCUMENTS = List.of("LibraryText", "ProcedureText");
    private static final String STEP = "StepText";

    private final Map<String, BlockHead> byKeyword = new HashMap<>();
    private final Set<String> keywords;

    BlockHeads(Grammar grammar) {
        keywords = Set.copyOf(GrammarUtil.getAllKeywords(grammar));
        for (String document : DOCUMENTS) {
            ParserRule rule = (ParserRule) GrammarUtil.findRuleForName(grammar, document);
            for (Assignment assignment : EcoreUtil2.getAllContentsOfType(rule, Assignment.class)) {
                called(assignment.getTerminal()).ifPresent(part -> add(part, assignment.getFeature(), false));
            }
        }
    }

    Optional<BlockHead> of(String keyword) {
        return Optional.ofNullable(byKeyword.get(keyword));
    }

    /** The words that begin a block. */
    Set<String> keywords() {
        return Set.copyOf(byKeyword.keySet());
    }

    /** Whether the grammar knows this word, so that it is no name. */
    boolean isKeyword(String word) {
        return keywords.contains(word);
    }

    private static Optional<ParserRule> called(EObject element) {
        return element instanceof RuleCall call && call.getRule() instanceof ParserRule rule && !GrammarUtil.isDatatypeRule(rule)
                ? Optional.of(rule) : Optional.empty();
    }

    /** A rule that only chooses between others stands for those. */
    private void add(ParserRule rule, String feature, boolean step) {
        boolean isStep = step || rule.getName().equals(STEP);
        if (rule.getAlternatives() instanceof Alternatives choice) {
            choice.getElements().forEach(one -> called(one).ifPresent(chosen -> add(chosen, feature, isStep)));
            return;
        }
        if (!(rule.getAlternatives() instanceof Group group) || !(group.getElements().get(0) instanceof Keyword word)) {
            return;
        }
        List<AbstractElement> parts = group.getElements();
        int closing = closing(parts);
        boolean holdsSteps = EcoreUtil2.getAllContentsOfType(rule, Assignment.class).stream()
                .flatMap(assignment -> called(assignment.getTerminal()).stream()).anyMatch(called -> called.getName().equals(STEP));
        byKeyword.put(word.getValue(), new BlockHead(word.getValue(), rule, feature, follows(parts.stream().filter(part -> !(part instanceof Action)).toList()), closing >= 0,
                closing >= 0 && closing < parts.size() - 1, holdsSteps, isStep));
    }

    private static int closing(List<AbstractElement> parts) {
        for (int i = 0; i < parts.size(); i++) {
            if (parts.get(i) instanceof Keyword word && word.getValue().equals("}")) {
                return i;
            }
        }
        return -1;
    }

    private static BlockHead.Follows follows(List<AbstractElement> parts) {
        if (parts.size() < 2 || parts.get(1) instanceof CompoundElement || !(parts.get(1) instanceof Assignment assignment)) {
            return BlockHead.Follows.OTHER;
        }
        return switch (assignment.getFeature()) {
            case "name" -> BlockHead.Follows.NAME;
            case "title" -> assignment.getTerminal() instanceof RuleCall
                    && parts.size() > 2 && closing(parts) >= 0 ? BlockHead.Follows.TITLE : BlockHead.Follows.OTHER;
            default -> BlockHead.Follows.OTHER;
        };
    }
}

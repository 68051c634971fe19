/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;

/** The words of the language that can stand within a block, read from the grammar so that no list can lag behind it. */
public final class BlockWords {
    /** Steps are blocks of their own; what cannot be read, and names that look like words of the language, belong nowhere. */
    private static final Set<String> LEFT_OUT = Set.of("StepText", "UnreadWords", "ProcedureWord", "StrayWord", "PlainWord");
    private static final Map<String, List<String>> KNOWN = new ConcurrentHashMap<>();

    private BlockWords() {
    }

    /** In the order of the alphabet; none where no block begins with that keyword. */
    public static List<String> of(String keyword) {
        return KNOWN.computeIfAbsent(keyword, BlockWords::read);
    }

    private static List<String> read(String keyword) {
        Set<String> words = new TreeSet<>();
        BlockReader.Loaded.HEADS.of(keyword).ifPresent(head -> collect(head.rule(), words, new HashSet<>()));
        words.remove(keyword);
        return List.copyOf(words);
    }

    private static void collect(ParserRule rule, Set<String> words, Set<ParserRule> seen) {
        if (LEFT_OUT.contains(rule.getName()) || !seen.add(rule)) {
            return;
        }
        for (AbstractElement element : EcoreUtil2.getAllContentsOfType(rule, AbstractElement.class)) {
            if (element instanceof Keyword word && Character.isLetter(word.getValue().charAt(0))) {
                words.add(word.getValue());
            } else if (element instanceof RuleCall call && call.getRule() instanceof ParserRule called) {
                collect(called, words, seen);
            }
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;

/** The words of a parsed text, in order. */
final class TokenSequence {
    private TokenSequence() {
    }

    static List<SpacedToken> of(String content, ICompositeNode root, ItemFinder items) {
        List<SpacedToken> words = new ArrayList<>();
        int newlines = 0;
        boolean spaced = false;
        for (ILeafNode leaf : root.getLeafNodes()) {
            // not the leaf's own text, which it looks up through all its parents
            String text = content.substring(leaf.getTotalOffset(), leaf.getTotalEndOffset());
            boolean comment = text.startsWith("//") || text.startsWith("/*");
            if (leaf.isHidden() && !comment) {
                newlines += newlines(text);
                spaced = true;
                continue;
            }
            String word = comment ? text.stripTrailing() : text.strip();
            words.add(new SpacedToken(word, newlines, spaced, items.at(leaf.getTotalOffset()),
                    leaf.getGrammarElement() instanceof Keyword keyword ? keyword.getValue() : "", comment));
            newlines = newlines(text.substring(word.length()));
            spaced = newlines > 0;
        }
        return words;
    }

    private static int newlines(String text) {
        return (int) text.chars().filter(c -> c == '\n').count();
    }
}

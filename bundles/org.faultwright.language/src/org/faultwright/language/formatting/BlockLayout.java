/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** How what stands between braces is spread over lines. */
final class BlockLayout {
    /** The spread of one pair of braces. */
    enum Spread {
        /** On one line, as their author wrote them. */
        ONE_LINE,
        /** On several, broken where their author broke them. */
        AS_WRITTEN,
        /** Too long for the one line their author wrote: each item gets a line. */
        ONE_PER_ITEM
    }

    private final Map<Integer, Spread> spreads = new HashMap<>();

    BlockLayout(List<SpacedToken> words) {
        Deque<Integer> open = new ArrayDeque<>();
        for (int i = 0; i < words.size(); i++) {
            if (words.get(i).is("{")) {
                open.push(i);
            } else if (words.get(i).is("}") && !open.isEmpty()) {
                int start = open.pop();
                Spread spread = spread(words, start, i);
                spreads.put(start, spread);
                spreads.put(i, spread);
            }
        }
    }

    /** @param brace the index of an opening or closing brace among the words */
    Spread of(int brace) {
        return spreads.getOrDefault(brace, Spread.AS_WRITTEN);
    }

    private static Spread spread(List<SpacedToken> words, int open, int close) {
        for (int i = open + 1; i <= close; i++) {
            if (words.get(i).newlines() > 0 || words.get(i).endsLine()) {
                return Spread.AS_WRITTEN;
            }
        }
        boolean tooLong = words.get(open + 1).begins() && lengthOfLine(words, open, close) > LayoutLine.LONGEST;
        return tooLong ? Spread.ONE_PER_ITEM : Spread.ONE_LINE;
    }

    private static int lengthOfLine(List<SpacedToken> words, int open, int close) {
        // an opening brace is put behind the word before it, whatever its author did
        int from = Math.max(0, open - 1);
        while (from > 0 && words.get(from).newlines() == 0 && !words.get(from).begins()) {
            from--;
        }
        return words.subList(from, close + 1).stream().mapToInt(word -> word.text().length() + 1).sum();
    }
}

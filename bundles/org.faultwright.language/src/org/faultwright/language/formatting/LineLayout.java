/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.eclipse.xtext.nodemodel.ICompositeNode;

/** Lays the words of a text out in lines. */
public final class LineLayout {
    private final List<SpacedToken> words;
    private final BlockLayout blocks;
    private final List<LayoutLine> lines = new ArrayList<>();
    private final Deque<BlockLayout.Spread> open = new ArrayDeque<>();

    private LineLayout(List<SpacedToken> words) {
        this.words = words;
        this.blocks = new BlockLayout(words);
    }

    /** The text laid out, with the line ends it had. A text that would lose or gain a word comes back as it was. */
    public static String of(String content, ICompositeNode root) {
        ItemFinder items = new ItemFinder(root);
        if (!items.isWhole()) {
            return content;
        }
        LineLayout layout = new LineLayout(TokenSequence.of(content, root, items));
        layout.fill();
        ColumnAlignment.align(layout.lines);
        String text = layout.text();
        String laidOut = (content.startsWith("\uFEFF") ? "\uFEFF" : "") + text;
        return !sameWords(content, laidOut) ? content : content.contains("\r\n") ? laidOut.replace("\r\n", "\n")
                .replace("\n", "\r\n") : laidOut;
    }

    private static boolean sameWords(String before, String after) {
        return withoutGaps(before).equals(withoutGaps(after));
    }

    private static String withoutGaps(String text) {
        return text.replaceAll("[\\s\\uFEFF\\u00A0]+", "");
    }

    private void fill() {
        LayoutLine line = new LayoutLine(0, false, LayoutItem.NONE);
        for (int i = 0; i < words.size(); i++) {
            SpacedToken word = words.get(i);
            SpacedToken before = i == 0 ? null : words.get(i - 1);
            if (word.is("}") && !open.isEmpty()) {
                open.pop();
            }
            if (before == null || breaks(i, word, before)) {
                addLine(line);
                line = new LayoutLine(depth(word, before), before != null && blankBefore(word, before), word.item());
            }
            line.add(word, before == null ? "" : gap(word, before));
            if (word.is("{")) {
                open.push(blocks.of(i));
            }
        }
        addLine(line);
    }

    private void addLine(LayoutLine line) {
        if (!line.isEmpty()) {
            lines.add(line);
        }
    }

    private boolean breaks(int i, SpacedToken word, SpacedToken before) {
        if (before.endsLine()) {
            return true;
        }
        if (word.comment()) {
            return word.newlines() > 0;
        }
        if (word.is("}")) {
            return blocks.of(i) != BlockLayout.Spread.ONE_LINE;
        }
        if (before.is("{") && blocks.of(i - 1) != BlockLayout.Spread.ONE_LINE) {
            return true;
        }
        if (word.is("{")) {
            return false;
        }
        if (word.newlines() > 0) {
            return true;
        }
        BlockLayout.Spread around = open.isEmpty() ? BlockLayout.Spread.AS_WRITTEN : open.peek();
        return around == BlockLayout.Spread.ONE_PER_ITEM && word.begins()
                || around == BlockLayout.Spread.AS_WRITTEN && (word.item() == LayoutItem.DECLARATION || word.item() == LayoutItem.OUTCOME);
    }

    private int depth(SpacedToken word, SpacedToken before) {
        int depth = (int) open.stream().filter(spread -> spread != BlockLayout.Spread.ONE_LINE).count();
        boolean goesOn = before != null && !word.begins() && !word.is("}") && !word.comment() && !before.is("{");
        return goesOn ? depth + 1 : depth;
    }

    private boolean blankBefore(SpacedToken word, SpacedToken before) {
        return word.newlines() > 1 && !before.is("{") && !word.is("}");
    }

    private static String gap(SpacedToken word, SpacedToken before) {
        if (word.is(",")) {
            return "";
        }
        boolean apart = word.spaced() || word.comment() || before.comment() || before.is(",") || isSign(word) || isSign(before);
        return apart ? " " : "";
    }

    private static boolean isSign(SpacedToken word) {
        return word.is("->") || word.is("{") || word.is("}");
    }

    private String text() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < lines.size(); i++) {
            if (i > 0 && lines.get(i).isBlankBefore()) {
                text.append('\n');
            }
            text.append(lines.get(i)).append('\n');
        }
        return text.toString();
    }
}

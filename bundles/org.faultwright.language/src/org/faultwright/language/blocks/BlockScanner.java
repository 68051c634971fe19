/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Cuts a text into blocks and never fails. A block begins at a word that the grammar lets begin one, outside all braces; where
 * braces are missing or too many, at such a word with a name behind it at the start of a line. Quoted text and comments are known.
 */
final class BlockScanner {
    /** @param guessed whether a cut rests on how the text is laid out rather than on its braces */
    record Cut(List<Block> blocks, boolean guessed) {
    }

    private final BlockHeads heads;
    private final String text;
    private final List<ScannedToken> words;
    private final List<Block> blocks = new ArrayList<>();
    private boolean guessed;

    private Optional<BlockHead> head = Optional.empty();
    private boolean beginning = true;
    private int first;
    private int opening = -1;
    private int depth;
    private int next;

    private BlockScanner(BlockHeads heads, String text) {
        this.heads = heads;
        this.text = text;
        this.words = ScannedToken.of(text);
    }

    static Cut cut(BlockHeads heads, String text) {
        return new BlockScanner(heads, text).cut();
    }

    private Cut cut() {
        for (next = 0; next < words.size(); next++) {
            ScannedToken word = words.get(next);
            Optional<BlockHead> begun = begins(word);
            if (begun.isPresent() || next > first && beginsNothing(word)) {
                close();
                head = begun;
            }
            if (word.is("{")) {
                opening = opening < 0 ? word.start() : opening;
                depth++;
            } else if (word.is("}")) {
                depth--;
            }
        }
        close();
        return new Cut(List.copyOf(blocks), guessed);
    }

    /** Ends the block before the next word. */
    private void close() {
        if (next > first || beginning) {
            int start = next > first ? words.get(first).start() : 0;
            int end = next > first ? words.get(next - 1).end() : 0;
            blocks.add(new Block(head, name(), start, end, opening, depth == 0));
        }
        beginning = false;
        first = next;
        opening = -1;
        depth = 0;
    }

    /** The name behind the keyword; in words that begin nothing too, where they look like the beginning of a block. */
    private String name() {
        ScannedToken second = first + 1 < next ? words.get(first + 1) : ScannedToken.NONE;
        if (head.isPresent()) {
            return second.isQuoted() || isName(second) ? second.text() : "";
        }
        ScannedToken third = first + 2 < next ? words.get(first + 2) : ScannedToken.NONE;
        return isName(second) && (third.isQuoted() || third.is("{")) ? second.text() : "";
    }

    private boolean isName(ScannedToken word) {
        return word.isWord() && !heads.isKeyword(word.text());
    }

    private Optional<BlockHead> begins(ScannedToken word) {
        if (depth > 0 && !word.isFirstInLine()) {
            return Optional.empty();
        }
        Optional<BlockHead> known = word.isWord() ? heads.of(word.text()) : Optional.empty();
        if (known.isEmpty()) {
            return known;
        }
        boolean whole = followed(known.get());
        if (depth <= 0) {
            if (!whole && !word.isFirstInLine() || isWithin(word, known.get())) {
                return Optional.empty();
            }
            guessed |= depth < 0 || !whole || known.get().follows() == BlockHead.Follows.OTHER && !word.isFirstInLine();
            return known;
        }
        boolean nested = known.get().isStep() && head.isPresent() && head.get().holdsSteps() && word.column() > column();
        if (!whole || nested || known.get().follows() == BlockHead.Follows.OTHER) {
            return Optional.empty();
        }
        guessed = true;
        return known;
    }

    /** Whether a word that is laid out as part of a block belongs to it though that block's braces do not say so. */
    private boolean isWithin(ScannedToken word, BlockHead known) {
        if (beginning || !word.isFirstInLine() || word.column() <= column()) {
            return false;
        }
        boolean bodyMissing = opening < 0 && (head.isEmpty() || head.get().braced());
        boolean ofRoutine = head.isPresent() && head.get().holdsSteps() && (known.isStep() || known.follows() == BlockHead.Follows.OTHER);
        guessed |= bodyMissing || ofRoutine;
        return bodyMissing || ofRoutine;
    }

    private int column() {
        return first < words.size() ? words.get(first).column() : 0;
    }

    private boolean followed(BlockHead known) {
        ScannedToken second = next + 1 < words.size() ? words.get(next + 1) : ScannedToken.NONE;
        return switch (known.follows()) {
            case NAME -> isName(second);
            case TITLE -> second.isQuoted() || second.is("of");
            case OTHER -> true;
        };
    }

    /** Behind what is closed, and at the edge of the page, a word that continues nothing stands for itself. */
    private boolean beginsNothing(ScannedToken word) {
        if (depth != 0 || word.is("}") && opening < 0) {
            return false;
        }
        boolean finished = opening >= 0 && head.isPresent() && !head.get().tailed();
        boolean indented = word.column() > column() && word.isFirstInLine();
        if (finished) {
            guessed = true;
            return !(indented && head.get().holdsSteps());
        }
        boolean atEdge = word.isFirstInLine() && word.column() == 0 && isName(word) && !words.get(next - 1).is(",");
        guessed |= atEdge;
        return atEdge;
    }
}

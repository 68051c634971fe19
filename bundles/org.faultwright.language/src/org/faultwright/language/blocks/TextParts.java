/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.language.parsing.PlainSigns;
import org.faultwright.procedure.ThingKind;

/** A text cut into its declarations and steps without being parsed: quick enough for thousands of files, and never fails. */
public final class TextParts {
    /**
     * @param kind    what it is; {@link ThingKind#WORDS} for words that begin nothing
     * @param keyword the word it begins with, such as {@code fault} or {@code measure}; empty for words that begin nothing
     * @param name    its name, or title where that is what it has; empty where there is none
     * @param start   of its first word, in UTF-16 units from 0
     * @param end     behind its last word; steps of a routine lie within it
     */
    public record Part(ThingKind kind, String keyword, String name, int start, int end) {
        boolean holds(int offset) {
            return start <= offset && offset < end;
        }
    }

    private final List<Part> parts = new ArrayList<>();
    private final List<ScannedToken> words;

    private TextParts(String text) {
        String plain = PlainSigns.of(text);
        words = ScannedToken.of(plain);
        for (Block block : BlockScanner.cut(BlockReader.Loaded.HEADS, plain).blocks()) {
            if (block.end() > block.start()) {
                add(block);
            }
        }
    }

    public static TextParts of(String text) {
        return new TextParts(text);
    }

    private void add(Block block) {
        String keyword = block.head().map(BlockHead::keyword).orElseGet(() -> beginning(block));
        parts.add(new Part(block.head().map(BlockHead::kind).orElseGet(() -> ThingKind.begunBy(keyword)), keyword, block.name(), block.start(), block.end()));
        if (block.head().filter(BlockHead::holdsSteps).isPresent()) {
            addSteps(block);
        }
    }

    private String beginning(Block block) {
        String first = words.stream().filter(word -> word.start() == block.start()).findFirst().orElse(ScannedToken.NONE).text();
        return first.equals("procedure") || first.equals("library") ? first : "";
    }

    private void addSteps(Block block) {
        List<ScannedToken> inside = words.stream().filter(word -> word.start() > block.start() && word.end() <= block.end()).toList();
        Optional<Part> open = Optional.empty();
        for (int i = 0; i + 1 < inside.size(); i++) {
            ScannedToken word = inside.get(i);
            if (word.isFirstInLine() && inside.get(i + 1).isWord() && BlockReader.Loaded.HEADS.of(word.text()).filter(BlockHead::isStep).isPresent()
                    && !BlockReader.Loaded.HEADS.isKeyword(inside.get(i + 1).text())) {
                open.ifPresent(before -> parts.add(ended(before, word.start())));
                open = Optional.of(new Part(ThingKind.STEP, word.text(), inside.get(i + 1).text(), word.start(), block.end()));
            }
        }
        open.ifPresent(parts::add);
    }

    private static Part ended(Part part, int end) {
        return new Part(part.kind(), part.keyword(), part.name(), part.start(), end);
    }

    /** The innermost part that holds an offset; absent between parts. */
    public Optional<Part> at(int offset) {
        Optional<Part> innermost = Optional.empty();
        for (Part part : parts) {
            if (part.start() > offset) {
                break;
            }
            innermost = part.holds(offset) ? Optional.of(part) : innermost;
        }
        return innermost;
    }

    /** The first part that begins behind an offset. */
    public Optional<Part> after(int offset) {
        return parts.stream().filter(part -> part.start() > offset).findFirst();
    }

    /** Whether what stands at an offset is no word of the text but a comment. */
    public boolean isComment(int offset) {
        int low = 0;
        int high = words.size() - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            ScannedToken word = words.get(middle);
            if (offset < word.start()) {
                high = middle - 1;
            } else if (offset >= word.end()) {
                low = middle + 1;
            } else {
                return false;
            }
        }
        return true;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.IParseResult;
import org.faultwright.language.parsing.PlainParser;

/** Parses blocks, each by its own rule of the grammar. Blocks that are as they were keep what was read of them. */
final class BlockParser {
    private static final String BEGINNING = "the beginning of the text";

    private final PlainParser parser;

    BlockParser(PlainParser parser) {
        this.parser = parser;
    }

    /** @param before the blocks of the text as it was; what is the same at its start and its end is taken from there */
    List<ParsedBlock> parse(String content, List<Block> blocks, List<ParsedBlock> before) {
        ParsedBlock[] parsed = new ParsedBlock[blocks.size()];
        int same = Math.min(blocks.size(), before.size());
        int front = 0;
        while (front < same && isSame(content, blocks.get(front), front == 0, before.get(front))) {
            parsed[front] = before.get(front);
            front++;
        }
        for (int back = 1; back <= same - front; back++) {
            int index = blocks.size() - back;
            if (!isSame(content, blocks.get(index), index == 0, before.get(before.size() - back))) {
                break;
            }
            parsed[index] = before.get(before.size() - back);
        }
        List<ParsedBlock> all = new ArrayList<>(parsed.length);
        for (int i = 0; i < parsed.length; i++) {
            all.add(parsed[i] != null ? parsed[i] : parse(content, blocks.get(i), i == 0));
        }
        return all;
    }

    private static boolean isSame(String content, Block block, boolean beginning, ParsedBlock before) {
        return before.kind().equals(kind(block, beginning)) && before.words().length() == block.end() - block.start()
                && content.regionMatches(block.start(), before.words(), 0, before.words().length());
    }

    private static String kind(Block block, boolean beginning) {
        return beginning ? BEGINNING : block.head().map(BlockHead::keyword).orElse("");
    }

    private ParsedBlock parse(String content, Block block, boolean beginning) {
        String words = block.text(content);
        if (block.head().isEmpty() && !beginning) {
            return new ParsedBlock(words, kind(block, beginning), Optional.empty(), Optional.empty(), List.of());
        }
        try {
            IParseResult result = beginning ? parser.parse(words) : parser.parse(words, block.head().get().rule());
            List<INode> errors = new ArrayList<>();
            result.getSyntaxErrors().forEach(errors::add);
            return new ParsedBlock(words, kind(block, beginning), Optional.ofNullable(result.getRootASTElement()), Optional.of(result.getRootNode()), errors);
        } catch (StackOverflowError tooDeep) {
            return new ParsedBlock(words, kind(block, beginning), Optional.empty(), Optional.empty(), List.of());
        }
    }
}

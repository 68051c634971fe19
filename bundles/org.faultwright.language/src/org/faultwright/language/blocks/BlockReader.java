/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.eclipse.xtext.parser.IParseResult;
import org.faultwright.language.parsing.PlainParser;
import org.faultwright.language.parsing.PlainSigns;
import org.faultwright.language.translation.KeptTranslations;
import org.faultwright.language.translation.Translator;
import org.faultwright.language.translation.Translator.Translated;
import org.faultwright.procedure.DamagedBlock;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.ThingKind;

/**
 * Reads a text as a whole where every word of it fits, else block by block, so that a damaged block costs itself only.
 * Both give the same for a text that fits.
 */
public final class BlockReader {
    /** More than any procedure has; a text of so many is read as a whole whatever stands in it. */
    private static final int MOST = 20_000;

    private final PlainParser parser = new PlainParser();
    private final BlockParser blockParser = new BlockParser(parser);

    /** Holds what the grammar says of blocks, found when it is first needed. */
    static final class Loaded {
        static final BlockHeads HEADS = new BlockHeads(PlainParser.grammar());
    }

    /** What was read of a text, for the next reading after a change. */
    public static final class Reading {
        private final Document document;
        private final List<ParsedBlock> blocks;
        private final KeptTranslations translations;

        private Reading(Document document, List<ParsedBlock> blocks, KeptTranslations translations) {
            this.document = document;
            this.blocks = blocks;
            this.translations = translations;
        }

        private static Reading whole(Document document) {
            return new Reading(document, List.of(), KeptTranslations.NONE);
        }

        public Document document() {
            return document;
        }
    }

    /** @throws StackOverflowError if an expression nests too deeply and stands in a text of too many blocks */
    public Document read(SourceText source) {
        Optional<Document> whole = whole(source);
        if (whole.isPresent()) {
            return whole.get();
        }
        return read(source, cut(source), Optional.empty()).document();
    }

    /**
     * Reads a text after a change. Only one thread at a time may read from one earlier reading, and each only once.
     *
     * @param before of the text before the change; absent for the first one
     */
    public Reading read(SourceText source, Optional<Reading> before) {
        BlockScanner.Cut cut = cut(source);
        if (cut.blocks().size() > MOST) {
            return Reading.whole(read(source));
        }
        return read(source, cut, before);
    }

    private Reading read(SourceText source, BlockScanner.Cut cut, Optional<Reading> before) {
        List<Block> blocks = cut.blocks();
        if (blocks.size() > MOST) {
            return Reading.whole(Translator.translate(source, parser.parse(source.content()), finder(source, blocks)).document());
        }
        List<ParsedBlock> parsed = blockParser.parse(source.content(), blocks, before.map(reading -> reading.blocks).orElseGet(List::of));
        Translated read = Translator.translate(source, DocumentAssembly.of(source, blocks, parsed),
                before.map(reading -> reading.translations).orElse(KeptTranslations.NONE), finder(source, blocks));
        if (!read.clean() && cut.guessed() && before.isPresent()) {
            return new Reading(whole(source).orElse(read.document()), parsed, read.kept());
        }
        return new Reading(read.document(), parsed, read.kept());
    }

    private static BlockScanner.Cut cut(SourceText source) {
        return BlockScanner.cut(Loaded.HEADS, PlainSigns.of(source.content()));
    }

    /** The text read as a whole; absent where words of it do not fit. */
    private Optional<Document> whole(SourceText source) {
        try {
            IParseResult parsed = parser.parse(source.content());
            if (parsed.hasSyntaxErrors() || parsed.getRootASTElement() == null) {
                return Optional.empty();
            }
            Translated read = Translator.translate(source, parsed,
                    offset -> finder(source, cut(source).blocks()).apply(offset));
            return read.clean() ? Optional.of(read.document()) : Optional.empty();
        } catch (StackOverflowError tooDeep) {
            return Optional.empty();
        }
    }

    private static IntFunction<Optional<DamagedBlock>> finder(SourceText source, List<Block> blocks) {
        return offset -> {
            int found = -1;
            for (int low = 0, high = blocks.size() - 1; low <= high;) {
                int middle = (low + high) >>> 1;
                if (blocks.get(middle).start() <= offset) {
                    found = middle;
                    low = middle + 1;
                } else {
                    high = middle - 1;
                }
            }
            return found < 0 ? Optional.empty() : Optional.of(damaged(source, blocks.get(found), offset, found == 0));
        };
    }

    private static DamagedBlock damaged(SourceText source, Block block, int offset, boolean beginning) {
        ThingKind kind = block.head().map(BlockHead::kind).orElse(beginning ? ThingKind.TEXT : ThingKind.WORDS);
        int headEnd = block.opening() >= 0 ? block.opening() : block.end();
        boolean headBroken = block.head().isEmpty() || block.name().isEmpty() || offset <= headEnd;
        return new DamagedBlock(kind, block.head().map(BlockHead::keyword).orElseGet(kind::word), block.name(), new SourceRange(source, block.start(), block.end() - block.start()), headBroken);
    }
}

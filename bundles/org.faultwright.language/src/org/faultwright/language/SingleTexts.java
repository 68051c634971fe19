/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.eclipse.xtext.parser.ParseException;
import org.faultwright.language.blocks.BlockReader;
import org.faultwright.language.translation.Translator;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** Reads one text without its libraries. */
final class SingleTexts {
    /** Longer than any procedure: 8 MB. */
    static final int LONGEST = 8 * 1024 * 1024;

    private static final String TOO_DEEP = "Here an expression is nested too deeply or has too many terms to be read; split it up.";

    private final BlockReader reader = new BlockReader();

    /** Whatever the text, a document comes back. */
    Document read(SourceText text) {
        return safely(text, () -> reader.read(text));
    }

    /** The same document after a change, read from the blocks that the change left alone. */
    Document read(SourceText text, AtomicReference<BlockReader.Reading> last) {
        return safely(text, () -> {
            BlockReader.Reading reading = reader.read(text, Optional.ofNullable(last.getAndSet(null)));
            last.set(reading);
            return reading.document();
        });
    }

    private static Document safely(SourceText text, Supplier<Document> read) {
        if (text.content().length() > LONGEST) {
            return unread(text, 0, "This text is longer than the 8 MB that are read; is it a procedure at all?");
        }
        try {
            return read.get();
        } catch (StackOverflowError tooDeep) {
            return unread(text, NestingDepth.deepest(text.content()), TOO_DEEP);
        } catch (ParseException stopped) {
            return unread(text, 0, "This text cannot be read (" + stopped.getMessage() + "); report this with the text.");
        }
    }

    private static Document unread(SourceText text, int offset, String message) {
        return Translator.nothing(text, List.of(new ReadingProblem(message, new SourceRange(text, offset, 0))));
    }
}

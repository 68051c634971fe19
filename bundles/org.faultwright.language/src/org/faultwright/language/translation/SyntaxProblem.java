/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.Optional;
import java.util.function.IntFunction;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.faultwright.language.parsing.QuotedWords;
import org.faultwright.language.parsing.SyntaxMessages;
import org.faultwright.procedure.DamagedBlock;
import org.faultwright.procedure.SourceRange;

/** Reports an error of the parser at its place. */
final class SyntaxProblem {
    private SyntaxProblem() {
    }

    /** @param next the word that begins the next block; absent where the text ends with the block that the error is in */
    static void report(ModelSource passage, INode error, Optional<SourceRange> next, IntFunction<Optional<DamagedBlock>> blocks) {
        String message = error.getSyntaxErrorMessage().getMessage();
        if (next.isPresent() && message.startsWith(SyntaxMessages.ENDS_BEFORE)) {
            Optional<DamagedBlock> open = blocks.apply(next.get().offset() - 1);
            passage.unreadable(next.get(), open, "This \"" + next.get().text() + "\" begins"
                    + message.substring(SyntaxMessages.ENDS_BEFORE.length() - " before".length()).replace("at its end", "before it"));
            return;
        }
        report(passage, error);
    }

    static void report(ModelSource passage, INode error) {
        String words = error.getText().strip();
        boolean unreadable = SyntaxMessages.UNREADABLE.equals(error.getSyntaxErrorMessage().getIssueCode());
        if (unreadable && words.startsWith("\"")) {
            String line = words.split("[\\r\\n]", 2)[0];
            passage.unreadable(at(passage, passage.start(error) + error.getOffset(), line.length()),
                    "The quotation mark that opens here is not closed; put one at the end of the text in this line.");
        } else if (unreadable && words.startsWith("/*")) {
            passage.unreadable(at(passage, passage.start(error) + error.getOffset(), 2), "This comment is not closed; put */ at its end.");
        } else {
            reportAtWord(passage, error);
        }
    }

    private static void reportAtWord(ModelSource passage, INode error) {
        SyntaxErrorMessage message = error.getSyntaxErrorMessage();
        String[] place = message.getIssueData();
        if (place != null && place.length == 2) {
            passage.unreadable(at(passage, passage.start(error) + Integer.parseInt(place[0]), Integer.parseInt(place[1])), message.getMessage());
        } else {
            passage.unreadable(at(passage, passage.start(error) + error.getOffset(), error.getLength()),
                    QuotedWords.words(error.getText()) + " cannot be read; correct it or delete it.");
        }
    }

    private static SourceRange at(ModelSource passage, int offset, int length) {
        int size = passage.source().content().length();
        int start = Math.max(0, Math.min(offset, size));
        return new SourceRange(passage.source(), start, Math.max(0, Math.min(length, size - start)));
    }
}

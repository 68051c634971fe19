/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** An error of the parser as a problem of the text. */
final class SyntaxProblem {
    private SyntaxProblem() {
    }

    static List<ReadingProblem> of(SourceText source, INode error) {
        int offset = Math.min(error.getOffset(), source.content().length());
        int length = Math.min(error.getLength(), source.content().length() - offset);
        return List.of(new ReadingProblem(error.getSyntaxErrorMessage().getMessage(),
                new SourceRange(source, offset, length)));
    }
}

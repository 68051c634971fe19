/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.text.DocumentText;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;

/**
 * A text put together from blocks that were parsed one by one.
 *
 * @param starts  where in the text the tree of words of each block begins
 * @param blocks  where in the text each element that a block was parsed into begins
 * @param errors  of the parser, in all blocks
 * @param nothing blocks that begin with no word of the language
 * @param refused what else cannot stand where it stands
 * @param at      from the first word to the last
 */
public record AssembledText(DocumentText document, Map<INode, Integer> starts, Map<EObject, Integer> blocks, List<Error> errors, List<SourceRange> nothing,
        List<ReadingProblem> refused, SourceRange at) {
    /** An error of the parser, with the word that begins the next block where there is one. */
    public record Error(INode error, Optional<SourceRange> next) {
    }
}

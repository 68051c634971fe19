/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.INode;

/**
 * A block as its own rule reads it; places in it count from its first word.
 *
 * @param words   what was read
 * @param kind    by the rule of which word it was read: the same words may begin a text in one place and nothing in another
 * @param element absent where nothing could be made out
 * @param root    the tree of words; absent where it nests too deeply to be read
 * @param errors  of the parser
 */
record ParsedBlock(String words, String kind, Optional<EObject> element, Optional<INode> root, List<INode> errors) {
}

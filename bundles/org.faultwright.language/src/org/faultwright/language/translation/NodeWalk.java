/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;

/** Goes through a tree of nodes in reading order, without the iterators, which cost more than the nodes. */
final class NodeWalk {
    private NodeWalk() {
    }

    /**
     * The node that comes after this one below the root; null behind the last.
     *
     * @param into whether what this node holds comes next
     */
    static INode next(INode node, INode root, boolean into) {
        if (into && node instanceof ICompositeNode composite && composite.hasChildren()) {
            return composite.getFirstChild();
        }
        INode at = node;
        while (!at.equals(root)) {
            if (at.hasNextSibling()) {
                return at.getNextSibling();
            }
            at = at.getParent();
        }
        return null;
    }
}

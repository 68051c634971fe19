/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/**
 * The words of one element by the feature they were read into: for every feature what
 * {@link NodeModelUtils#findNodesForFeature} gives, found in one walk over the element instead of one for each feature.
 */
final class WordsByFeature {
    /** The feature that a part of the grammar is assigned to, or no letters. There are as many as the grammar has parts. */
    private static final Map<EObject, String> ASSIGNED = new ConcurrentHashMap<>();

    private final EObject element;
    private final Optional<ICompositeNode> whole;
    private final Map<String, List<INode>> found = new HashMap<>();

    WordsByFeature(EObject element) {
        this.element = element;
        this.whole = Optional.ofNullable(NodeModelUtils.findActualNodeFor(element));
        whole.ifPresent(this::walk);
    }

    /** The whole element; absent when it was not read from a text. */
    Optional<ICompositeNode> whole() {
        return whole;
    }

    /** In reading order. */
    List<INode> of(String feature) {
        return found.getOrDefault(feature, List.of());
    }

    private void walk(INode root) {
        INode at = root;
        while (at != null) {
            boolean into = true;
            EObject grammar = at.getGrammarElement();
            if (grammar instanceof Action action) {
                into = false;
                if (at.getSemanticElement() == element) {
                    at = NodeWalk.next(at, root, true);
                    add(action.getFeature(), at);
                } else {
                    add(assigned(leftmost(at).getGrammarElement()), at);
                }
            } else if (grammar != null && !at.equals(root)) {
                String feature = assigned(grammar);
                into = feature.isEmpty();
                add(feature, at);
            }
            at = NodeWalk.next(at, root, into);
        }
    }

    private void add(String feature, INode node) {
        if (feature != null && !feature.isEmpty()) {
            found.computeIfAbsent(feature, f -> new ArrayList<>(2)).add(node);
        }
    }

    /** Where the words that an action takes over begin. */
    private static INode leftmost(INode action) {
        INode first = action;
        do {
            first = ((ICompositeNode) first).getFirstChild();
        } while (first.getGrammarElement() instanceof Action);
        return first;
    }

    private static String assigned(EObject grammar) {
        return ASSIGNED.computeIfAbsent(grammar, part -> {
            Assignment assignment = GrammarUtil.containingAssignment(part);
            return assignment == null ? "" : assignment.getFeature();
        });
    }
}

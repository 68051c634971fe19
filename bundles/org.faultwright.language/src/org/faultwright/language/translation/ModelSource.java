/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.ecore.EAttribute;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.parsing.PlainSigns;
import org.faultwright.language.parsing.QuotedText;
import org.faultwright.procedure.DamagedBlock;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Written;

/** Gives the words behind each part of the parsed model, with their places, and collects what could not be read. */
final class ModelSource {
    private final SourceText source;
    private final List<ReadingProblem> problems = new ArrayList<>();
    private final List<ReadingProblem> unreadable = new ArrayList<>();
    private final Map<EObject, WordsByFeature> wordsOf = new IdentityHashMap<>();

    private final Map<INode, Integer> starts;

    /** @param starts where the text of each tree of words begins; a tree that is not in it begins with the text */
    ModelSource(SourceText source, Map<INode, Integer> starts) {
        this.source = source;
        this.starts = starts;
    }

    /** Where the tree of words begins that this one belongs to. */
    int start(INode node) {
        return starts.isEmpty() ? 0 : starts.getOrDefault(node.getRootNode(), 0);
    }

    SourceText source() {
        return source;
    }

    List<ReadingProblem> problems() {
        return problems;
    }

    void problem(SourceRange at, String message) {
        problems.add(new ReadingProblem(message, at));
    }

    /** Words that do not fit at all; what else is wrong behind them in their line most likely follows from them. */
    void unreadable(SourceRange at, String message) {
        unreadable.add(new ReadingProblem(message, at));
    }

    /** @param block the one that is damaged, where the words stand behind it */
    void unreadable(SourceRange at, Optional<DamagedBlock> block, String message) {
        unreadable.add(new ReadingProblem(message, at, block));
    }

    /** How much there was to say so far. */
    int said() {
        return problems.size() + unreadable.size();
    }

    List<ReadingProblem> unreadable() {
        return unreadable;
    }

    SourceRange range(INode node) {
        return new SourceRange(source, start(node) + node.getOffset(), node.getLength());
    }

    /** The whole of an element, without white space and comments around it. */
    SourceRange range(EObject element) {
        return wordsOf(element).whole().map(this::range).orElseGet(() -> new SourceRange(source, 0, 0));
    }

    /** A place of no length behind the last word of an element, where something is missing. */
    SourceRange behind(EObject element) {
        return new SourceRange(source, range(element).end(), 0);
    }

    List<INode> nodes(EObject element, EStructuralFeature feature) {
        // references stay unset until they are linked, which never happens here
        boolean absent = feature instanceof EAttribute && !element.eIsSet(feature);
        return absent ? List.of() : wordsOf(element).of(feature.getName());
    }

    private WordsByFeature wordsOf(EObject element) {
        return wordsOf.computeIfAbsent(element, WordsByFeature::new);
    }

    Optional<INode> node(EObject element, EStructuralFeature feature) {
        List<INode> nodes = nodes(element, feature);
        return nodes.isEmpty() ? Optional.empty() : Optional.of(nodes.get(0));
    }

    /** The one statement of something; a further one is a problem, and the first one counts. */
    Optional<INode> single(EObject element, EStructuralFeature feature, String what) {
        List<INode> nodes = nodes(element, feature);
        nodes.stream().skip(1).forEach(again -> problem(range(again), saidTwice(what)));
        return nodes.isEmpty() ? Optional.empty() : Optional.of(nodes.get(0));
    }

    <T extends EObject> Optional<T> single(List<T> elements, String what) {
        elements.stream().skip(1).forEach(again -> problem(range(again), saidTwice(what)));
        return elements.isEmpty() ? Optional.empty() : Optional.of(elements.get(0));
    }

    private static String saidTwice(String what) {
        return what + " is stated twice; keep one and delete the other.";
    }

    Optional<Name> name(EObject element, EStructuralFeature feature) {
        return node(element, feature).map(this::name);
    }

    List<Name> names(EObject element, EStructuralFeature feature) {
        return nodes(element, feature).stream().map(this::name).toList();
    }

    /** The name, or an empty one behind the element's last word where a broken text leaves it out. */
    Name nameOrNone(EObject element, EStructuralFeature feature) {
        return name(element, feature).orElseGet(() -> new Name("", behind(element)));
    }

    Name name(INode node) {
        return new Name(Spelling.ofCode(words(node)), range(node));
    }

    List<Written<String>> texts(EObject element, EStructuralFeature feature) {
        return nodes(element, feature).stream().map(this::text).toList();
    }

    Written<String> text(INode node) {
        return new Written<>(words(node), range(node));
    }

    /** The text of a feature, or an empty one. */
    String textOrNone(EObject element, EStructuralFeature feature) {
        return node(element, feature).map(this::words).orElse("");
    }

    /** The words as written, comments left out and each gap as one space; of a quoted text what stands in it. */
    String words(INode node) {
        StringBuilder words = new StringBuilder();
        boolean gap = false;
        int start = start(node);
        for (INode at = node; at != null; at = NodeWalk.next(at, node, true)) {
            if (!(at instanceof ILeafNode leaf)) {
                continue;
            }
            if (leaf.isHidden()) {
                gap = true;
            } else {
                if (gap && words.length() > 0) {
                    words.append(' ');
                }
                // not the leaf's own text, which it looks up through all its parents
                words.append(source.content(), start + leaf.getTotalOffset(), start + leaf.getTotalEndOffset());
                gap = false;
            }
        }
        return words.length() > 0 && PlainSigns.opens(words.charAt(0)) ? QuotedText.read(words.toString()) : words.toString();
    }
}

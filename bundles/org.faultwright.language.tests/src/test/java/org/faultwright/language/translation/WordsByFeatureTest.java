/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.parser.IParseResult;
import org.faultwright.language.parsing.PlainParser;
import org.faultwright.language.parsing.QuotedText;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;

/** The walk of our own gives what Xtext's node model gives, in whole texts and in cut ones. */
class WordsByFeatureTest {
    private static final Path DEMO = Path.of("../../procedures-demo");
    private static final int CUTS = 12;

    private final PlainParser parser = new PlainParser();
    private int compared;

    @Test
    void should_give_the_same_nodes_and_words_as_the_node_model() throws IOException {
        try (Stream<Path> files = Files.walk(DEMO)) {
            for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).sorted().toList()) {
                String text = Files.readString(file);
                compare(text);
                Random random = new Random(text.length());
                for (int i = 0; i < CUTS; i++) {
                    int from = random.nextInt(text.length());
                    compare(text.substring(0, from) + text.substring(Math.min(text.length(), from + random.nextInt(30))));
                }
            }
        }
        assertTrue(compared > 100_000, "compared " + compared);
    }

    private void compare(String text) {
        IParseResult parsed = parser.parse(text);
        if (parsed.getRootASTElement() == null) {
            return;
        }
        ModelSource passage = new ModelSource(new SourceText("Cut.procedure", text), java.util.Map.of());
        compare(parsed.getRootASTElement(), passage);
        for (Iterator<EObject> all = parsed.getRootASTElement().eAllContents(); all.hasNext();) {
            compare(all.next(), passage);
        }
    }

    private void compare(EObject element, ModelSource passage) {
        WordsByFeature words = new WordsByFeature(element);
        for (EStructuralFeature feature : element.eClass().getEAllStructuralFeatures()) {
            List<INode> nodes = NodeModelUtils.findNodesForFeature(element, feature);
            assertEquals(nodes, words.of(feature.getName()), () -> feature.getName() + " of " + element);
            nodes.forEach(node -> assertEquals(words(node), passage.words(node)));
            compared++;
        }
    }

    private static String words(INode node) {
        StringBuilder words = new StringBuilder();
        boolean gap = false;
        for (ILeafNode leaf : node.getLeafNodes()) {
            if (!leaf.isHidden()) {
                words.append(gap && words.length() > 0 ? " " : "").append(leaf.getText());
            }
            gap = leaf.isHidden();
        }
        return words.length() > 0 && words.charAt(0) == '"' ? QuotedText.read(words.toString()) : words.toString();
    }
}

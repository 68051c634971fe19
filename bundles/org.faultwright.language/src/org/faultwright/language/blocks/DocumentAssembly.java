/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.emf.common.util.EList;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.INode;
import org.faultwright.language.parsing.LanguageWords;
import org.faultwright.language.text.DocumentText;
import org.faultwright.language.text.LibraryText;
import org.faultwright.language.text.TextFactory;
import org.faultwright.language.translation.AssembledText;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** Puts a document together from its blocks. */
final class DocumentAssembly {
    private static final String TOO_DEEP = "Here an expression is nested too deeply or has too many terms to be read; split it up.";

    private final SourceText source;
    private final List<Block> blocks;
    private final List<ParsedBlock> parsed;
    private final Map<INode, Integer> starts = new IdentityHashMap<>();
    private final Map<EObject, Integer> elements = new IdentityHashMap<>();
    private final List<AssembledText.Error> errors = new ArrayList<>();
    private final List<SourceRange> nothing = new ArrayList<>();
    private final List<ReadingProblem> refused = new ArrayList<>();

    private DocumentAssembly(SourceText source, List<Block> blocks, List<ParsedBlock> parsed) {
        this.source = source;
        this.blocks = blocks;
        this.parsed = parsed;
    }

    static AssembledText of(SourceText source, List<Block> blocks, List<ParsedBlock> parsed) {
        return new DocumentAssembly(source, blocks, parsed).text();
    }

    private AssembledText text() {
        DocumentText document = beginning();
        for (int i = 1; i < blocks.size(); i++) {
            add(blocks.get(i), parsed.get(i), i, document);
        }
        int start = blocks.get(0).start();
        int end = blocks.get(blocks.size() - 1).end();
        return new AssembledText(document, starts, elements, errors, nothing, refused, new SourceRange(source, start, Math.max(0, end - start)));
    }

    /** The line that says what the text is. Where it cannot be read, the text is what its parts can only stand in. */
    private DocumentText beginning() {
        Block first = blocks.get(0);
        if (first.end() == first.start() && blocks.size() > 1) {
            refused.add(new ReadingProblem("Expected procedure or library and a name at the start of the text.",
                    new SourceRange(source, blocks.get(1).start(), 0)));
        } else {
            read(first, parsed.get(0), 0);
        }
        if (parsed.get(0).element().orElse(null) instanceof DocumentText read) {
            clear(read);
            return read;
        }
        String word = first.text(source.content()).split("\\W", 2)[0];
        boolean library = LanguageWords.near(LanguageWords.BEGINNINGS, word).orElse(word).equals("library");
        return library ? TextFactory.eINSTANCE.createLibraryText() : TextFactory.eINSTANCE.createProcedureText();
    }

    /** Of what it held when it was put together before. */
    private static void clear(DocumentText document) {
        for (EStructuralFeature feature : document.eClass().getEAllContainments()) {
            if (feature.isMany()) {
                list(document, feature).clear();
            }
        }
    }

    private void add(Block block, ParsedBlock read, int index, DocumentText document) {
        if (block.head().isEmpty()) {
            nothing.add(range(block));
            return;
        }
        EStructuralFeature feature = document.eClass().getEStructuralFeature(block.head().get().feature());
        if (feature == null && document instanceof LibraryText) {
            String keyword = block.head().get().keyword();
            refused.add(new ReadingProblem("A library holds declarations and routines only; put this " + keyword + " into a procedure.",
                    new SourceRange(source, block.start(), keyword.length())));
            return;
        }
        read(block, read, index);
        read.element().ifPresent(element -> {
            elements.put(element, block.start());
            list(document, feature).add(element);
        });
    }

    private void read(Block block, ParsedBlock read, int index) {
        read.root().ifPresent(root -> starts.put(root, block.start()));
        if (read.root().isEmpty()) {
            refused.add(new ReadingProblem(TOO_DEEP, new SourceRange(source, block.start(), 0)));
        }
        Optional<SourceRange> next = index + 1 < blocks.size() ? Optional.of(word(blocks.get(index + 1))) : Optional.empty();
        read.errors().forEach(error -> errors.add(new AssembledText.Error(error, next)));
    }

    private SourceRange word(Block block) {
        return new SourceRange(source, block.start(), block.head().map(head -> head.keyword().length()).orElse(0));
    }

    private SourceRange range(Block block) {
        return new SourceRange(source, block.start(), block.end() - block.start());
    }

    @SuppressWarnings("unchecked")
    private static EList<EObject> list(DocumentText document, EStructuralFeature feature) {
        return (EList<EObject>) document.eGet(feature);
    }
}

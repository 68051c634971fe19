/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.CustomNode;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.StrongEmphasis;
import org.faultwright.workbench.look.PlainWords;

/** The words of one block of an explanation as they are shown, and which of them are bold. */
final class ExplanationWords extends PlainWords {
    /** In the units of the text shown. */
    record Bold(int start, int length) {
    }

    private final List<Bold> bold = new ArrayList<>();

    private ExplanationWords() {
    }

    static ExplanationWords of(Node block) {
        ExplanationWords words = new ExplanationWords();
        block.accept(words);
        return words;
    }

    /** The cells of a table, its heading first. */
    static List<List<String>> rows(TableBlock table) {
        List<List<String>> rows = new ArrayList<>();
        table.accept(new AbstractVisitor() {
            @Override
            public void visit(CustomNode node) {
                if (node instanceof TableRow) {
                    rows.add(new ArrayList<>());
                }
                if (node instanceof TableCell cell) {
                    rows.get(rows.size() - 1).add(of(cell).words());
                } else {
                    visitChildren(node);
                }
            }
        });
        return rows;
    }

    String words() {
        return text().toString();
    }

    List<Bold> bold() {
        return List.copyOf(bold);
    }

    @Override
    public void visit(ListItem item) {
        text().append(text().isEmpty() ? "\u2022 " : "\n\u2022 ");
        visitChildren(item);
    }

    @Override
    public void visit(StrongEmphasis words) {
        int start = text().length();
        visitChildren(words);
        bold.add(new Bold(start, text().length() - start));
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;

/** The words of a page without its marks. Lines end where the page ends them, and what would be HTML elsewhere is words. */
public abstract class PlainWords extends AbstractVisitor {
    private final StringBuilder text = new StringBuilder();

    /** What has been written so far, to go on with. */
    protected final StringBuilder text() {
        return text;
    }

    @Override
    public void visit(Text words) {
        text.append(words.getLiteral());
    }

    @Override
    public void visit(Code code) {
        text.append(code.getLiteral());
    }

    @Override
    public void visit(FencedCodeBlock code) {
        text.append(code.getLiteral());
    }

    @Override
    public void visit(IndentedCodeBlock code) {
        text.append(code.getLiteral());
    }

    @Override
    public void visit(HtmlBlock words) {
        text.append(words.getLiteral());
    }

    @Override
    public void visit(HtmlInline words) {
        text.append(words.getLiteral());
    }

    @Override
    public void visit(SoftLineBreak lineEnd) {
        text.append('\n');
    }

    @Override
    public void visit(HardLineBreak lineEnd) {
        text.append('\n');
    }
}

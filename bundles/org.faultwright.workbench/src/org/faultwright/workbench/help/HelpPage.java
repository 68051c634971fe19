/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import java.util.ArrayList;
import java.util.List;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;
import org.commonmark.node.Document;
import org.commonmark.node.Emphasis;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.Image;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.StrongEmphasis;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.faultwright.language.server.Colouring;
import org.faultwright.language.server.Markdown;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;
import org.faultwright.workbench.look.PlainWords;

/** Shows the Markdown that help pages are written in: headings, bold, code, lists, tables and procedure texts. */
final class HelpPage extends PlainWords {
    private static final String BETWEEN_CELLS = "    ";
    private static final String INDENT = "  ";

    private final Color heading = Palette.now().of(Use.HEADING);
    private final Color codeGround = Palette.now().of(Use.CODE_GROUND);
    private final List<HelpPicture> pictures = new ArrayList<>();
    private final List<StyleRange> styles = new ArrayList<>();

    private HelpPage() {
    }

    static void show(String markdown, StyledText into) {
        HelpPage page = new HelpPage();
        Markdown.read(markdown).accept(page);
        into.setText(page.text().toString());
        into.setStyleRanges(page.styles.toArray(StyleRange[]::new));
        HelpPicture.put(page.pictures, into);
        into.setTopIndex(0);
    }

    @Override
    public void visit(Heading title) {
        between(title);
        int start = text().length();
        visitChildren(title);
        StyleRange style = new StyleRange(start, text().length() - start, heading, null, SWT.BOLD);
        style.font = title.getLevel() > 1 ? JFaceResources.getBannerFont() : JFaceResources.getHeaderFont();
        styles.removeIf(inner -> inner.start >= start);
        styles.add(style);
        text().append('\n');
    }

    @Override
    public void visit(Paragraph paragraph) {
        between(paragraph);
        visitChildren(paragraph);
        text().append('\n');
    }

    @Override
    public void visit(BulletList list) {
        between(list);
        visitChildren(list);
    }

    @Override
    public void visit(OrderedList list) {
        between(list);
        visitChildren(list);
    }

    @Override
    public void visit(ListItem item) {
        Node list = item.getParent();
        int depth = 0;
        for (Node above = list.getParent(); above != null; above = above.getParent()) {
            depth += above instanceof ListItem ? 1 : 0;
        }
        text().append(INDENT.repeat(depth)).append(list instanceof OrderedList ordered ? number(ordered, item) + ". " : "\u2022 ");
        visitChildren(item);
    }

    private static int number(OrderedList list, ListItem item) {
        int number = list.getMarkerStartNumber() == null ? 1 : list.getMarkerStartNumber();
        for (Node before = item.getPrevious(); before != null; before = before.getPrevious()) {
            number++;
        }
        return number;
    }

    @Override
    public void visit(CustomBlock block) {
        if (block instanceof TableBlock) {
            between(block);
        }
        visitChildren(block);
    }

    @Override
    public void visit(CustomNode node) {
        if (node instanceof TableCell && node.getPrevious() != null) {
            text().append(BETWEEN_CELLS);
        }
        visitChildren(node);
        if (node instanceof TableRow) {
            text().append('\n');
        }
    }

    /** A line between what stands in the page itself; within a list, and above its first block, there is none. */
    private void between(Node block) {
        if (block.getParent() instanceof Document && block.getPrevious() != null) {
            text().append('\n');
        }
    }

    @Override
    public void visit(FencedCodeBlock block) {
        between(block);
        code(block.getLiteral());
    }

    @Override
    public void visit(IndentedCodeBlock block) {
        between(block);
        code(block.getLiteral());
    }

    @Override
    public void visit(HtmlBlock block) {
        between(block);
        super.visit(block);
        text().append('\n');
    }

    @Override
    public void visit(Image image) {
        int start = text().length();
        pictures.add(new HelpPicture(start, image.getDestination().replaceFirst("\\.png$", "")));
        text().append("\ufffc\n");
        styled(image, SWT.ITALIC);
    }

    @Override
    public void visit(StrongEmphasis words) {
        styled(words, SWT.BOLD);
    }

    @Override
    public void visit(Emphasis words) {
        styled(words, SWT.ITALIC);
    }

    @Override
    public void visit(Code code) {
        StyleRange style = new StyleRange(text().length(), code.getLiteral().length(), heading, codeGround);
        style.font = JFaceResources.getTextFont();
        styles.add(style);
        super.visit(code);
    }

    private void styled(Node words, int style) {
        int start = text().length();
        visitChildren(words);
        // words in code, or in another style within these, keep their own look: ranges may not lie over one another
        if (styles.stream().noneMatch(inner -> inner.start >= start)) {
            styles.add(new StyleRange(start, text().length() - start, null, null, style));
        }
    }

    private void code(String code) {
        int base = text().length();
        text().append(code);
        int at = 0;
        for (Colouring.Stretch stretch : Colouring.of(code)) {
            plain(base + at, stretch.offset() - at);
            StyleRange style = new StyleRange(base + stretch.offset(), stretch.length(), colour(stretch.kind()), codeGround,
                    stretch.kind() == Colouring.Kind.BEGINNING ? SWT.BOLD : SWT.NORMAL);
            style.font = JFaceResources.getTextFont();
            styles.add(style);
            at = stretch.offset() + stretch.length();
        }
        plain(base + at, code.length() - at);
    }

    private void plain(int start, int length) {
        if (length > 0) {
            StyleRange style = new StyleRange(start, length, null, codeGround);
            style.font = JFaceResources.getTextFont();
            styles.add(style);
        }
    }

    private Color colour(Colouring.Kind kind) {
        return switch (kind) {
            case BEGINNING, KEYWORD -> heading;
            case QUANTITY, ARROW -> Palette.now().of(Use.QUANTITY);
            case NAME, TEXT, COMMENT -> null;
        };
    }
}

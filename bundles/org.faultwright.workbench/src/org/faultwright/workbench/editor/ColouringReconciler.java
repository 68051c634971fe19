/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITypedRegion;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.TextAttribute;
import org.eclipse.jface.text.TextPresentation;
import org.eclipse.jface.text.presentation.IPresentationDamager;
import org.eclipse.jface.text.presentation.IPresentationRepairer;
import org.eclipse.jface.text.presentation.PresentationReconciler;
import org.eclipse.swt.custom.StyleRange;
import org.faultwright.language.server.Colouring;

/** Colours the words of a procedure as they are typed, line by line. */
public final class ColouringReconciler extends PresentationReconciler {
    public ColouringReconciler() {
        Painter painter = new Painter();
        setDamager(painter, IDocument.DEFAULT_CONTENT_TYPE);
        setRepairer(painter, IDocument.DEFAULT_CONTENT_TYPE);
    }

    private static final int LONGEST_COLOURED_LINE = 2_000;

    private static final class Painter implements IPresentationDamager, IPresentationRepairer, IDocumentListener {
        private IDocument document;
        /** Whether a comment over several lines began or ended in the lines touched, before they were. */
        private boolean commentBefore;

        @Override
        public void setDocument(IDocument opened) {
            if (document != null) {
                document.removeDocumentListener(this);
            }
            document = opened;
            if (document != null) {
                document.addDocumentListener(this);
            }
        }

        @Override
        public void documentAboutToBeChanged(DocumentEvent event) {
            try {
                IRegion first = document.getLineInformationOfOffset(event.getOffset());
                IRegion end = document.getLineInformationOfOffset(event.getOffset() + event.getLength());
                commentBefore = bounds(document.get(first.getOffset(), end.getOffset() + end.getLength() - first.getOffset()));
            } catch (BadLocationException outside) {
                commentBefore = true;
            }
        }

        @Override
        public void documentChanged(DocumentEvent event) {
            // what is to be coloured anew is asked for afterwards
        }

        private static boolean bounds(String lines) {
            return lines.contains("/*") || lines.contains("*/");
        }

        /** The lines touched; everything behind them where a comment over several lines begins or ends, or did. */
        @Override
        public IRegion getDamageRegion(ITypedRegion partition, DocumentEvent event, boolean partitioningChanged) {
            try {
                IRegion first = document.getLineInformationOfOffset(event.getOffset());
                String added = event.getText() == null ? "" : event.getText();
                int last = Math.min(document.getLength(), event.getOffset() + added.length());
                IRegion end = document.getLineInformationOfOffset(last);
                String touched = document.get(first.getOffset(), end.getOffset() + end.getLength() - first.getOffset());
                if (commentBefore || bounds(touched)) {
                    return new Region(first.getOffset(), document.getLength() - first.getOffset());
                }
                return new Region(first.getOffset(), touched.length());
            } catch (BadLocationException outside) {
                return partition;
            }
        }

        @Override
        public void createPresentation(TextPresentation presentation, ITypedRegion damage) {
            try {
                int from = startOfComment(damage.getOffset());
                int end = damage.getOffset() + damage.getLength();
                List<Colouring.Stretch> stretches = Colouring.of(document.get(from, end - from));
                for (Colouring.Stretch stretch : stretches) {
                    int start = Math.max(damage.getOffset(), from + stretch.offset());
                    int length = Math.min(end, from + stretch.offset() + stretch.length()) - start;
                    if (length > 0 && isShort(start)) {
                        presentation.addStyleRange(range(start, length, Colours.of(stretch.kind())));
                    }
                }
            } catch (BadLocationException outside) {
                // the document has changed since; it will be coloured again
                presentation.clear();
            }
        }

        /** The window system takes minutes to lay out a line of many thousand coloured words; such a line stays plain. */
        private boolean isShort(int offset) throws BadLocationException {
            return document.getLineInformationOfOffset(offset).getLength() <= LONGEST_COLOURED_LINE;
        }

        /** Where the comment around an offset begins, or the offset itself. */
        private int startOfComment(int offset) throws BadLocationException {
            String before = document.get(0, offset);
            int opened = before.lastIndexOf("/*");
            return opened >= 0 && before.indexOf("*/", opened + 2) < 0 ? opened : offset;
        }

        private static StyleRange range(int start, int length, TextAttribute look) {
            return new StyleRange(start, length, look.getForeground(), null, look.getStyle());
        }
    }
}

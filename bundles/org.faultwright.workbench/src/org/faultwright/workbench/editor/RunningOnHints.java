/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.jface.text.ITextInputListener;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.faultwright.language.server.InlineHints;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/** Shows behind the end of a line where its step leads, where the text does not say it: a step runs on to the one below. */
final class RunningOnHints implements Consumer<LiveText>, IDocumentListener {
    /** In characters, between the line and what stands behind it. */
    private static final int GAP = 3;

    private record Change(int offset, int removed, int added) {
    }

    private final ISourceViewer viewer;
    private final StyledText text;
    /** What has been typed since the hints were made; they move with it. */
    private final List<Change> since = new ArrayList<>();
    private List<InlineHints.Hint> hints = List.of();

    private RunningOnHints(ISourceViewer viewer) {
        this.viewer = viewer;
        this.text = viewer.getTextWidget();
    }

    static RunningOnHints beside(ISourceViewer viewer) {
        RunningOnHints hints = new RunningOnHints(viewer);
        hints.listen();
        return hints;
    }

    private void listen() {
        LiveTexts.get().addListener(this);
        viewer.getDocument().addDocumentListener(this);
        viewer.addTextInputListener(new ITextInputListener() {
            @Override
            public void inputDocumentAboutToBeChanged(IDocument before, IDocument next) {
                if (before != null) {
                    before.removeDocumentListener(RunningOnHints.this);
                }
            }

            @Override
            public void inputDocumentChanged(IDocument before, IDocument now) {
                hints = List.of();
                if (now != null) {
                    now.addDocumentListener(RunningOnHints.this);
                }
            }
        });
        text.addPaintListener(event -> paint(event.gc));
        text.addDisposeListener(event -> LiveTexts.get().removeListener(this));
        LiveTexts.get().of(viewer.getDocument()).ifPresent(this);
    }

    @Override
    public void accept(LiveText live) {
        List<InlineHints.Hint> made = live.document() == viewer.getDocument() ? InlineHints.runningOn(live.text()) : List.of();
        if (live.document() == viewer.getDocument() && !text.isDisposed()) {
            text.getDisplay().asyncExec(() -> show(live, made));
        }
    }

    /** What was typed meanwhile will be answered too. */
    private void show(LiveText live, List<InlineHints.Hint> made) {
        if (text.isDisposed() || live.document() != viewer.getDocument() || !live.isCurrent()) {
            return;
        }
        since.clear();
        if (!made.equals(hints)) {
            hints = made;
            text.redraw();
        }
    }

    @Override
    public void documentAboutToBeChanged(DocumentEvent event) {
        // told afterwards
    }

    @Override
    public void documentChanged(DocumentEvent event) {
        since.add(new Change(event.getOffset(), event.getLength(), event.getText() == null ? 0 : event.getText().length()));
    }

    /** Where a hint stands by now; -1 where its place was taken out. */
    private int place(InlineHints.Hint hint) {
        int at = hint.offset();
        for (Change change : since) {
            if (change.offset() < at && change.offset() + change.removed() > at) {
                return -1;
            }
            at += change.offset() < at ? change.added() - change.removed() : 0;
        }
        return at > text.getCharCount() ? -1 : at;
    }

    /** What stands behind a line, counted from 0. */
    List<String> behind(int line) {
        return hints.stream().filter(hint -> place(hint) >= 0 && text.getLineAtOffset(place(hint)) == line).map(InlineHints.Hint::text).toList();
    }

    private void paint(GC gc) {
        int first = text.getOffsetAtLine(text.getTopIndex());
        int height = text.getClientArea().height;
        int lastLine = text.getLineIndex(height);
        int last = text.getOffsetAtLine(lastLine) + text.getLine(lastLine).length();
        for (InlineHints.Hint hint : hints) {
            int at = place(hint);
            if (at >= first && at <= last) {
                paint(gc, hint.text(), text.getLineAtOffset(at));
            }
        }
    }

    private void paint(GC gc, String words, int line) {
        Point end = text.getLocationAtOffset(text.getOffsetAtLine(line) + text.getLine(line).length());
        gc.setFont(text.getFont());
        gc.setForeground(Palette.now().of(Use.BESIDE));
        gc.drawText(words, end.x + (int) (GAP * gc.getFontMetrics().getAverageCharacterWidth()), end.y, true);
    }
}

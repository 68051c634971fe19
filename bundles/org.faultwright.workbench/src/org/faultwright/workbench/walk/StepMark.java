/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.procedure.Step;

/** Marks the step in hand in its text, and leaves the keyboard where it is. */
final class StepMark {
    static final String TYPE = "org.faultwright.workbench.stepInHand";

    private final Annotation mark = new Annotation(TYPE, false, "The walk stands here");
    private Optional<IAnnotationModel> marked = Optional.empty();

    /** Where the step in hand stands in the text; of a step of a library's routine that of the step which performs the routine. */
    static Optional<Step> place(WalkState stand) {
        Walk walk = stand.walk();
        String source = stand.procedure().source().name();
        return Stream.concat(Stream.of(walk.step()), reversed(walk.callers()))
                .filter(step -> step.name().at().source().name().equals(source)).findFirst();
    }

    private static Stream<Step> reversed(List<Step> callers) {
        return IntStream.range(0, callers.size()).mapToObj(i -> callers.get(callers.size() - 1 - i));
    }

    /** @param reveal whether the cursor goes there too, so that the card and the outline follow */
    void show(ITextEditor editor, IDocument document, WalkState stand, boolean reveal) {
        clear();
        Optional<Step> at = place(stand);
        IAnnotationModel model = editor.getDocumentProvider().getAnnotationModel(editor.getEditorInput());
        if (at.isEmpty() || model == null || !document.get().equals(stand.procedure().source().content())) {
            return;
        }
        try {
            IRegion line = document.getLineInformationOfOffset(at.get().name().at().offset());
            // the conclusion that an arrow to a fault leads to has its name there and no words of its own
            int from = Math.max(line.getOffset(), Math.min(at.get().at().offset(), at.get().name().at().offset()));
            model.addAnnotation(mark, new Position(from, line.getOffset() + line.getLength() - from));
            marked = Optional.of(model);
            ITextViewer viewer = editor.getAdapter(ITextViewer.class);
            if (reveal && viewer != null) {
                viewer.setSelectedRange(at.get().name().at().offset(), 0);
                viewer.revealRange(line.getOffset(), Math.max(line.getLength(), at.get().at().end() - line.getOffset()));
            }
        } catch (BadLocationException changed) {
            clear();
        }
    }

    void clear() {
        marked.ifPresent(model -> model.removeAnnotation(mark));
        marked = Optional.empty();
    }

    /** The line that is marked in a text; absent when none is. */
    static Optional<Position> in(IAnnotationModel model) {
        for (Iterator<Annotation> all = model.getAnnotationIterator(); all.hasNext();) {
            Annotation one = all.next();
            if (one.getType().equals(TYPE)) {
                return Optional.ofNullable(model.getPosition(one));
            }
        }
        return Optional.empty();
    }
}

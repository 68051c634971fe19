/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.jface.text.source.IAnnotationModelExtension;
import org.eclipse.jface.text.source.ISourceViewer;
import org.faultwright.analysis.Finding;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/** Keeps the marks in the editor's margin and under its words in step with the findings. */
final class FindingMarks implements Consumer<LiveText> {
    private final Map<Finding, FindingMark> shown = new HashMap<>();
    private ISourceViewer viewer;

    void install(ISourceViewer marked) {
        viewer = marked;
        LiveTexts.get().addListener(this);
    }

    void uninstall() {
        LiveTexts.get().removeListener(this);
        viewer = null;
    }

    @Override
    public void accept(LiveText live) {
        ISourceViewer marked = viewer;
        if (marked == null || marked.getDocument() != live.document()) {
            return;
        }
        marked.getTextWidget().getDisplay().asyncExec(() -> show(live));
    }

    private void show(LiveText live) {
        IAnnotationModel model = viewer == null || viewer.getDocument() != live.document() ? null
                : viewer.getAnnotationModel();
        if (!(model instanceof IAnnotationModelExtension marks)) {
            return;
        }
        int end = live.document().getLength();
        Map<Annotation, Position> added = new HashMap<>();
        Annotation[] removed = shown.values().toArray(Annotation[]::new);
        shown.clear();
        for (Finding finding : live.text().findings()) {
            int from = Math.min(finding.at().offset(), end);
            FindingMark mark = new FindingMark(finding);
            shown.put(finding, mark);
            added.put(mark, new Position(from, Math.min(Math.max(1, finding.at().length()), end - from)));
        }
        marks.replaceAnnotations(removed, added);
    }
}

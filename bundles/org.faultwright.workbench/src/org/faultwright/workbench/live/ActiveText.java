/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.custom.CaretListener;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IEditorReference;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.texteditor.ITextEditor;

/** The text in front and where its cursor is; what every view that follows the writer listens to. */
public final class ActiveText {
    /** What is in front. @param offset of the cursor, in UTF-16 units */
    public record Place(LiveText live, int offset) {
    }

    private static final ActiveText ONLY = new ActiveText();

    private final List<Consumer<Optional<Place>>> listeners = new CopyOnWriteArrayList<>();
    private final Map<IViewPart, Consumer<Optional<Place>>> views = new ConcurrentHashMap<>();
    private final CaretListener caret = event -> tell();
    private ITextEditor editor;
    private StyledText widget;

    ActiveText() {
        LiveTexts.get().addListener(live -> Display.getDefault().asyncExec(() -> checked(live)));
    }

    public static ActiveText get() {
        return ONLY;
    }

    /** Follows the editors of a window from now on. */
    public void follow(IWorkbenchWindow window) {
        window.getPartService().addPartListener(new Following());
        Optional.ofNullable(window.getActivePage()).map(IWorkbenchPage::getActiveEditor).ifPresent(this::front);
        Optional.ofNullable(window.getActivePage()).ifPresent(this::seen);
    }

    /** After a start nothing is in front until it is clicked; the text that is seen is, then. */
    private void seen(IWorkbenchPage page) {
        for (IEditorReference reference : page.getEditorReferences()) {
            IWorkbenchPart part = reference.getPart(false);
            if (editor == null && part != null && page.isPartVisible(part)) {
                front(part);
            }
        }
    }

    /** The listener is called in the window's thread, at once and after each change. */
    public void addListener(Consumer<Optional<Place>> listener) {
        listeners.add(listener);
        listener.accept(place());
    }

    public void removeListener(Consumer<Optional<Place>> listener) {
        listeners.remove(listener);
    }

    /**
     * A view is told only while it is seen, and once more each time that it comes to be seen: behind another tab it has no work
     * to do. Called in the window's thread; the view leaves with {@link #removeView}.
     */
    public void addView(IViewPart view, Consumer<Optional<Place>> listener) {
        views.put(view, listener);
        if (isSeen(view)) {
            listener.accept(place());
        }
    }

    public void removeView(IViewPart view) {
        views.remove(view);
    }

    private static boolean isSeen(IViewPart view) {
        return view.getSite().getPage().isPartVisible(view);
    }

    public Optional<ITextEditor> editor() {
        return Optional.ofNullable(editor);
    }

    /** The text in front with its last answer; absent before the first answer. */
    public Optional<Place> place() {
        if (editor == null || widget == null || widget.isDisposed()) {
            return Optional.empty();
        }
        IDocument document = editor.getDocumentProvider() == null ? null
                : editor.getDocumentProvider().getDocument(editor.getEditorInput());
        return document == null ? Optional.empty()
                : LiveTexts.get().of(document).map(live -> new Place(live, widget.getCaretOffset()));
    }

    private void checked(LiveText live) {
        if (place().filter(place -> place.live().document() == live.document()).isPresent()) {
            tell();
        }
    }

    private void tell() {
        Optional<Place> place = place();
        listeners.forEach(listener -> listener.accept(place));
        views.forEach((view, listener) -> {
            if (isSeen(view)) {
                listener.accept(place);
            }
        });
    }

    private void comesToBeSeen(IWorkbenchPart part) {
        if (part instanceof IViewPart view) {
            Optional.ofNullable(views.get(view)).ifPresent(listener -> listener.accept(place()));
        }
    }

    private void front(Object part) {
        if (!(part instanceof ITextEditor text) || text == editor) {
            return;
        }
        leave();
        if (text.getAdapter(Control.class) instanceof StyledText styled) {
            editor = text;
            widget = styled;
            widget.addCaretListener(caret);
        }
        tell();
    }

    private void leave() {
        if (widget != null && !widget.isDisposed()) {
            widget.removeCaretListener(caret);
        }
        editor = null;
        widget = null;
    }

    private final class Following implements IPartListener2 {
        @Override
        public void partActivated(IWorkbenchPartReference reference) {
            front(reference.getPart(false));
        }

        @Override
        public void partBroughtToTop(IWorkbenchPartReference reference) {
            front(reference.getPart(false));
        }

        @Override
        public void partVisible(IWorkbenchPartReference reference) {
            seen(reference.getPage());
            comesToBeSeen(reference.getPart(false));
        }

        @Override
        public void partClosed(IWorkbenchPartReference reference) {
            if (reference.getPart(false) == editor) {
                leave();
                tell();
            }
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.outline;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider.IStyledLabelProvider;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.language.server.Outline;
import org.faultwright.language.server.OutlineItem;
import org.faultwright.workbench.Pictures;
import org.faultwright.workbench.live.ActiveText;

/** The parts of the text in front: declarations, faults, steps and examples in reading order. */
public final class OutlineView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.outline";

    private final Consumer<Optional<ActiveText.Place>> following = this::show;
    private TreeViewer tree;
    private Object shown;

    @Override
    public void createPartControl(Composite parent) {
        tree = new TreeViewer(parent, SWT.V_SCROLL | SWT.H_SCROLL | SWT.SINGLE);
        tree.setContentProvider(new Content());
        tree.setLabelProvider(new DelegatingStyledCellLabelProvider(new Labels()));
        tree.setInput(List.of());
        tree.addPostSelectionChangedListener(event -> {
            if (tree.getControl().isFocusControl()) {
                go((IStructuredSelection) event.getSelection());
            }
        });
        ActiveText.get().addListener(following);
    }

    private void show(Optional<ActiveText.Place> place) {
        Object now = place.map(ActiveText.Place::live).orElse(null);
        if (now != shown && !tree.getControl().isDisposed()) {
            shown = now;
            tree.setInput(place.map(there -> Outline.of(there.live().text().document())).orElseGet(List::of));
        }
    }

    private static void go(IStructuredSelection selection) {
        if (selection.getFirstElement() instanceof OutlineItem item) {
            ActiveText.get().editor().ifPresent(editor -> editor.selectAndReveal(item.nameAt().offset(),
                    item.nameAt().length()));
        }
    }

    @Override
    public void setFocus() {
        tree.getControl().setFocus();
    }

    @Override
    public void dispose() {
        ActiveText.get().removeListener(following);
        super.dispose();
    }

    private static final class Content implements ITreeContentProvider {
        @Override
        public Object[] getElements(Object items) {
            return ((List<?>) items).toArray();
        }

        @Override
        public Object[] getChildren(Object item) {
            return ((OutlineItem) item).children().toArray();
        }

        @Override
        public Object getParent(Object item) {
            return null;
        }

        @Override
        public boolean hasChildren(Object item) {
            return !((OutlineItem) item).children().isEmpty();
        }
    }

    private static final class Labels extends LabelProvider implements IStyledLabelProvider {
        @Override
        public StyledString getStyledText(Object element) {
            OutlineItem item = (OutlineItem) element;
            return new StyledString(item.label()).append("  " + item.detail(), StyledString.QUALIFIER_STYLER);
        }

        @Override
        public Image getImage(Object element) {
            return Pictures.of(((OutlineItem) element).kind()).orElse(null);
        }
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.shelf;

import java.util.Optional;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.viewers.ColumnViewerToolTipSupport;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Shelf;

/** The procedures and libraries of the workspace with their titles, status and number of findings. */
public final class ShelfView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.shelf";

    private final Runnable refresh = this::refreshLater;
    private TreeViewer tree;

    @Override
    public void createPartControl(Composite parent) {
        tree = new TreeViewer(parent, SWT.V_SCROLL | SWT.H_SCROLL);
        tree.setContentProvider(new ShelfContent());
        tree.setLabelProvider(new DelegatingStyledCellLabelProvider(new ShelfLabels()));
        ColumnViewerToolTipSupport.enableFor(tree);
        tree.setComparator(new ShelfOrder());
        tree.setInput(ResourcesPlugin.getWorkspace().getRoot());
        tree.expandToLevel(2);
        tree.addOpenListener(event -> open((IStructuredSelection) event.getSelection()));
        Shelf.get().addListener(refresh);
        new ShelfMenu(tree, getSite().getWorkbenchWindow());
        getSite().setSelectionProvider(tree);
    }

    private void open(IStructuredSelection selection) {
        if (selection.getFirstElement() instanceof IFile file) {
            Editors.open(file);
        } else if (selection.getFirstElement() instanceof IContainer folder) {
            tree.setExpandedState(folder, !tree.getExpandedState(folder));
        }
    }

    private void refreshLater() {
        Optional.ofNullable(tree).map(TreeViewer::getControl).filter(control -> !control.isDisposed())
                .ifPresent(control -> control.getDisplay().asyncExec(() -> {
                    if (!control.isDisposed()) {
                        boolean first = tree.getTree().getItemCount() == 0;
                        tree.refresh();
                        if (first) {
                            tree.expandToLevel(2);
                        }
                    }
                }));
    }

    @Override
    public void setFocus() {
        tree.getControl().setFocus();
    }

    @Override
    public void dispose() {
        Shelf.get().removeListener(refresh);
        super.dispose();
    }
}

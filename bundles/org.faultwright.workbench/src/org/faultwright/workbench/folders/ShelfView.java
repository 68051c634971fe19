/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.workbench.begin.FileDrop;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.AccessibleName;

/** The procedures and libraries of the workspace with their titles, status and number of findings. */
public final class ShelfView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.shelf";

    private final Runnable refresh = this::refreshLater;
    private final AtomicBoolean waiting = new AtomicBoolean();
    private final ShelfLabels labels = new ShelfLabels();
    private Map<IFile, String> shown = Map.of();
    private List<IProject> folders = List.of();
    private TreeViewer tree;

    @Override
    public void createPartControl(Composite parent) {
        tree = new TreeViewer(parent, SWT.V_SCROLL | SWT.H_SCROLL);
        AccessibleName.as(tree.getControl(), "Procedures");
        tree.setContentProvider(new ShelfContent());
        tree.setLabelProvider(new DelegatingStyledCellLabelProvider(labels));
        tree.getTree().addListener(SWT.MouseMove, event -> tellOf(tree.getTree().getItem(new Point(event.x, event.y))));
        tree.setComparator(new ShelfOrder());
        tree.setInput(ResourcesPlugin.getWorkspace().getRoot());
        tree.expandToLevel(2);
        tree.addOpenListener(event -> open((IStructuredSelection) event.getSelection()));
        FolderDocuments.get().addListener(refresh);
        new ShelfMenu(tree, getSite());
        FileDrop.onto(tree.getControl());
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
                .filter(control -> waiting.compareAndSet(false, true))
                .ifPresent(control -> control.getDisplay().asyncExec(() -> {
                    waiting.set(false);
                    if (!control.isDisposed()) {
                        refresh();
                    }
                }));
    }

    /** Touches only the lines that read otherwise: drawing a tree of thousands takes a second, and checks tell of news every other one. */
    private void refresh() {
        Map<IFile, String> lines = new HashMap<>();
        FolderDocuments.get().all().keySet().forEach(file -> lines.put(file, labels.line(file)));
        if (lines.keySet().equals(shown.keySet()) && folders.equals(Folders.all())) {
            tree.update(lines.keySet().stream().filter(file -> !lines.get(file).equals(shown.get(file))).toArray(), null);
        } else {
            boolean first = tree.getTree().getItemCount() == 0;
            tree.refresh();
            if (first) {
                tree.expandToLevel(2);
            }
        }
        shown = lines;
        folders = Folders.all();
    }

    /** The window system's own hint: a hint that is a window takes Tab, Return and Esc from a dialog that opens meanwhile. */
    private void tellOf(TreeItem under) {
        String hint = Optional.ofNullable(under).map(item -> labels.getToolTipText(item.getData()))
                .map(words -> words.replace("&", "&&")).orElse(null);
        if (!Objects.equals(hint, tree.getTree().getToolTipText())) {
            tree.getTree().setToolTipText(hint);
        }
    }

    @Override
    public void setFocus() {
        tree.getControl().setFocus();
    }

    @Override
    public void dispose() {
        FolderDocuments.get().removeListener(refresh);
        super.dispose();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.compare;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.TreeColumnLayout;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.ColumnWeightData;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.jface.viewers.TreeViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Tree;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.publish.page.PlainText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Icons;

/** The differences under their kinds, lost protection first, the earlier and the later words beside each other. */
final class DifferenceTree {
    /** What stands under one heading. */
    private record Group(Difference.Kind kind, List<Difference> differences) {
        String words() {
            return kind.title() + " (" + differences.size() + ")";
        }
    }

    private final TreeViewer viewer;

    /** @param onChoice told of a difference, and whether the keyboard is to go to its place in the text @param onHeading run when a heading is chosen */
    DifferenceTree(Composite parent, BiConsumer<Difference, Boolean> onChoice, Runnable onHeading) {
        TreeColumnLayout columns = new TreeColumnLayout();
        parent.setLayout(columns);
        viewer = new TreeViewer(parent, SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.SINGLE);
        Tree tree = viewer.getTree();
        AccessibleName.as(tree, "Differences");
        tree.setHeaderVisible(true);
        viewer.setContentProvider(new Content());
        column(columns, "What", 34, Difference::what, true);
        column(columns, "Earlier", 20, Difference::was, false);
        column(columns, "Now", 20, Difference::now, false);
        column(columns, "Which means", 26, Difference::meaning, false);
        tree.addListener(SWT.Selection, event -> chosen().ifPresentOrElse(one -> onChoice.accept(one, false), onHeading));
        viewer.addOpenListener(event -> chosen().ifPresent(one -> onChoice.accept(one, true)));
    }

    private void column(TreeColumnLayout layout, String title, int weight, Function<Difference, String> words, boolean heads) {
        TreeViewerColumn column = new TreeViewerColumn(viewer, SWT.NONE);
        column.getColumn().setText(title);
        column.setLabelProvider(new Labels(words, heads));
        layout.setColumnData(column.getColumn(), new ColumnWeightData(weight, 60));
    }

    Tree control() {
        return viewer.getTree();
    }

    /** The chosen difference; absent while a heading or nothing is chosen. */
    Optional<Difference> chosen() {
        return ((IStructuredSelection) viewer.getSelection()).getFirstElement() instanceof Difference one ? Optional.of(one) : Optional.empty();
    }

    /** The chosen heading, which may be cut off in its column. */
    Optional<String> heading() {
        return ((IStructuredSelection) viewer.getSelection()).getFirstElement() instanceof Group group ? Optional.of(group.words()) : Optional.empty();
    }

    /** Shows other differences; the chosen line stays chosen while it is there. */
    void show(List<Difference> differences) {
        Optional<Difference> before = chosen();
        Map<Difference.Kind, List<Difference>> byKind = differences.stream()
                .collect(Collectors.groupingBy(Difference::kind, TreeMap::new, Collectors.toList()));
        Tree tree = viewer.getTree();
        tree.setRedraw(false);
        try {
            viewer.setInput(byKind.entrySet().stream().map(entry -> new Group(entry.getKey(), entry.getValue())).toList());
            viewer.expandAll();
            before.flatMap(was -> differences.stream().filter(one -> one.kind() == was.kind() && one.what().equals(was.what())).findFirst())
                    .ifPresent(one -> viewer.setSelection(new StructuredSelection(one), true));
        } finally {
            tree.setRedraw(true);
        }
    }

    private static final class Content implements ITreeContentProvider {
        @Override
        public Object[] getElements(Object input) {
            return input instanceof List<?> groups ? groups.toArray() : new Object[0];
        }

        @Override
        public Object[] getChildren(Object element) {
            return element instanceof Group group ? group.differences().toArray() : new Object[0];
        }

        @Override
        public Object getParent(Object element) {
            return null;
        }

        @Override
        public boolean hasChildren(Object element) {
            return element instanceof Group;
        }
    }

    private static final class Labels extends ColumnLabelProvider {
        private final Function<Difference, String> words;
        private final boolean heads;

        Labels(Function<Difference, String> words, boolean heads) {
            this.words = words;
            this.heads = heads;
        }

        @Override
        public String getText(Object element) {
            if (element instanceof Group group) {
                return heads ? group.words() : "";
            }
            return PlainText.line(words.apply((Difference) element));
        }

        @Override
        public Image getImage(Object element) {
            return heads && element instanceof Group group && group.kind() == Difference.Kind.PROTECTION
                    ? Icons.of("warning").orElse(null) : null;
        }

        @Override
        public Font getFont(Object element) {
            return element instanceof Group ? JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT) : null;
        }
    }
}

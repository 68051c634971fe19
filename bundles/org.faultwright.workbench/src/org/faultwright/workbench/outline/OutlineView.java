/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.outline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
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
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Icons;

/**
 * The parts of the text in front: declarations, faults, steps and examples in reading order. It is made away from the
 * window's thread. Where only titles changed, their lines alone are touched; where a name or the order did, the tree is made anew, and what is
 * open in it stays open.
 */
public final class OutlineView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.outline";
    /** So many lines are made in one go: some milliseconds of the window's thread. */
    private static final int AT_ONCE = 200;

    /** An item by its way from the top, which stays the same while other places of the text change. */
    private record Node(String way, OutlineItem item, List<Node> children) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Node node && way.equals(node.way);
        }

        @Override
        public int hashCode() {
            return way.hashCode();
        }

        /** This and all within it that read otherwise than before. */
        Stream<Node> changed(Map<String, OutlineItem> before) {
            OutlineItem known = before.get(way);
            boolean reads = known != null && known.detail().equals(item.detail());
            return Stream.concat(reads ? Stream.empty() : Stream.of(this), children.stream().flatMap(child -> child.changed(before)));
        }

        Stream<String> ways() {
            return Stream.concat(Stream.of(way), children.stream().flatMap(Node::ways));
        }
    }

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private final Map<String, OutlineItem> items = new HashMap<>();
    private final Job making = new OutlineJob();
    private volatile Optional<LiveText> wanted = Optional.empty();
    private TreeViewer tree;
    private List<String> shown = List.of();

    @Override
    public void createPartControl(Composite parent) {
        tree = new TreeViewer(parent, SWT.V_SCROLL | SWT.H_SCROLL | SWT.SINGLE);
        AccessibleName.as(tree.getControl(), "Outline of the text");
        tree.setContentProvider(new Content());
        tree.setLabelProvider(new DelegatingStyledCellLabelProvider(new Labels()));
        tree.setUseHashlookup(true);
        tree.setInput(List.of());
        tree.addPostSelectionChangedListener(event -> {
            if (tree.getControl().isFocusControl()) {
                go((IStructuredSelection) event.getSelection());
            }
        });
        making.setSystem(true);
        ActiveText.get().addView(this, following);
    }

    private void follow(Optional<ActiveText.Place> place) {
        Optional<LiveText> now = place.map(ActiveText.Place::live);
        if (!same(now, wanted)) {
            wanted = now;
            making.schedule(50);
        }
    }

    private static boolean same(Optional<LiveText> one, Optional<LiveText> other) {
        return one.orElse(null) == other.orElse(null);
    }

    private final class OutlineJob extends Job {
        OutlineJob() {
            super("Outline");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            Optional<LiveText> of = wanted;
            List<Node> nodes = of.map(live -> nodes("", Outline.of(live.text().document()))).orElseGet(List::of);
            List<String> ways = nodes.stream().flatMap(Node::ways).toList();
            if (!tree.getControl().isDisposed()) {
                tree.getControl().getDisplay().asyncExec(() -> show(of, nodes, ways));
            }
            return Status.OK_STATUS;
        }

        private List<Node> nodes(String above, List<OutlineItem> of) {
            Map<String, Integer> met = new HashMap<>();
            List<Node> nodes = new ArrayList<>();
            for (OutlineItem item : of) {
                String way = above + "/" + item.keyword() + " " + item.label();
                int again = met.merge(way, 1, Integer::sum);
                way += again == 1 ? "" : " " + again;
                nodes.add(new Node(way, item, nodes(way, item.children())));
            }
            return nodes;
        }
    }

    private void show(Optional<LiveText> of, List<Node> nodes, List<String> ways) {
        if (tree.getControl().isDisposed() || !same(of, wanted)) {
            return;
        }
        Object[] changed = nodes.stream().flatMap(node -> node.changed(items)).toArray();
        items.clear();
        nodes.forEach(this::remember);
        if (ways.equals(shown)) {
            tree.update(changed, null);
            return;
        }
        shown = ways;
        Object[] open = tree.getExpandedElements();
        List<Node> there = new ArrayList<>(nodes.subList(0, Math.min(AT_ONCE, nodes.size())));
        tree.getControl().setRedraw(false);
        try {
            tree.setInput(there);
            tree.setExpandedElements(open);
        } finally {
            tree.getControl().setRedraw(true);
        }
        goOn(there, nodes, open);
    }

    /** The lines that are still missing, some at a time: who types meanwhile is not held up. Another text, or other lines, end it. */
    private void goOn(List<Node> there, List<Node> nodes, Object[] open) {
        if (there.size() == nodes.size()) {
            return;
        }
        tree.getControl().getDisplay().asyncExec(() -> {
            if (tree.getControl().isDisposed() || tree.getInput() != there) {
                return;
            }
            List<Node> more = nodes.subList(there.size(), Math.min(there.size() + AT_ONCE, nodes.size()));
            tree.add(there, more.toArray());
            Set<Object> wanted = new HashSet<>(List.of(open));
            more.stream().filter(wanted::contains).forEach(node -> tree.setExpandedState(node, true));
            there.addAll(more);
            goOn(there, nodes, open);
        });
    }

    private void remember(Node node) {
        items.put(node.way(), node.item());
        node.children().forEach(this::remember);
    }

    private void go(IStructuredSelection selection) {
        if (selection.getFirstElement() instanceof Node node && items.containsKey(node.way())) {
            OutlineItem item = items.get(node.way());
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
        ActiveText.get().removeView(this);
        making.cancel();
        super.dispose();
    }

    private static final class Content implements ITreeContentProvider {
        @Override
        public Object[] getElements(Object nodes) {
            return ((List<?>) nodes).toArray();
        }

        @Override
        public Object[] getChildren(Object node) {
            return ((Node) node).children().toArray();
        }

        @Override
        public Object getParent(Object node) {
            return null;
        }

        @Override
        public boolean hasChildren(Object node) {
            return !((Node) node).children().isEmpty();
        }
    }

    private final class Labels extends LabelProvider implements IStyledLabelProvider {
        @Override
        public StyledString getStyledText(Object element) {
            OutlineItem item = items.getOrDefault(((Node) element).way(), ((Node) element).item());
            return new StyledString(item.label()).append("  " + item.detail(), StyledString.QUALIFIER_STYLER);
        }

        @Override
        public Image getImage(Object element) {
            OutlineItem item = ((Node) element).item();
            return Icons.of(item.kind(), item.keyword()).orElse(null);
        }
    }
}

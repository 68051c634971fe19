/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeColumn;
import org.eclipse.swt.widgets.TreeItem;
import org.faultwright.language.server.FoundPlace;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Icons;
import org.faultwright.workbench.look.Palette;

/** The places that were found, under the procedure that each stands in. */
final class FoundTree {
    /** More lines than anybody reads through; what is left out is told. */
    static final int MOST_SHOWN = 2_000;
    private static final int MOST_REMARKS = 20;
    /** Of the width, in hundredths. */
    private static final int[] WIDTHS = {66, 25, 9};

    private final Tree tree;
    private int shown;
    private int remarks;
    private TreeItem more;

    FoundTree(Composite parent, Runnable open) {
        tree = new Tree(parent, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL);
        AccessibleName.as(tree, "Places found");
        tree.setHeaderVisible(true);
        for (String title : new String[] {"What it says", "What it is", "Line"}) {
            new TreeColumn(tree, SWT.NONE).setText(title);
        }
        tree.addListener(SWT.Resize, event -> fit());
        tree.addListener(SWT.DefaultSelection, event -> open.run());
    }

    private void fit() {
        int width = tree.getClientArea().width;
        for (int i = 0; i < WIDTHS.length; i++) {
            tree.getColumn(i).setWidth(width * WIDTHS[i] / 100);
        }
    }

    Control control() {
        return tree;
    }

    void clear() {
        tree.removeAll();
        shown = 0;
        remarks = 0;
    }

    void add(FoundInFile found) {
        found.remark().ifPresent(this::tell);
        if (!found.places().isEmpty() && shown < MOST_SHOWN) {
            fill(new TreeItem(tree, SWT.NONE), found);
        }
    }

    /** A folder may be full of files that are no procedures; the first are named, the others counted. */
    private void tell(String remark) {
        remarks++;
        if (remarks > MOST_REMARKS + 1) {
            more.setText(0, remarks - MOST_REMARKS + " more files could not be looked through or are not in UTF-8.");
            return;
        }
        more = new TreeItem(tree, SWT.NONE);
        more.setText(0, remark);
        more.setImage(Icons.of("warning").orElse(null));
    }

    private void fill(TreeItem item, FoundInFile found) {
        String file = found.file().getName().replaceFirst("\\.procedure$", "");
        item.setText(0, found.title().isEmpty() ? file : found.title());
        item.setText(1, found.title().isEmpty() ? "" : file);
        item.setForeground(1, Palette.now().of(Palette.Use.BESIDE));
        item.setImage(Icons.of("procedure").orElse(null));
        item.setData(found);
        for (FoundPlace place : found.places()) {
            if (shown < MOST_SHOWN) {
                shown++;
                TreeItem line = new TreeItem(item, SWT.NONE);
                line.setText(0, place.line());
                line.setText(1, place.name().isEmpty() ? place.what() : place.what() + "  " + place.name());
                line.setText(2, String.valueOf(place.at().line()));
                line.setForeground(1, Palette.now().of(Palette.Use.BESIDE));
                line.setData(place);
            }
        }
        item.setExpanded(true);
    }

    /** Puts what is found in one file now in the place of what was found in it; what is chosen stays chosen. */
    void replace(FoundInFile found) {
        for (TreeItem item : tree.getItems()) {
            if (item.getData() instanceof FoundInFile before && before.file().equals(found.file())) {
                boolean open = item.getExpanded();
                int chosen = tree.getSelectionCount() == 1 && tree.getSelection()[0].getParentItem() == item ? item.indexOf(tree.getSelection()[0]) : -1;
                shown -= item.getItemCount();
                item.removeAll();
                if (found.places().isEmpty()) {
                    item.dispose();
                    return;
                }
                fill(item, found);
                item.setExpanded(open);
                if (chosen >= 0 && chosen < item.getItemCount()) {
                    tree.setSelection(item.getItem(chosen));
                }
                return;
            }
        }
        add(found);
    }

    /** Goes to the first place with the keys. */
    void focusFirst() {
        if (tree.getItemCount() > 0) {
            if (tree.getSelectionCount() == 0) {
                TreeItem first = tree.getItem(0);
                tree.setSelection(first.getItemCount() > 0 ? first.getItem(0) : first);
                tree.notifyListeners(SWT.Selection, new Event());
            }
            tree.setFocus();
        }
    }

    Optional<FoundPlace> chosen() {
        return tree.getSelectionCount() == 1 && tree.getSelection()[0].getData() instanceof FoundPlace place ? Optional.of(place) : Optional.empty();
    }

    /** The file of the chosen procedure, or of the chosen place. */
    Optional<IFile> chosenFile() {
        if (tree.getSelectionCount() != 1) {
            return Optional.empty();
        }
        TreeItem item = tree.getSelection()[0];
        TreeItem top = item.getParentItem() == null ? item : item.getParentItem();
        return top.getData() instanceof FoundInFile found ? Optional.of(found.file()) : Optional.empty();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.NotApart;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.LabelledFields;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/** Beside the table: which faults are shown and in what order, and all there is to say of the cell in hand and of faults that nothing tells apart. */
final class TableSidePanel {
    private static final String ALL = "all faults";

    private final Combo shown;
    private final Combo order;
    private final StyledText words;
    private List<String> groups = List.of();

    /** @param choose told of the group that is to be shown alone, by how it is called; of nothing for all faults */
    TableSidePanel(Composite parent, Consumer<ShownSheet.Sorting> sort, Consumer<String> choose) {
        Composite area = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).margins(8, 4).spacing(6, 4).applyTo(area);
        shown = LabelledFields.choice(area, "Show", List.of(ALL), () -> choose.accept(chosen()));
        order = LabelledFields.choice(area, "Sort", Stream.of(ShownSheet.Sorting.values()).map(ShownSheet.Sorting::words).toList(), () -> sort.accept(sorting()));
        Stream.of(shown, order).forEach(one -> GridDataFactory.fillDefaults().grab(true, false).hint(60, SWT.DEFAULT).applyTo(one));
        words = new StyledText(area, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        words.setAlwaysShowScrollBars(false);
        words.setBackground(Palette.now().of(Use.WINDOW));
        words.setForeground(Palette.now().of(Use.NAME));
        words.setFont(area.getFont());
        AccessibleName.as(words, "About the cell in hand");
        words.addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, true).applyTo(words);
    }

    private String chosen() {
        return shown.getSelectionIndex() <= 0 ? "" : groups.get(shown.getSelectionIndex() - 1);
    }

    private ShownSheet.Sorting sorting() {
        return ShownSheet.Sorting.values()[Math.max(0, order.getSelectionIndex())];
    }

    void show(FaultSheet sheet, Optional<NotApart> chosen, ShownSheet.Sorting sorting) {
        List<String> named = sheet.groups().stream().map(NotApart::named).distinct().toList();
        List<String> items = new ArrayList<>(List.of(ALL));
        sheet.groups().stream().map(group -> (group.foundAsOne() ? "found as one: " : "not told apart: ") + group.named()).distinct().forEach(items::add);
        if (!List.of(shown.getItems()).equals(items)) {
            shown.setItems(items.toArray(String[]::new));
        }
        groups = named;
        shown.select(chosen.map(group -> named.indexOf(group.named()) + 1).orElse(0));
        order.select(sorting.ordinal());
    }

    void forget() {
        groups = List.of();
        shown.setItems(ALL);
        shown.select(0);
        words.setText("");
    }

    /** @param group sentences on the faults that are shown alone; they come first */
    void tell(String cell, List<String> group) {
        String first = String.join("\n", group);
        String all = first.isEmpty() ? cell : first + "\n\n" + cell;
        if (!words.getText().equals(all)) {
            words.setText(all);
        }
    }

    /** Says why nothing was written. */
    void refuse(List<String> sentences) {
        String all = "Not written. " + String.join("\n", sentences);
        words.setText(all);
        words.setStyleRange(new StyleRange(0, all.length(), Palette.now().of(Use.ERROR), null, SWT.BOLD));
    }

    /** What is said. */
    String said() {
        return words.getText();
    }

    Combo shown() {
        return shown;
    }

    Combo order() {
        return order;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.TableColumnLayout;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.ColumnWeightData;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.workbench.Pictures;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.Shelf;

/** What was found in the text in front and in every other text, and the chosen finding in full. */
public final class FindingsView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.findings";

    private final Runnable shelf = this::refreshLater;
    private final Consumer<Optional<ActiveText.Place>> front = place -> refreshIfNew(place);
    private TableViewer table;
    private FindingPage page;
    private Object shown;

    @Override
    public void createPartControl(Composite parent) {
        SashForm halves = new SashForm(parent, SWT.HORIZONTAL);
        table = table(new Composite(halves, SWT.NONE));
        page = new FindingPage(halves);
        halves.setWeights(58, 42);
        Shelf.get().addListener(shelf);
        ActiveText.get().addListener(front);
        refresh();
    }

    private TableViewer table(Composite parent) {
        TableColumnLayout columns = new TableColumnLayout();
        parent.setLayout(columns);
        TableViewer viewer = new TableViewer(parent, SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.SINGLE);
        viewer.getTable().setHeaderVisible(true);
        viewer.setContentProvider(ArrayContentProvider.getInstance());
        column(viewer, columns, "What was found", 70, new ColumnLabelProvider() {
            @Override
            public String getText(Object element) {
                return ((Finding) element).message();
            }

            @Override
            public Image getImage(Object element) {
                return Pictures.of(Pictures.of(((Finding) element).severity())).orElse(null);
            }
        });
        column(viewer, columns, "Where", 30, new ColumnLabelProvider() {
            @Override
            public String getText(Object element) {
                Finding finding = (Finding) element;
                String file = finding.at().source().name();
                return file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1)
                        .replaceFirst("\\.procedure$", "") + ", line " + finding.at().line();
            }
        });
        viewer.addSelectionChangedListener(event -> chosen(event.getStructuredSelection())
                .ifPresent(ChosenFinding.get()::choose));
        viewer.addOpenListener(event -> chosen((IStructuredSelection) event.getSelection())
                .ifPresent(finding -> Editors.show(finding.at())));
        return viewer;
    }

    private static void column(TableViewer viewer, TableColumnLayout layout, String title, int weight,
            ColumnLabelProvider labels) {
        TableViewerColumn column = new TableViewerColumn(viewer, SWT.NONE);
        column.getColumn().setText(title);
        column.setLabelProvider(labels);
        layout.setColumnData(column.getColumn(), new ColumnWeightData(weight));
    }

    private static Optional<Finding> chosen(IStructuredSelection selection) {
        return selection.getFirstElement() instanceof Finding finding ? Optional.of(finding) : Optional.empty();
    }

    private void refreshIfNew(Optional<ActiveText.Place> place) {
        Object now = place.map(ActiveText.Place::live).orElse(null);
        if (now != shown) {
            shown = now;
            refresh();
        }
    }

    private void refreshLater() {
        if (!table.getControl().isDisposed()) {
            table.getControl().getDisplay().asyncExec(this::refresh);
        }
    }

    private void refresh() {
        if (table == null || table.getControl().isDisposed()) {
            return;
        }
        List<Finding> findings = findings();
        table.setInput(findings);
        setContentDescription(summary(findings));
        ChosenFinding.get().finding().ifPresent(old -> findings.stream().filter(now -> same(old, now)).findFirst()
                .ifPresentOrElse(now -> table.setSelection(new StructuredSelection(now)), ChosenFinding.get()::forget));
    }

    private static boolean same(Finding one, Finding other) {
        return one.rule().equals(other.rule()) && one.message().equals(other.message())
                && one.at().source().name().equals(other.at().source().name());
    }

    /** Those of the text in front first, as it stands in the editor; then those of the other files. */
    private static List<Finding> findings() {
        Optional<LiveText> front = ActiveText.get().place().map(ActiveText.Place::live);
        List<Finding> all = new ArrayList<>();
        front.ifPresent(live -> live.text().findings().stream().sorted(Comparator.comparing(Finding::severity))
                .forEach(all::add));
        Shelf.get().all().entrySet().stream()
                .filter(entry -> front.map(live -> !live.file().equals(entry.getKey())).orElse(true))
                .sorted(Comparator.comparing(entry -> entry.getKey().getFullPath().toString()))
                .map(entry -> LiveTexts.get().of(entry.getKey()).map(LiveText::text).orElse(entry.getValue()))
                .flatMap(text -> text.findings().stream()).forEach(all::add);
        return all;
    }

    private static String summary(List<Finding> findings) {
        if (!Shelf.get().isComplete()) {
            return "Reading the library\u2026";
        }
        int files = Shelf.get().all().size();
        String where = files == 1 ? " in 1 file" : " in " + files + " files";
        return findings.isEmpty() ? "Nothing found" + where + "." : Severity.counted(findings) + where;
    }

    @Override
    public void setFocus() {
        table.getControl().setFocus();
    }

    @Override
    public void dispose() {
        Shelf.get().removeListener(shelf);
        ActiveText.get().removeListener(front);
        page.dispose();
        super.dispose();
    }
}

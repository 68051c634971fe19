/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.layout.TableColumnLayout;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.ColumnWeightData;
import org.eclipse.jface.viewers.ILazyContentProvider;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.language.server.WantedWords;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Icons;

/** What was found in the text in front and in every other text, and the chosen finding in full. */
public final class FindingsView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.findings";

    private static final String STOP = "Stop checking";
    private static final String WHERE = "Where";
    private static final String GO_ON = "Go on checking";
    private static final int MILLISECONDS_FOR_MORE_NEWS = 80;

    private final Runnable shelf = this::refreshLater;
    private final Job gathering = new Gathering();
    private volatile Optional<LiveText> inFront = Optional.empty();
    private List<Finding> rows = List.of();
    private final Consumer<Optional<ActiveText.Place>> front = place -> refreshIfNew(place);
    private final Action stopping = new Action(STOP) {
        @Override
        public void run() {
            if (FolderDocuments.get().progress().running()) {
                FolderDocuments.get().stop();
            } else {
                FolderDocuments.get().goOn();
            }
        }
    };
    private volatile FindingsFilter wish = FindingsFilter.ALL;
    private Text words;
    private Combo order;
    private Button onlyHere;
    private TableViewer table;
    private FindingPage page;
    private LiveText shown;

    @Override
    public void createPartControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(3).spacing(6, 4).margins(4, 4).applyTo(all);
        wishes(all);
        SashForm halves = new SashForm(all, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().span(3, 1).grab(true, true).applyTo(halves);
        table = table(new Composite(halves, SWT.NONE));
        page = new FindingPage(halves);
        halves.setWeights(58, 42);
        stopping.setImageDescriptor(Icons.descriptor("stop").orElse(null));
        stopping.setEnabled(false);
        ActionContributionItem button = new ActionContributionItem(stopping);
        button.setMode(ActionContributionItem.MODE_FORCE_TEXT);
        getViewSite().getActionBars().getToolBarManager().add(button);
        gathering.setSystem(true);
        FolderDocuments.get().addListener(shelf);
        ActiveText.get().addListener(front);
        refreshLater();
    }

    private void wishes(Composite parent) {
        words = new Text(parent, SWT.SEARCH | SWT.ICON_CANCEL);
        words.setMessage("Only those that say \u2026");
        AccessibleName.as(words, "Show only the findings that say");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(words);
        order = new Combo(parent, SWT.READ_ONLY | SWT.DROP_DOWN);
        order.setItems(Arrays.stream(FindingsFilter.Order.values()).map(FindingsFilter.Order::words).toArray(String[]::new));
        order.select(0);
        AccessibleName.as(order, "Order of the findings");
        onlyHere = new Button(parent, SWT.CHECK);
        onlyHere.setText("Only &this procedure");
        words.addListener(SWT.Modify, event -> wish());
        words.addListener(SWT.DefaultSelection, event -> focusFirst());
        words.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ARROW_DOWN) {
                focusFirst();
                event.doit = false;
            }
        });
        order.addListener(SWT.Selection, event -> wish());
        onlyHere.addListener(SWT.Selection, event -> wish());
    }

    private void wish() {
        wish = new FindingsFilter(WantedWords.of(words.getText()), FindingsFilter.Order.values()[Math.max(0, order.getSelectionIndex())], onlyHere.getSelection());
        refreshLater();
    }

    private void focusFirst() {
        if (table.getTable().getItemCount() > 0 && table.getTable().getSelectionIndex() < 0) {
            table.getTable().setSelection(0);
            ChosenFinding.get().choose(rows.get(0));
        }
        table.getTable().setFocus();
    }

    /** Whether only the findings of the text in front are wanted. */
    boolean isOfThisProcedureOnly() {
        return wish.onlyHere();
    }

    /** What is listed, in its order. */
    List<Finding> rows() {
        return rows;
    }

    private TableViewer table(Composite parent) {
        TableColumnLayout columns = new TableColumnLayout();
        parent.setLayout(columns);
        TableViewer viewer = new TableViewer(parent, SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.SINGLE | SWT.VIRTUAL);
        AccessibleName.as(viewer.getTable(), "Findings");
        viewer.getTable().setHeaderVisible(true);
        viewer.setUseHashlookup(true);
        viewer.setContentProvider((ILazyContentProvider) row -> {
            if (row < rows.size()) {
                viewer.replace(rows.get(row), row);
            }
        });
        column(viewer, columns, "What was found", 70, new ColumnLabelProvider() {
            @Override
            public String getText(Object element) {
                return ((Finding) element).message();
            }

            @Override
            public Image getImage(Object element) {
                return Icons.of(Icons.of(((Finding) element).severity())).orElse(null);
            }
        });
        column(viewer, columns, WHERE, 30, new ColumnLabelProvider() {
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

    private void column(TableViewer viewer, TableColumnLayout layout, String title, int weight,
            ColumnLabelProvider labels) {
        TableViewerColumn column = new TableViewerColumn(viewer, SWT.NONE);
        column.getColumn().setText(title);
        column.getColumn().addListener(SWT.Selection, event -> {
            order.select((title.equals(WHERE) ? FindingsFilter.Order.PROCEDURE : FindingsFilter.Order.KIND).ordinal());
            wish();
        });
        column.setLabelProvider(labels);
        layout.setColumnData(column.getColumn(), new ColumnWeightData(weight));
    }

    private static Optional<Finding> chosen(IStructuredSelection selection) {
        return selection.getFirstElement() instanceof Finding finding ? Optional.of(finding) : Optional.empty();
    }

    private void refreshIfNew(Optional<ActiveText.Place> place) {
        LiveText now = place.map(ActiveText.Place::live).orElse(null);
        if (now != shown) {
            shown = now;
            inFront = Optional.ofNullable(now);
            refreshLater();
        }
    }

    private void refreshLater() {
        gathering.schedule(MILLISECONDS_FOR_MORE_NEWS);
    }

    /** Gathers and sorts away from the window's thread. */
    private final class Gathering extends Job {
        Gathering() {
            super("Findings");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            List<Finding> all = findings(inFront);
            List<Finding> findings = wish.granted(all, inFront.map(live -> LiveTexts.path(live.file())));
            String summary = findings.size() == all.size() ? summary(all) : findings.size() + " shown of " + all.size() + ".  " + summary(all);
            if (!table.getControl().isDisposed()) {
                table.getControl().getDisplay().asyncExec(() -> show(findings, summary));
            }
            return Status.OK_STATUS;
        }
    }

    /** Touches only the rows that are seen. */
    private void show(List<Finding> findings, String summary) {
        if (table.getControl().isDisposed()) {
            return;
        }
        boolean other = !findings.equals(rows);
        rows = findings;
        if (other) {
            table.getTable().deselectAll();
            table.setItemCount(findings.size());
            table.getTable().clearAll();
        }
        FolderDocuments.Progress progress = FolderDocuments.get().progress();
        stopping.setEnabled(!FolderDocuments.get().isComplete());
        stopping.setText(progress.running() || FolderDocuments.get().isComplete() ? STOP : GO_ON);
        stopping.setToolTipText(stopping.getText());
        if (!summary.equals(getContentDescription())) {
            setContentDescription(summary);
        }
        if (other) {
            ChosenFinding.get().finding().ifPresent(this::chooseAgain);
        }
    }

    private void chooseAgain(Finding old) {
        for (int row = 0; row < rows.size(); row++) {
            if (same(old, rows.get(row))) {
                table.getTable().setSelection(row);
                ChosenFinding.get().choose(rows.get(row));
                return;
            }
        }
        ChosenFinding.get().forget();
    }

    private static boolean same(Finding one, Finding other) {
        return one.rule().equals(other.rule()) && one.message().equals(other.message())
                && one.at().source().name().equals(other.at().source().name());
    }

    /** Those of the text in front first, as it stands in the editor; then those of the other files. */
    private static List<Finding> findings(Optional<LiveText> front) {
        List<Finding> all = new ArrayList<>();
        front.ifPresent(live -> live.text().findings().stream().sorted(Comparator.comparing(Finding::severity))
                .forEach(all::add));
        FolderDocuments.get().all().entrySet().stream()
                .filter(entry -> front.map(live -> !live.file().equals(entry.getKey())).orElse(true))
                .sorted(Comparator.comparing(entry -> entry.getKey().getFullPath().toString()))
                .map(entry -> LiveTexts.get().of(entry.getKey()).map(live -> live.text().findings())
                        .orElse(entry.getValue().findings()))
                .forEach(all::addAll);
        return all;
    }

    private static String summary(List<Finding> findings) {
        FolderDocuments.Progress progress = FolderDocuments.get().progress();
        if (!FolderDocuments.get().isComplete()) {
            return (progress.running() ? "Checking" : "Stopped") + ", " + progress.checked() + " of " + progress.all() + " files checked.  "
                    + Severity.counted(findings);
        }
        return summary(FolderDocuments.get().all().size(), findings);
    }

    /** Where nothing was looked at, nothing is said to be right. */
    static String summary(int files, List<Finding> findings) {
        if (files == 0 && findings.isEmpty()) {
            return "No procedure is open yet, so nothing was checked.";
        }
        String where = files == 1 ? " in 1 file" : " in " + files + " files";
        return findings.isEmpty() ? "Nothing found" + where + "." : Severity.counted(findings) + where;
    }

    @Override
    public void setFocus() {
        table.getControl().setFocus();
    }

    @Override
    public void dispose() {
        FolderDocuments.get().removeListener(shelf);
        ActiveText.get().removeListener(front);
        gathering.cancel();
        page.dispose();
        super.dispose();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.HeadedTable;
import org.faultwright.language.beginning.ImportedLines;
import org.faultwright.language.beginning.SheetGrid;
import org.faultwright.language.beginning.TableFile;
import org.faultwright.language.beginning.TableKind;
import org.faultwright.language.beginning.UnusableTable;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.LabelledFields;
import org.faultwright.workbench.look.ScrolledPage;
import org.faultwright.workbench.look.TitledDialog;

/** Takes a table from a CSV or XLSX file: shows it, lets its columns be chosen, and lists what cannot be read. */
final class TableDialog extends TitledDialog {
    private static final int MOST_SHOWN = 100;
    private static final int WIDTH = 900;
    private static final int HEIGHT = 680;
    private static final String NONE = "\u2013";
    static final Path UNNAMED = Path.of("");
    private static Path lastFolder;

    /** How the lines of a table are read. */
    interface Lines {
        ImportedLines<?> of(HeadedTable table, Map<String, Integer> columns) throws UnusableTable;
    }

    /** What came of a file. @param problem in one sentence; empty where there is none */
    private record Come(List<SheetGrid> sheets, int sheet, Optional<HeadedTable> table, Map<String, Integer> columns, Optional<ImportedLines<?>> imported, String problem) {
    }

    /** What is asked of a file. @param columns chosen; absent where the headings say */
    private record Request(Path file, int sheet, int heading, Optional<Map<String, Integer>> columns) {
    }

    private final Path first;
    private final TableKind kind;
    private final Lines lines;
    private final Reading reading = new Reading();
    private final Map<String, Combo> parts = new LinkedHashMap<>();
    private volatile Request wanted;
    private Text file;
    private Combo sheet;
    private Spinner heading;
    private org.eclipse.swt.widgets.Table preview;
    private Label told;
    private Text unread;
    private Come come;
    private boolean showing;

    /** @param first the file to begin with; {@link #UNNAMED} where it is still to be chosen */
    TableDialog(Shell shell, TableKind kind, Lines lines, Path first) {
        super(shell, kind.title());
        this.first = first;
        this.kind = kind;
        this.lines = lines;
        reading.setSystem(true);
    }

    @Override
    protected Point getInitialSize() {
        double letters = Math.max(1, CharacterWidth.width(getShell()) / 7);
        return new Point((int) (WIDTH * letters), (int) Math.min(HEIGHT * letters, getShell().getMonitor().getClientArea().height - 60));
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = area(parent);
        GridLayoutFactory.fillDefaults().numColumns(2).margins(6, 4).spacing(10, 8).applyTo(area);
        file = LabelledFields.text(area, "File (CSV or XLSX)", "", () -> {
            sheet.removeAll();
            ask(Optional.empty());
        });
        LabelledFields.push(area, "C&hoose\u2026", this::choose);
        sheet = LabelledFields.choice(area, "Sheet", List.of(), () -> ask(Optional.empty()));
        new Label(area, SWT.NONE).setText("Headings in line");
        heading = new Spinner(area, SWT.BORDER);
        heading.setValues(1, 0, 20, 0, 1, 1);
        heading.setToolTipText("Of the lines with a word in them; 0 where no line holds headings");
        heading.addListener(SWT.Selection, event -> ask(Optional.empty()));
        AccessibleName.as(heading, "Headings in line; 0 where there are none");
        Composite choosing = new Composite(area, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2 * Math.min(3, kind.parts().size())).spacing(8, 6).applyTo(choosing);
        GridDataFactory.fillDefaults().span(2, 1).applyTo(choosing);
        for (TableKind.Part part : kind.parts()) {
            Combo combo = LabelledFields.choice(choosing, "\"" + part.name() + "\" is in", List.of(NONE), () -> ask(Optional.of(chosen())));
            parts.put(part.name(), combo);
        }
        preview = new org.eclipse.swt.widgets.Table(area, SWT.BORDER | SWT.FULL_SELECTION);
        preview.setHeaderVisible(true);
        preview.setLinesVisible(true);
        AccessibleName.as(preview, "The table as it is read");
        GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(200, 160).applyTo(preview);
        told = LabelledFields.words(area, "Choose a file.");
        unread = new Text(area, SWT.BORDER | SWT.MULTI | SWT.READ_ONLY | SWT.V_SCROLL | SWT.WRAP);
        AccessibleName.as(unread, "What cannot be read");
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).hint(200, 5 * unread.getLineHeight()).applyTo(unread);
        return area;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "&Take these lines", true).setEnabled(false);
        createButton(parent, IDialogConstants.CANCEL_ID, "Cancel", false);
        file.setText(first.toString());
    }

    private void choose() {
        FileDialog choosing = new FileDialog(getShell(), SWT.OPEN);
        choosing.setFilterNames(new String[] {"Tables (CSV, XLSX)", "All files"});
        choosing.setFilterExtensions(new String[] {"*.csv;*.CSV;*.tsv;*.txt;*.xlsx;*.XLSX", "*"});
        Optional.ofNullable(lastFolder).ifPresent(folder -> choosing.setFilterPath(folder.toString()));
        Optional.ofNullable(choosing.open()).ifPresent(file::setText);
    }

    private Map<String, Integer> chosen() {
        Map<String, Integer> columns = new LinkedHashMap<>();
        parts.forEach((part, combo) -> {
            if (combo.getSelectionIndex() > 0) {
                columns.put(part, combo.getSelectionIndex() - 1);
            }
        });
        return columns;
    }

    private void ask(Optional<Map<String, Integer>> columns) {
        if (showing || file.isDisposed()) {
            return;
        }
        ok(false);
        try {
            wanted = new Request(Path.of(file.getText().strip()), Math.max(0, sheet.getSelectionIndex()), heading.getSelection(), columns);
        } catch (InvalidPathException none) {
            return;
        }
        reading.cancel();
        reading.schedule(150);
    }

    private void ok(boolean enabled) {
        Button take = getButton(IDialogConstants.OK_ID);
        if (take != null) {
            take.setEnabled(enabled);
        }
    }

    private final class Reading extends Job {
        Reading() {
            super("Reading a table");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            Request request = wanted;
            Come read = read(request);
            ScrolledPage.later(preview, () -> {
                if (request == wanted) {
                    show(read);
                }
            });
            return Status.OK_STATUS;
        }
    }

    private Come read(Request request) {
        List<SheetGrid> sheets = List.of();
        Optional<HeadedTable> table = Optional.empty();
        Map<String, Integer> columns = Map.of();
        try {
            if (!Files.isRegularFile(request.file())) {
                throw new IOException();
            }
            if (Files.size(request.file()) > TableFile.LARGEST) {
                return new Come(sheets, 0, table, columns, Optional.empty(), "The file has more than " + TableFile.LARGEST + " bytes; take out what is not needed.");
            }
            sheets = TableFile.read(Files.readAllBytes(request.file()));
            table = Optional.of(HeadedTable.of(sheets.get(Math.min(request.sheet(), sheets.size() - 1)), request.heading()));
            columns = request.columns().orElse(kind.columns(table.get()));
            return new Come(sheets, request.sheet(), table, columns, Optional.of(lines.of(table.get(), columns)), "");
        } catch (UnusableTable unusable) {
            return new Come(sheets, request.sheet(), table, columns, Optional.empty(), unusable.getMessage());
        } catch (RuntimeException | LinkageError failed) {
            ILog.of(TableDialog.class).error(request.file() + " could not be read as a table.", failed);
            return new Come(sheets, 0, table, columns, Optional.empty(), "This file cannot be read as a table. Save it anew as CSV, and choose that.");
        } catch (IOException unreadable) {
            return new Come(sheets, 0, table, columns, Optional.empty(), request.file().toString().isEmpty() ? "Choose a file."
                    : "There is no readable file " + request.file() + ".");
        }
    }

    private void show(Come read) {
        come = read;
        showing = true;
        try {
            sheet.setItems(read.sheets().stream().map(grid -> grid.name().isEmpty() ? "The file" : grid.name()).toArray(String[]::new));
            sheet.select(Math.min(read.sheet(), read.sheets().size() - 1));
            sheet.setEnabled(read.sheets().size() > 1);
            columns(read);
            preview(read);
        } finally {
            showing = false;
        }
        List<String> not = new ArrayList<>(read.imported().map(ImportedLines::unread).orElse(List.of()));
        read.table().ifPresent(table -> not.addAll(table.remarks()));
        int lines = read.imported().map(one -> one.read().size()).orElse(0);
        told.setText((read.problem().isEmpty() ? lines + (lines == 1 ? " line is read" : " lines are read") + (not.isEmpty() ? ", every one there is."
                : "; " + not.size() + (not.size() == 1 ? " cannot be read as it is:" : " cannot be read as they are:")) : read.problem()).replace("&", "&&"));
        unread.setText(String.join("\n", not));
        ok(lines > 0);
        told.getParent().layout();
    }

    private void columns(Come read) {
        List<String> headings = new ArrayList<>(List.of(NONE));
        read.table().ifPresent(table -> headings.addAll(table.headings()));
        parts.forEach((part, combo) -> {
            combo.setItems(headings.toArray(String[]::new));
            combo.select(read.columns().getOrDefault(part, -1) + 1);
        });
        parts.values().iterator().next().getParent().getParent().layout(true, true);
    }

    private void preview(Come read) {
        preview.setRedraw(false);
        preview.removeAll();
        for (TableColumn old : preview.getColumns()) {
            old.dispose();
        }
        read.table().ifPresent(table -> {
            new TableColumn(preview, SWT.RIGHT).setText("Line");
            for (int i = 0; i < table.headings().size(); i++) {
                new TableColumn(preview, SWT.NONE).setText(table.headings().get(i));
            }
            for (HeadedTable.Row row : table.rows().stream().limit(MOST_SHOWN).toList()) {
                TableItem item = new TableItem(preview, SWT.NONE);
                item.setText(0, String.valueOf(row.line()));
                for (int i = 0; i < row.cells().size(); i++) {
                    item.setText(i + 1, row.cells().get(i).replace('\n', ' '));
                }
            }
            for (TableColumn column : preview.getColumns()) {
                column.pack();
                column.setWidth(Math.min(column.getWidth() + 8, 320));
            }
        });
        preview.setRedraw(true);
    }

    /** The name of the file that was taken. */
    String fileName() {
        return wanted == null || wanted.file().getFileName() == null ? "" : wanted.file().getFileName().toString();
    }

    /** The lines that were taken; absent where none were. */
    @SuppressWarnings("unchecked")
    <T> Optional<List<T>> taken() {
        return getReturnCode() != OK || come == null ? Optional.empty() : come.imported().map(one -> (List<T>) one.read());
    }

    @Override
    protected void okPressed() {
        lastFolder = wanted.file().toAbsolutePath().getParent();
        super.okPressed();
    }

    @Override
    public boolean close() {
        reading.cancel();
        return super.close();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.action.Separator;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.eclipse.text.undo.DocumentUndoManagerRegistry;
import org.eclipse.text.undo.IDocumentUndoManager;
import org.eclipse.ui.actions.ActionFactory;
import org.eclipse.ui.part.ViewPart;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.NotApart;
import org.faultwright.analysis.table.SheetChange;
import org.faultwright.analysis.table.SheetColumn;
import org.faultwright.analysis.table.SheetRow;
import org.faultwright.analysis.table.SheetText;
import org.faultwright.language.beginning.PastedCells;
import org.faultwright.language.beginning.UnusableTable;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.editor.FixApplication;
import org.faultwright.workbench.editor.RenameHandler;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.ScrolledPage;

/**
 * The faults of the procedure in front against its steps. It follows the text while it is written and holds nothing of its own: what is typed here is
 * written into the text, in one step to undo there.
 */
public final class FaultTableView extends ViewPart {
    public static final String ID = "org.faultwright.workbench.faulttable";

    static final String WAITS = "The table waits until the text can be read.";
    static final String DRAFT = "Draft the steps";
    static final String ORDER = "Better order";
    static final String TAKE_OUT = "Take out";
    static final String PASTE = "Paste";
    private static final String TRYING = "Trying it and checking the text\u2026";
    static final String GONE = "That fault is not in the text any more.";
    private static final int MILLISECONDS_AFTER_A_CHANGE = 250;
    private static final int MOST_TOLD = 30;

    private final Consumer<Optional<ActiveText.Place>> following = this::follow;
    private final Job making = new SheetJob();
    private final List<Action> ofAProcedure = new ArrayList<>();
    private volatile LiveText wanted;
    private LiveText asked;
    private LiveText drawn;
    private FaultSheet sheet;
    private ShownSheet.Sorting sorting = ShownSheet.Sorting.WRITTEN;
    private String group = "";
    private boolean proposing;
    private GridCanvas grid;
    private TableSidePanel beside;
    private TableWriting writing;

    @Override
    public void createPartControl(Composite parent) {
        SashForm parts = new SashForm(parent, SWT.HORIZONTAL);
        grid = new GridCanvas(parts, new Pressing());
        beside = new TableSidePanel(parts, this::sort, this::choose);
        parts.setWeights(76, 24);
        parts.addListener(SWT.Resize, event -> {
            boolean wide = parts.getClientArea().width > parts.getClientArea().height * 3 / 2;
            parts.setOrientation(wide ? SWT.HORIZONTAL : SWT.VERTICAL);
        });
        writing = new TableWriting(grid);
        making.setSystem(true);
        add("Add a fault\u2026", "Add a row: another thing that can be broken", this::addFault);
        part();
        add("Add a step\u2026", "Add a column: another question to ask", this::addStep);
        part();
        add("Copy all", "Copy the whole table with its headings, for a spreadsheet", () -> copy(true));
        part();
        add(PASTE, "Paste cells of a spreadsheet from the cell in hand on, or a whole table with its headings", this::paste);
        part();
        add(DRAFT, "Write the steps from the table, to be looked at first", this::draft);
        part();
        add(ORDER, "Look for an order of the steps that takes less time, to be looked at first", this::betterOrder);
        new CellMenu(grid, this::clear, () -> copy(false), this::paste, this::goToText, new WholeLineChanges());
        keys();
        ActiveText.get().addView(this, following);
    }

    private void add(String words, String hint, Runnable does) {
        Action action = action(words, does);
        action.setToolTipText(hint);
        ActionContributionItem button = new ActionContributionItem(action);
        button.setMode(ActionContributionItem.MODE_FORCE_TEXT);
        getViewSite().getActionBars().getToolBarManager().add(button);
        ofAProcedure.add(action);
    }

    private void part() {
        getViewSite().getActionBars().getToolBarManager().add(new Separator());
    }

    private static Action action(String words, Runnable does) {
        return new Action(words) {
            @Override
            public void run() {
                does.run();
            }
        };
    }

    /** The entries of the menu "Edit" and their keys, while this view is worked in. A line that is open has its own. */
    private void keys() {
        handle(ActionFactory.UNDO, () -> undoing(IDocumentUndoManager::undoable, IDocumentUndoManager::undo), line -> { });
        handle(ActionFactory.REDO, () -> undoing(IDocumentUndoManager::redoable, IDocumentUndoManager::redo), line -> { });
        handle(ActionFactory.COPY, () -> copy(grid.isAllChosen()), Text::copy);
        handle(ActionFactory.CUT, () -> {
            copy(false);
            clear();
        }, Text::cut);
        handle(ActionFactory.PASTE, this::paste, Text::paste);
        handle(ActionFactory.SELECT_ALL, grid::chooseAll, Text::selectAll);
    }

    private void handle(ActionFactory command, Runnable inTheTable, Consumer<Text> inALine) {
        getViewSite().getActionBars().setGlobalActionHandler(command.getId(), action("", () -> grid.inPlace().line().ifPresentOrElse(inALine, inTheTable)));
    }

    private interface Undoing {
        void run(IDocumentUndoManager manager) throws org.eclipse.core.commands.ExecutionException;
    }

    private void undoing(Function<IDocumentUndoManager, Boolean> can, Undoing does) {
        IDocumentUndoManager manager = asked == null ? null : DocumentUndoManagerRegistry.getDocumentUndoManager(asked.document());
        if (manager != null && can.apply(manager)) {
            try {
                does.run(manager);
            } catch (org.eclipse.core.commands.ExecutionException refused) {
                ILog.of(FaultTableView.class).error("A change of the fault table could not be taken back.", refused);
            }
        }
    }

    // ---- for whoever asks what is shown

    /** What is drawn and worked by keys. */
    GridCanvas grid() {
        return grid;
    }

    /** The words beside the table. */
    TableSidePanel beside() {
        return beside;
    }

    /** Whether the table of the text as it stands is shown. */
    public boolean isShown() {
        return grid.sheet().isPresent() && grid.said().isEmpty() && drawn == asked;
    }

    // ---- the text in front

    private void follow(Optional<ActiveText.Place> place) {
        if (grid.isDisposed()) {
            return;
        }
        LiveText live = place.map(ActiveText.Place::live).orElse(null);
        if (live == null || !(live.text().document() instanceof Procedure)) {
            leave();
            say(live != null ? "A library has no faults. Open a procedure that uses it."
                    : ActiveText.get().editor().isPresent() ? "Reading the procedure\u2026" : "Open a procedure to see its fault table.");
            return;
        }
        if (live == asked) {
            return;
        }
        boolean other = asked == null || !asked.file().equals(live.file());
        asked = live;
        if (other) {
            group = "";
            say("Reading the faults\u2026");
        }
        making.cancel();
        if (!live.text().document().problems().isEmpty()) {
            wanted = null;
            grid.waits(WAITS);
            return;
        }
        wanted = live;
        making.schedule(other ? 0 : MILLISECONDS_AFTER_A_CHANGE);
    }

    private void leave() {
        asked = null;
        drawn = null;
        sheet = null;
        wanted = null;
        making.cancel();
    }

    private void say(String words) {
        grid.say(words);
        beside.forget();
        enable(false);
    }

    private void enable(boolean on) {
        ofAProcedure.forEach(action -> action.setEnabled(on && !(proposing && (action.getText().equals(DRAFT) || action.getText().equals(ORDER)))));
    }

    private final class SheetJob extends Job {
        SheetJob() {
            super("Reading the fault table");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            LiveText of = wanted;
            if (of == null) {
                return Status.OK_STATUS;
            }
            try {
                Optional<FaultSheet> made = LiveTexts.get().services().faultSheet(of.text());
                ScrolledPage.later(grid, () -> {
                    if (of == wanted && made.isPresent()) {
                        drawn = of;
                        sheet = made.get();
                        draw();
                    }
                });
            } catch (RuntimeException failed) {
                ILog.of(FaultTableView.class).error("The fault table of " + of.file().getName() + " could not be made.", failed);
                ScrolledPage.later(grid, () -> grid.waits("This table cannot be made from the text as it is now. It comes back with the next change."));
            }
            return Status.OK_STATUS;
        }
    }

    private void draw() {
        Optional<NotApart> chosen = sheet.groups().stream().filter(one -> one.named().equals(group)).findFirst();
        grid.show(ShownSheet.of(sheet, sorting, chosen));
        beside.show(sheet, chosen, sorting);
        if (!proposing) {
            tell();
        }
        enable(true);
    }

    private void tell() {
        grid.sheet().ifPresent(shown -> beside.tell(grid.told(), shown.group().map(NotApart::told).orElse(List.of())));
    }

    private void sort(ShownSheet.Sorting by) {
        sorting = by;
        if (sheet != null) {
            draw();
        }
    }

    /** @param named the faults of a group, as it is called; empty for all faults */
    private void choose(String named) {
        group = named;
        if (sheet != null) {
            draw();
        }
    }

    // ---- changing the text

    private final class Pressing implements GridCanvas.Presses {
        @Override
        public void write(SheetRow row, SheetColumn column, String typed) {
            if (grid.sheet().filter(shown -> row instanceof SheetRow.OfFault && shown.fault(row).isEmpty()).isPresent()) {
                ScrolledPage.later(grid, () -> beside.refuse(List.of(GONE))); // the key that ends the line tells of the next cell first
            } else if (grid.sheet().filter(shown -> shown.typed(row, column).equals(typed.strip())).isEmpty()) {
                FaultTableView.this.write("Change a cell", change -> change.set(row, column, typed), () -> {
                    grid.take(row, column);
                    grid.edit(Optional.of(typed));
                });
            }
        }

        @Override
        public void clear() {
            FaultTableView.this.clear();
        }

        @Override
        public void inHand(SheetRow row, SheetColumn column) {
            tell();
            select(row, column);
        }

        @Override
        public void goToText() {
            FaultTableView.this.goToText();
        }

        @Override
        public void sort(ShownSheet.Sorting by) {
            FaultTableView.this.sort(sorting == by ? ShownSheet.Sorting.WRITTEN : by);
        }

        @Override
        public void allFaults() {
            choose("");
        }
    }

    /** What is done with a whole row or column; more than its cells changes, so that it is looked at first. */
    private final class WholeLineChanges implements CellMenu.LineActions {
        @Override
        public void rename(SheetRow row) {
            FaultTableView.this.rename(row instanceof SheetRow.OfFault fault ? sheet.row(fault.name()).map(one -> one.fault().name().at()) : Optional.empty());
        }

        @Override
        public void rename(SheetColumn column) {
            FaultTableView.this.rename(column instanceof SheetColumn.OfStep step ? sheet.column(step.name()).flatMap(FaultSheet.Column::step)
                    .map(one -> one.name().at()) : Optional.empty());
        }

        @Override
        public void takeOut(SheetRow row) {
            propose(TAKE_OUT, TRYING, live -> RemovalPreview.of(live, row));
        }

        @Override
        public void takeOut(SheetColumn column) {
            propose(TAKE_OUT, TRYING, live -> RemovalPreview.of(live, column));
        }
    }

    /** @param name in the text that is drawn */
    private void rename(Optional<SourceRange> name) {
        Optional<LiveText> live = asked == null ? Optional.empty() : LiveTexts.get().current(asked.document());
        if (name.isEmpty() || live.isEmpty() || drawn == null || !drawn.isCurrent()) {
            beside.refuse(List.of("The text has changed meanwhile. Try again."));
        } else {
            RenameHandler.ask(grid.getShell(), live.get(), name.get().offset());
        }
    }

    private void clear() {
        List<SheetRow> rows = List.copyOf(grid.chosenRows());
        List<SheetColumn> columns = List.copyOf(grid.chosenColumns());
        write("Clear cells", change -> rows.forEach(row -> columns.stream().filter(column -> !(column instanceof SheetColumn.Words))
                .forEach(column -> change.set(row, column, ""))), () -> { });
    }

    /** @param again what is done after the writing was refused, beside telling why */
    private void write(String title, Consumer<SheetChange> changes, Runnable again) {
        if (asked == null) {
            return;
        }
        writing.write(asked.document(), title, of -> {
            SheetChange change = new SheetChange(of);
            changes.accept(change);
            return change;
        }, refused -> {
            if (!refused.isEmpty()) {
                again.run();
                beside.refuse(refused);
            }
        });
    }

    private void addFault() {
        ask("Add a fault", "What is broken, in a few words:").ifPresent(words -> add(change -> change.addFault(words),
                name -> grid.take(new SheetRow.OfFault(name), new SheetColumn.Cases())));
    }

    private void addStep() {
        boolean laidOut = sheet != null && sheet.isLaidOut();
        ask("Add a step", laidOut ? "What is looked at or asked, with its outcomes behind the question mark, as in: Is it warm? yes, no"
                : "What is looked at or asked, as a question. What faults show there becomes its outcomes:").ifPresent(typed -> {
            int mark = laidOut ? typed.indexOf('?') : -1;
            String words = mark < 0 ? typed : typed.substring(0, mark + 1);
            List<String> outcomes = mark < 0 ? List.of() : List.of(typed.substring(mark + 1).split(","));
            add(change -> change.addStep(words, outcomes), name -> {
                grid.take(new SheetRow.Takes(), new SheetColumn.OfStep(name));
                if (laidOut) {
                    beside.tell("The step is written. Its outcomes lead to a conclusion that refers the unit: lead them on in the text, and a step to it.", List.of());
                }
            });
        });
    }

    private Optional<String> ask(String title, String question) {
        InputDialog dialog = new InputDialog(grid.getShell(), title, question, "", typed -> typed.isBlank() ? "" : null);
        return dialog.open() == Window.OK ? Optional.of(dialog.getValue()) : Optional.empty();
    }

    /** What was added is taken in hand as soon as it is shown. @param adds gives it the name that it is found by */
    private void add(Function<SheetChange, String> adds, Consumer<String> added) {
        String[] name = {""};
        write("Add to the table", change -> name[0] = adds.apply(change), () -> name[0] = "");
        whenShown(() -> sheet != null && (sheet.row(name[0]).isPresent() || sheet.column(name[0]).isPresent()), () -> added.accept(name[0]));
    }

    private void whenShown(Supplier<Boolean> shown, Runnable then) {
        int[] turns = {100};
        Runnable looking = new Runnable() {
            @Override
            public void run() {
                if (grid.isDisposed() || turns[0]-- < 0) {
                    return;
                }
                if (shown.get()) {
                    then.run();
                } else {
                    grid.getDisplay().timerExec(50, this);
                }
            }
        };
        grid.getDisplay().timerExec(50, looking);
    }

    // ---- to and from a spreadsheet

    /** @param all the whole table with its headings, else the chosen cells */
    private void copy(boolean all) {
        if (grid.sheet().isEmpty()) {
            return;
        }
        ShownSheet shown = grid.sheet().get();
        List<String> faults = shown.rows().stream().flatMap(row -> shown.fault(row).stream()).map(FaultSheet.Row::name).toList();
        List<List<String>> cells = all ? SheetText.copied(shown.of(), faults) : grid.chosenRows().stream().map(row -> grid.chosenColumns().stream()
                .map(column -> column instanceof SheetColumn.Time ? shown.text(row, column) : shown.typed(row, column)).toList()).toList();
        Clipboard clipboard = new Clipboard(grid.getDisplay());
        try {
            clipboard.setContents(new Object[] {PastedCells.write(cells)}, new Transfer[] {TextTransfer.getInstance()});
        } finally {
            clipboard.dispose();
        }
        beside.tell(all ? "The table is copied, with " + faults.size() + " faults and " + shown.of().columns().size() + " steps. Paste it into a spreadsheet."
                : "Copied: " + cells.size() + (cells.size() == 1 ? " row, " : " rows, ") + cells.get(0).size() + (cells.get(0).size() == 1 ? " column." : " columns."), List.of());
    }

    private void paste() {
        Clipboard clipboard = new Clipboard(grid.getDisplay());
        try {
            paste(clipboard.getContents(TextTransfer.getInstance()) instanceof String text ? text : "");
        } finally {
            clipboard.dispose();
        }
    }

    /** @param pasted rows of cells with tabs between them */
    void paste(String pasted) {
        if (grid.sheet().isEmpty() || asked == null) {
            return;
        }
        List<List<String>> cells;
        try {
            cells = PastedCells.read(pasted);
        } catch (UnusableTable unusable) {
            notPasted(List.of(unusable.getMessage()));
            return;
        }
        ShownSheet shown = grid.sheet().get();
        boolean one = cells.size() == 1 && cells.get(0).size() == 1;
        List<List<String>> filling = one ? fill(cells.get(0).get(0)) : cells;
        int row = shown.rows().indexOf(grid.chosenRows().get(0));
        int column = shown.columns().indexOf(grid.chosenColumns().get(0));
        List<SheetRow> rows = List.copyOf(shown.rows().subList(row, shown.rows().size()));
        List<SheetColumn> columns = List.copyOf(shown.columns().subList(column, shown.columns().size()));
        IDocument document = asked.document();
        writing.write(document, "Paste cells", of -> SheetText.pasted(of, filling, rows, columns), refused -> {
            if (refused.isEmpty()) {
                beside.tell("Pasted. \"Undo\" takes it back in one step.", List.of());
            } else {
                notPasted(refused);
            }
        });
    }

    /** One value goes into every chosen cell. */
    private List<List<String>> fill(String value) {
        return grid.chosenRows().stream().map(row -> grid.chosenColumns().stream().map(column -> value).toList()).toList();
    }

    private void notPasted(List<String> refused) {
        List<String> some = refused.stream().limit(MOST_TOLD).toList();
        String more = refused.size() > some.size() ? "\nand " + (refused.size() - some.size()) + " more." : "";
        MessageDialog.openInformation(grid.getShell(), PASTE, "Nothing was pasted, because this cannot be read:\n\n" + String.join("\n", some) + more);
    }

    // ---- the whole procedure

    private void draft() {
        propose(DRAFT, "Drafting the steps and checking them\u2026", live -> LiveTexts.get().services().draft((Procedure) live.text().document()));
    }

    private void betterOrder() {
        propose(ORDER, "Looking for a better order and checking it\u2026", live -> LiveTexts.get().services().betterOrder(live.text()));
    }

    private void propose(String title, String meanwhile, Function<LiveText, ProposedChange> study) {
        if (asked == null || proposing) {
            return;
        }
        IDocument document = asked.document();
        proposing = true;
        enable(true);
        beside.tell(meanwhile, List.of());
        Job.createSystem(title, (ICoreRunnable) monitor -> {
            Optional<ProposedChange> proposed = Optional.empty();
            try {
                proposed = LiveTexts.get().current(document).filter(live -> live.text().document() instanceof Procedure).map(study);
            } catch (RuntimeException failed) {
                ILog.of(FaultTableView.class).error(title + " failed.", failed);
            }
            ProposedChange found = proposed.orElseGet(() -> new ProposedChange("This text cannot be worked on as it is now.", List.of(), Optional.empty()));
            ScrolledPage.later(grid, () -> proposed(title, found, document));
        }).schedule();
    }

    private void proposed(String title, ProposedChange found, IDocument document) {
        proposing = false;
        enable(sheet != null);
        tell();
        ProposalDialog dialog = new ProposalDialog(grid.getShell(), title, found);
        if (dialog.open() == Window.OK && found.change().isPresent() && !FixApplication.apply(found.change().get(), document)) {
            beside.refuse(List.of("The text has changed meanwhile, so that nothing was written. Try again."));
        }
    }

    // ---- in the text

    /** Selects what a cell says in the text without leaving the table; what has moved since is left alone. */
    private void select(SheetRow row, SheetColumn column) {
        place(row, column).ifPresent(at -> ActiveText.get().editor().ifPresent(editor -> editor.selectAndReveal(at.offset(), at.length())));
    }

    private void goToText() {
        Optional<SourceRange> place = grid.inHandRow().flatMap(row -> grid.inHandColumn().flatMap(column -> place(row, column)));
        place.ifPresent(at -> ActiveText.get().editor().ifPresent(editor -> {
            editor.getSite().getPage().activate(editor);
            editor.selectAndReveal(at.offset(), at.length());
        }));
    }

    private Optional<SourceRange> place(SheetRow row, SheetColumn column) {
        boolean same = drawn != null && drawn == asked && drawn.isCurrent();
        boolean front = same && ActiveText.get().editor().flatMap(Editors::document).filter(document -> document == drawn.document()).isPresent();
        return front ? grid.sheet().flatMap(shown -> shown.place(row, column)).filter(at -> at.source().name().equals(drawn.text().source().name())) : Optional.empty();
    }

    // ---- the view

    @Override
    public void setFocus() {
        grid.setFocus();
    }

    @Override
    public void dispose() {
        making.cancel();
        ActiveText.get().removeView(this);
        super.dispose();
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.IMessageProvider;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Export;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.exports.Exports;
import org.faultwright.publish.quality.QualityPdf;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.ScrolledPage;

/** Asks where to, and in which forms, a procedure is published. Meanwhile it is checked with every rule, away from the window's thread. */
final class PublishDialog extends TitleAreaDialog {
    static final String LAST_RELEASE = "Last release";
    static final String CHECKING = "It is being checked with every rule\u2026";
    private static final String CAUTION = "Local codes, the maker's instructions and licensed practice come first; every card says so.";

    private final LiveText live;
    private final Function<LiveText, CheckedProcedure> check;
    private final Job checking = new CheckJob();
    private Optional<CheckedProcedure> checked = Optional.empty();
    private boolean failed;
    private final Map<Export, Button> forms = new LinkedHashMap<>();
    private Text folderText;
    private Text sinceText;
    private Button draftButton;
    private Path folder;
    private Optional<Path> since = Optional.empty();
    private List<Export> chosen = List.of();
    private Drafts drafts = Drafts.REFUSED;

    /** @param live of a procedure @param check takes a while */
    PublishDialog(Shell shell, LiveText live, Function<LiveText, CheckedProcedure> check) {
        super(shell);
        this.live = live;
        this.check = check;
        checking.setSystem(true);
        setHelpAvailable(false);
    }

    /** With all that was found in it; what is published. */
    CheckedProcedure checked() {
        return checked.orElseThrow();
    }

    Path folder() {
        return folder;
    }

    List<Export> forms() {
        return chosen;
    }

    /** Where the last release was published; absent where nothing is to be compared. */
    Optional<Path> since() {
        return since;
    }

    Drafts drafts() {
        return drafts;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText("Publish");
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        setTitle(live.text().document().title());
        setMessage(CAUTION);
        Composite area = new Composite((Composite) super.createDialogArea(parent), SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(area);
        GridLayoutFactory.swtDefaults().numColumns(3).margins(12, 10).applyTo(area);
        folderText = folder(area, "Into folder");
        folderText.setText(Path.of(System.getProperty("user.home"), "bench-cards").toString());
        sinceText = folder(area, LAST_RELEASE);
        sinceText.setMessage("report and index then say what changed; may stay empty");
        Label as = new Label(area, SWT.NONE);
        as.setText("As");
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(as);
        Composite list = new Composite(area, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(list);
        GridDataFactory.fillDefaults().span(2, 1).applyTo(list);
        Exports.all().forEach(export -> forms.put(export, check(list, words(export), isUsual(export))));
        draftButton = check(area, "Print as a draft although errors are open", false);
        draftButton.setVisible(false);
        GridDataFactory.fillDefaults().span(3, 1).applyTo(draftButton);
        return area;
    }

    private Text folder(Composite area, String name) {
        new Label(area, SWT.NONE).setText(name);
        Text text = new Text(area, SWT.BORDER);
        AccessibleName.as(text, name);
        text.addListener(SWT.Modify, event -> check());
        GridDataFactory.fillDefaults().grab(true, false).hint(360, SWT.DEFAULT).applyTo(text);
        Button browse = new Button(area, SWT.PUSH);
        browse.setText("Choose\u2026");
        AccessibleName.as(browse, name + ": choose\u2026");
        browse.addListener(SWT.Selection, event -> browse(text));
        return text;
    }

    /** What a form is called here, where there is one procedure and no folder of them. */
    private static String words(Export export) {
        return export instanceof FolderExport ? export.title() + ", of this procedure" : export.title();
    }

    /** What goes with every release: the forms of the procedure itself, and the report that is signed. */
    private static boolean isUsual(Export export) {
        return export instanceof ProcedureExport || export instanceof QualityPdf;
    }

    private Button check(Composite parent, String title, boolean on) {
        Button button = new Button(parent, SWT.CHECK);
        button.setText(title);
        button.setSelection(on);
        button.addListener(SWT.Selection, event -> check());
        return button;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Publish", true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
        check();
        checking.schedule();
    }

    private final class CheckJob extends Job {
        CheckJob() {
            super("Checking what is to be published");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            Optional<CheckedProcedure> found = Optional.empty();
            try {
                found = Optional.of(check.apply(live));
            } catch (RuntimeException broken) {
                ILog.of(PublishDialog.class).error(live.file().getName() + " could not be checked.", broken);
            }
            Optional<CheckedProcedure> come = found;
            ScrolledPage.later(folderText, () -> come(come));
            return Status.OK_STATUS;
        }
    }

    private void come(Optional<CheckedProcedure> found) {
        checked = found;
        failed = found.isEmpty();
        draftButton.setVisible(hasErrors());
        check();
    }

    private boolean hasErrors() {
        return checked.filter(found -> !found.errors().isEmpty()).isPresent();
    }

    private void browse(Text into) {
        DirectoryDialog dialog = new DirectoryDialog(getShell());
        dialog.setFilterPath((into.getText().isBlank() ? folderText : into).getText());
        String answer = dialog.open();
        if (answer != null) {
            into.setText(answer);
        }
    }

    private void check() {
        String problem = problem();
        setErrorMessage(problem);
        if (problem == null && hasErrors()) {
            setMessage("Every page will say DRAFT and list the open errors.", IMessageProvider.WARNING);
        } else {
            setMessage(checked.isPresent() ? CAUTION : CAUTION + "\n" + CHECKING);
        }
        Button publish = getButton(IDialogConstants.OK_ID);
        if (publish != null) {
            publish.setEnabled(problem == null && checked.isPresent());
        }
    }

    private String problem() {
        if (folderText.getText().isBlank() || !isPath(folderText.getText())) {
            return "Name the folder to write into.";
        }
        if (!sinceText.getText().isBlank() && !(isPath(sinceText.getText().strip()) && Files.isDirectory(Path.of(sinceText.getText().strip())))) {
            return "There is no folder \"" + sinceText.getText().strip() + "\". Name the one that the last release was published into, or leave \"" + LAST_RELEASE + "\" empty.";
        }
        if (forms.values().stream().noneMatch(Button::getSelection)) {
            return "Choose at least one form.";
        }
        if (failed) {
            return "This procedure cannot be checked as it is now, so it is not published. Change its text, and publish it then.";
        }
        return hasErrors() && !draftButton.getSelection()
                ? "This procedure has errors; remove them, or print it as a draft." : null;
    }

    private static boolean isPath(String words) {
        try {
            return Path.of(words).isAbsolute();
        } catch (InvalidPathException none) {
            return false;
        }
    }

    @Override
    protected void okPressed() {
        folder = Path.of(folderText.getText().strip());
        since = Optional.of(sinceText.getText().strip()).filter(words -> !words.isEmpty()).map(Path::of);
        chosen = forms.entrySet().stream().filter(entry -> entry.getValue().getSelection()).map(Map.Entry::getKey).toList();
        drafts = hasErrors() ? Drafts.ALLOWED : Drafts.REFUSED;
        super.okPressed();
    }

    @Override
    public boolean close() {
        checking.cancel();
        return super.close();
    }
}

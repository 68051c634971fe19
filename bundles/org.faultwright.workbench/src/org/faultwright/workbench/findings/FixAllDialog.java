/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Phrases;
import org.faultwright.workbench.editor.ChangedLines;
import org.faultwright.workbench.editor.FolderEdits;
import org.faultwright.workbench.help.HelpView;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.look.AccessibleName;
import org.faultwright.workbench.look.Icons;
import org.faultwright.workbench.look.ScrolledPage;
import org.faultwright.workbench.look.TitledDialog;

/** The lines that the fixes of one rule change, file by file as they are tried; a file whose mark is taken off stays as it is. */
final class FixAllDialog extends TitledDialog {
    static final String TITLE = "Fix all of this kind";

    private final String rule;
    private final List<IFile> files;
    private final Job trying = new TrialJob();
    private final List<FixedFile> tried = new ArrayList<>();
    private Label state;
    private Tree tree;

    FixAllDialog(Shell shell, String rule, List<IFile> files) {
        super(shell, TITLE);
        this.rule = rule;
        this.files = files;
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        text(area, HelpView.ruleTitle(rule));
        text(area, "Each fix is tried with a full check before it is listed. A text that is open is changed in its editor, where Ctrl+Z takes"
                + " all of it back, and saved by you; the others are saved at once. Take the mark off a file to leave it as it is.");
        tree = new Tree(area, SWT.BORDER | SWT.CHECK);
        AccessibleName.as(tree, "Lines that change");
        GridDataFactory.fillDefaults().grab(true, true).hint(640, 300).applyTo(tree);
        tree.addListener(SWT.Selection, event -> {
            if (event.detail == SWT.CHECK && event.item instanceof TreeItem item) {
                check(item);
                tell();
            }
        });
        state = text(area, "");
        return area;
    }

    private static Label text(Composite area, String words) {
        Label label = new Label(area, SWT.WRAP);
        label.setText(words.replace("&", "&&"));
        GridDataFactory.fillDefaults().grab(true, false).hint(640, SWT.DEFAULT).applyTo(label);
        return label;
    }

    /** A file changes as a whole: its lines were tried together. */
    private static void check(TreeItem item) {
        TreeItem top = item.getParentItem() == null ? item : item.getParentItem();
        top.setChecked(item.getChecked() && top.getData() instanceof FixedFile);
        for (TreeItem line : top.getItems()) {
            line.setChecked(top.getChecked());
        }
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Change them", true).setEnabled(false);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
        tell();
        trying.schedule();
    }

    private final class TrialJob extends Job {
        TrialJob() {
            super("Trying fixes");
            setSystem(true);
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            for (IFile file : files) {
                Optional<FixedFile> fixed = monitor.isCanceled() ? Optional.empty() : FixedFile.of(file, rule, monitor::isCanceled);
                if (fixed.isEmpty()) {
                    return Status.CANCEL_STATUS;
                }
                ScrolledPage.later(tree, () -> add(fixed.get()));
            }
            return Status.OK_STATUS;
        }
    }

    private void add(FixedFile fixed) {
        tried.add(fixed);
        if (fixed.refused().isPresent()) {
            TreeItem told = new TreeItem(tree, SWT.NONE);
            told.setText(fixed.refused().get());
            told.setImage(Icons.of("warning").orElse(null));
        } else if (fixed.fixes() > 0) {
            TreeItem top = new TreeItem(tree, SWT.NONE);
            top.setText(fixed.file().getProjectRelativePath() + "   " + Phrases.counted(fixed.fixes(), "fix", "fixes"));
            top.setData(fixed);
            fixed.changed().forEach(changed -> add(top, changed));
            top.setChecked(true);
            check(top);
            top.setExpanded(true);
        }
        tell();
    }

    private static void add(TreeItem top, ChangedLines changed) {
        for (int i = 0; i < changed.was().size(); i++) {
            item(top, changed.line() + i, changed.now().isEmpty() ? "goes" : "was", changed.was().get(i));
        }
        for (int i = 0; i < changed.now().size(); i++) {
            item(top, changed.line() + i, changed.was().isEmpty() ? "comes" : "now", changed.now().get(i));
        }
    }

    private static void item(TreeItem top, int line, String what, String words) {
        new TreeItem(top, SWT.NONE).setText("line " + line + " " + what + ":  " + words.strip());
    }

    private void tell() {
        Map<IFile, List<Fix.Edit>> chosen = chosen();
        int fixes = tried.stream().filter(fixed -> chosen.containsKey(fixed.file())).mapToInt(FixedFile::fixes).sum();
        int left = tried.stream().mapToInt(FixedFile::left).sum();
        boolean done = tried.size() == files.size();
        String progress = done ? "" : "Trying, " + tried.size() + " of " + Phrases.counted(files.size(), "file", "files") + ".  ";
        String result = fixes == 0 && done ? "No fix is to be made. " : Phrases.counted(fixes, "fix", "fixes") + " in " + Phrases.counted(chosen.size(), "file", "files") + ". ";
        String rest = left == 0 ? "" : left == 1 ? "1 finding of this kind has no fix that holds and stays. "
                : left + " findings of this kind have no fix that holds and stay. ";
        String unchecked = FolderDocuments.get().isComplete() ? "" : "Not every file has been checked yet; those are left out.";
        state.setText(progress + result + rest + unchecked);
        state.requestLayout();
        getButton(IDialogConstants.OK_ID).setEnabled(done && fixes > 0);
    }

    private Map<IFile, List<Fix.Edit>> chosen() {
        Map<IFile, List<Fix.Edit>> edits = new LinkedHashMap<>();
        for (TreeItem top : tree.getItems()) {
            if (top.getChecked() && top.getData() instanceof FixedFile fixed) {
                edits.put(fixed.file(), fixed.edits());
            }
        }
        return edits;
    }

    @Override
    protected void okPressed() {
        FolderEdits edits = new FolderEdits(chosen(), "changed");
        Shell over = getParentShell();
        Job.createSystem("Changing the texts", monitor -> {
            try {
                edits.write();
            } catch (CoreException refused) {
                Display.getDefault().asyncExec(() -> MessageDialog.openInformation(over, TITLE, refused.getStatus().getMessage()));
            }
            return Status.OK_STATUS;
        }).schedule();
        super.okPressed();
    }

    @Override
    public boolean close() {
        trying.cancel();
        return super.close();
    }

    @Override
    protected Point getInitialSize() {
        return new Point(860, 560);
    }
}

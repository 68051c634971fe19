/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IFile;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.analysis.Finding;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.DialogParent;
import org.faultwright.workbench.look.StatusLine;

/** Shows what the fixes of every finding of the chosen one's kind would change, and makes those changes. */
public final class FixAllHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        Optional<Finding> finding = ChosenFinding.get().finding();
        Optional<String> refusal = finding.isEmpty() ? Optional.of("Choose a finding first; this fixes all of its kind.")
                : finding.get().fixes().isEmpty() ? Optional.of("The chosen finding has no fix; it is for the writer to decide.") : Optional.empty();
        StatusLine.say(event, refusal);
        if (refusal.isEmpty()) {
            boolean onlyHere = HandlerUtil.getActiveWorkbenchWindow(event).getActivePage().findView(FindingsView.ID) instanceof FindingsView view
                    && view.isOfThisProcedureOnly();
            open(DialogParent.shell(), finding.get(), onlyHere);
        }
        return null;
    }

    /** @param onlyHere whether only the text that the finding is in is looked at */
    private static void open(Shell shell, Finding finding, boolean onlyHere) {
        List<IFile> files = onlyHere ? Editors.file(finding.at().source().name()).stream().toList() : files(finding.rule());
        new FixAllDialog(shell, finding.rule(), files).open();
    }

    /** Every file in which the rule found something that has a fix. */
    private static List<IFile> files(String rule) {
        List<IFile> files = new ArrayList<>();
        FolderDocuments.get().all().forEach((file, known) -> {
            List<Finding> findings = LiveTexts.get().of(file).map(live -> live.text().findings()).orElse(known.findings());
            if (findings.stream().anyMatch(finding -> finding.rule().equals(rule) && !finding.fixes().isEmpty())) {
                files.add(file);
            }
        });
        files.sort(Comparator.comparing(file -> file.getFullPath().toString()));
        return files;
    }
}

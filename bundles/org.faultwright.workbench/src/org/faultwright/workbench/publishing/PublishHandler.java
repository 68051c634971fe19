/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Published;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.WholeFile;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/** Publishes the procedure in front into a folder. */
public final class PublishHandler extends AbstractHandler {
    private static final String TITLE = "Publish";

    @Override
    public Object execute(ExecutionEvent event) {
        Shell shell = HandlerUtil.getActiveShell(event);
        Optional<LiveText> live = ActiveText.get().place()
                .flatMap(place -> LiveTexts.get().current(place.live().document()));
        if (live.isEmpty() || !(live.get().text().document() instanceof Procedure)) {
            MessageDialog.openInformation(shell, TITLE, "Open a procedure first; what is in front is what is published.");
            return null;
        }
        PublishDialog dialog = new PublishDialog(shell, live.get());
        if (dialog.open() == Window.OK) {
            publish(live.get(), dialog.folder(), dialog.forms(), dialog.drafts()).schedule();
        }
        return null;
    }

    /** The job that writes the forms; it tells the outcome in the window. */
    static Job publish(LiveText live, Path folder, List<ProcedureExport> forms, Drafts drafts) {
        return new Job("Publishing " + live.file().getName()) {
            @Override
            protected IStatus run(IProgressMonitor monitor) {
                SubMonitor progress = SubMonitor.convert(monitor, forms.size());
                List<String> written = new ArrayList<>();
                try {
                    Publication publication = Publication.of(
                            LiveTexts.get().services().forPublishing((Procedure) live.text().document()), drafts);
                    List<Published> made = new ArrayList<>();
                    for (ProcedureExport form : forms) {
                        made.add(form.publish(publication));
                        progress.worked(1);
                    }
                    for (Published one : made) {
                        written.add(WholeFile.write(folder, one).getFileName().toString());
                    }
                    tell(MessageDialog.INFORMATION, String.join(", ", written) + " written into " + folder + ".");
                } catch (PublishingRefused refused) {
                    tell(MessageDialog.WARNING, refused.getMessage());
                }
                return Status.OK_STATUS;
            }
        };
    }

    private static void tell(int kind, String sentence) {
        Display.getDefault().asyncExec(() -> MessageDialog.open(kind, Display.getDefault().getActiveShell(), TITLE,
                sentence, org.eclipse.swt.SWT.NONE));
    }
}

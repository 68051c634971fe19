/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.publishing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.SWT;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.language.EarlierTexts;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.Export;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.WholeFile;
import org.faultwright.publish.exports.AloneExport;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.DialogParent;

/** Publishes the procedure in front into a folder. */
public final class PublishHandler extends AbstractHandler {
    private static final String TITLE = "Publish";
    private static final String NOT_MADE = "These forms cannot be made from the procedure as it is now, and nothing was written. Try fewer of them, "
            + "or change what was written last.";

    @Override
    public Object execute(ExecutionEvent event) {
        Shell shell = DialogParent.shell();
        Optional<LiveText> live = ActiveText.get().place().map(ActiveText.Place::live);
        if (live.isEmpty() || !(live.get().text().document() instanceof Procedure)) {
            MessageDialog.openInformation(shell, TITLE, "Open a procedure first; what is in front is what is published.");
            return null;
        }
        PublishDialog dialog = new PublishDialog(shell, live.get(), PublishHandler::checked);
        if (dialog.open() == Window.OK) {
            publish(dialog.checked(), dialog.folder(), dialog.forms(), dialog.drafts(), dialog.since(), Program::launch).schedule();
        }
        return null;
    }

    /** The procedure as it stands, with what every rule finds in it. Takes a while. */
    static CheckedProcedure checked(LiveText live) {
        return LiveTexts.get().services().forPublishing((Procedure) LiveTexts.get().current(live.document()).orElse(live).text().document());
    }

    /**
     * The job that writes the forms; it tells the outcome in the window.
     *
     * @param since the folder of the last release, where what changed since then is to be told
     * @param opens shows a folder in what the system has for that; false if it has nothing
     */
    static Job publish(CheckedProcedure checked, Path folder, List<Export> forms, Drafts drafts, Optional<Path> since, Predicate<String> opens) {
        return new Job("Publishing " + checked.procedure().name()) {
            @Override
            protected IStatus run(IProgressMonitor monitor) {
                SubMonitor progress = SubMonitor.convert(monitor, forms.size());
                List<String> written = new ArrayList<>();
                try {
                    Publication publication = Publication.of(checked, drafts);
                    // read before anything is written, since the new files may replace the old ones
                    Optional<EarlierRelease> release = since.isPresent() ? Optional.of(EarlierRelease.of(EarlierTexts.in(since.get()), since.get().toString())) : Optional.empty();
                    List<PublishedFiles> made = new ArrayList<>();
                    AloneExport alone = new AloneExport(publication, release);
                    for (Export form : forms) {
                        made.addAll(alone.of(form));
                        progress.worked(1);
                    }
                    for (PublishedFiles one : made) {
                        written.add(WholeFile.write(folder, one).getFileName().toString());
                    }
                    tellWritten(String.join(", ", written) + " written into " + folder + ".", folder, opens);
                } catch (PublishingRefused | EarlierTexts.Unusable refused) {
                    tell(MessageDialog.WARNING, refused.getMessage());
                } catch (RuntimeException failed) {
                    ILog.of(PublishHandler.class).error(getName() + " failed.", failed);
                    tell(MessageDialog.WARNING, NOT_MADE);
                }
                return Status.OK_STATUS;
            }
        };
    }

    private static void tellWritten(String sentence, Path folder, Predicate<String> opens) {
        Display.getDefault().asyncExec(() -> {
            if (MessageDialog.open(MessageDialog.INFORMATION, DialogParent.shell(), TITLE, sentence, SWT.NONE, "Open the folder", "OK") == 0
                    && !opens.test(folder.toString())) {
                tell(MessageDialog.INFORMATION, "This system has no program that shows folders. The files are in " + folder + ".");
            }
        });
    }

    private static void tell(int kind, String sentence) {
        Display.getDefault().asyncExec(() -> MessageDialog.open(kind, DialogParent.shell(), TITLE,
                sentence, SWT.NONE));
    }
}

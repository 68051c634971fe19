/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IWorkspace;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.Path;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.Status;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IEditorReference;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.osgi.framework.Bundle;

/** The folders on the shelf. */
public final class Folders {
    /** The name of the folder with the demo. */
    public static final String DEMO = "procedures-demo";
    /** The text of the demo that is shown first. */
    public static final String FIRST_OF_THE_DEMO = "OllenbyFaintLabels.procedure";
    private static final String BUNDLE = "org.faultwright.workbench";

    private Folders() {
    }

    /** Puts a folder of the file system on the shelf; its files stay where they are. */
    public static IProject link(java.nio.file.Path folder) throws CoreException {
        refuse(folder);
        IWorkspace workspace = ResourcesPlugin.getWorkspace();
        String name = folder.getFileName() == null ? "procedures" : folder.getFileName().toString();
        IProject project = workspace.getRoot().getProject(free(name));
        forgetDescription(project.getName());
        IProjectDescription description = workspace.newProjectDescription(project.getName());
        project.create(description, new NullProgressMonitor());
        project.open(new NullProgressMonitor());
        IFolder linked = project.getFolder(name);
        // a folder that was taken off leaves its link behind in the workspace
        linked.createLink(folder.toUri(), IResource.REPLACE, new NullProgressMonitor());
        RecentFolders.remember(folder);
        return project;
    }

    /** @throws CoreException with a sentence, where the folder is none, or is open already, alone or within another */
    private static void refuse(java.nio.file.Path folder) throws CoreException {
        if (!java.nio.file.Files.isDirectory(folder)) {
            throw new CoreException(Status.warning("There is no folder " + folder + "."));
        }
        for (java.nio.file.Path open : open()) {
            if (folder.startsWith(open) || open.startsWith(folder)) {
                throw new CoreException(Status.warning(folder.equals(open) ? folder + " is open already."
                        : folder.startsWith(open) ? folder + " is within " + open + ", which is open already."
                        : open + ", which is open already, is within " + folder + ". Take it off first."));
            }
        }
    }

    /** Every open folder. */
    public static List<IProject> all() {
        return Arrays.stream(ResourcesPlugin.getWorkspace().getRoot().getProjects()).filter(IProject::isOpen).toList();
    }

    /** The folder that the texts of an open folder lie in. */
    public static IContainer place(IProject project) {
        return linked(project).map(IContainer.class::cast).orElse(project);
    }

    /** Where a folder lies, in words. */
    public static String words(IProject project) {
        return project.getName() + "   " + place(project).getLocation().toOSString();
    }

    /** Takes a folder off after asking about texts in it that are not saved. The files stay on the disk. */
    public static void takeOff(IProject project, Shell shell) {
        if (!close(project)) {
            return;
        }
        try {
            project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
        } catch (CoreException refused) {
            MessageDialog.openInformation(shell, "Procedures", "\"" + project.getName() + "\" could not be taken off.");
        }
    }

    /** Where the open folders lie. */
    public static List<java.nio.file.Path> open() {
        List<java.nio.file.Path> open = new ArrayList<>();
        for (IProject project : ResourcesPlugin.getWorkspace().getRoot().getProjects()) {
            linked(project).map(IFolder::getLocation).ifPresent(location -> open.add(location.toPath()));
        }
        return open;
    }

    /** The folder of the file system that a project stands for; absent for the demo, which lies in the workspace. */
    public static Optional<IFolder> linked(IProject project) {
        try {
            for (IResource member : project.isOpen() ? project.members() : new IResource[0]) {
                if (member.isLinked() && member instanceof IFolder folder && folder.getLocation() != null) {
                    return Optional.of(folder);
                }
            }
        } catch (CoreException goneMeanwhile) {
            return Optional.empty();
        }
        return Optional.empty();
    }

    /** The file of the shelf that lies at this place, also where it has just come. */
    public static Optional<IFile> file(java.nio.file.Path path) {
        for (IProject project : all()) {
            IContainer place = place(project);
            java.nio.file.Path folder = place.getLocation() == null ? null : place.getLocation().toPath();
            if (folder != null && path.startsWith(folder)) {
                return Optional.of(place.getFile(new Path(folder.relativize(path).toString())));
            }
        }
        return Optional.empty();
    }

    /** Takes folders off that cannot be opened, so that they can be opened again. */
    public static void takeOffUnreadable() {
        for (IProject project : ResourcesPlugin.getWorkspace().getRoot().getProjects()) {
            if (!project.isOpen()) {
                try {
                    project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT | IResource.FORCE, new NullProgressMonitor());
                    forgetDescription(project.getName());
                } catch (CoreException refused) {
                    ILog.of(Folders.class).warn("The folder " + project.getName() + " cannot be taken off.", refused);
                }
            }
        }
    }

    /** What the workspace has written of a folder that is not open any more; nothing of the user's. Left there, it would be read when one of that name is opened. */
    private static void forgetDescription(String name) throws CoreException {
        try {
            java.nio.file.Files.deleteIfExists(ResourcesPlugin.getWorkspace().getRoot().getLocation().toPath()
                    .resolve(name).resolve(IProjectDescription.DESCRIPTION_FILE_NAME));
        } catch (IOException refused) {
            throw new CoreException(Status.error("What the workspace knows of " + name + " cannot be taken off.", refused));
        }
    }

    private static String free(String name) {
        int number = 1;
        String free = name;
        while (ResourcesPlugin.getWorkspace().getRoot().getProject(free).exists()) {
            free = name + " " + ++number;
        }
        return free;
    }

    /** Copies the demo onto the shelf unless it is there. @return its folder */
    public static IProject demo() throws CoreException {
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(DEMO);
        if (!project.exists()) {
            project.create(new NullProgressMonitor());
        }
        if (!project.isOpen()) {
            project.open(new NullProgressMonitor());
        }
        if (project.findMember("library") == null) {
            copy(project);
        }
        return project;
    }

    private static void copy(IProject project) throws CoreException {
        Bundle bundle = Platform.getBundle(BUNDLE);
        List<URL> entries = Collections.list(bundle.findEntries(DEMO, "*.procedure", true));
        for (URL entry : entries) {
            Path path = new Path(entry.getPath().substring(entry.getPath().indexOf(DEMO) + DEMO.length() + 1));
            if (path.segmentCount() > 1 && !project.getFolder(path.segment(0)).exists()) {
                project.getFolder(path.segment(0)).create(true, true, new NullProgressMonitor());
            }
            IFile file = project.getFile(path);
            try (InputStream contents = entry.openStream()) {
                file.create(contents, true, new NullProgressMonitor());
            } catch (IOException unreadable) {
                throw new CoreException(new Status(IStatus.ERROR, BUNDLE, "The demo file " + path + " cannot be read.", unreadable));
            }
        }
    }

    /** Closes every text of a folder, after asking about those that are not saved. @return false if one of them is to stay open */
    private static boolean close(IContainer folder) {
        for (IEditorReference reference : Optional.ofNullable(PlatformUI.getWorkbench().getActiveWorkbenchWindow()).map(IWorkbenchWindow::getActivePage)
                .map(IWorkbenchPage::getEditorReferences).orElseGet(() -> new IEditorReference[0])) {
            IEditorPart editor = reference.getEditor(true);
            IFile file = editor == null ? null : editor.getEditorInput().getAdapter(IFile.class);
            if (file != null && folder.getFullPath().isPrefixOf(file.getFullPath())
                    && !editor.getSite().getPage().closeEditor(editor, true)) {
                return false;
            }
        }
        return true;
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.faultwright.language.server.OpenText;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.files.Encoding;

/** Every procedure and library of the workspace as it stands on disk, read and checked in the background. */
public final class Shelf {
    private static final Shelf ONLY = new Shelf();
    private static final String EXTENSION = "procedure";

    private final Map<IFile, OpenText> read = new ConcurrentHashMap<>();
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private final Job reading = new Reading();
    private volatile boolean complete;

    private Shelf() {
        ResourcesPlugin.getWorkspace().addResourceChangeListener(event -> reading.schedule(200),
                IResourceChangeEvent.POST_CHANGE);
        reading.setSystem(true);
        reading.schedule();
    }

    public static Shelf get() {
        return ONLY;
    }

    /** What was last read of a file; absent before the first time. */
    public Optional<OpenText> of(IFile file) {
        return Optional.ofNullable(read.get(file));
    }

    /** Every file read so far. */
    public Map<IFile, OpenText> all() {
        return Map.copyOf(read);
    }

    /** Whether every file has been read at least once. */
    public boolean isComplete() {
        return complete;
    }

    /** The listener is called from the reading thread. */
    public void addListener(Runnable listener) {
        listeners.add(listener);
    }

    public void removeListener(Runnable listener) {
        listeners.remove(listener);
    }

    public static boolean isProcedureText(IResource resource) {
        return resource instanceof IFile && EXTENSION.equals(resource.getFileExtension());
    }

    /** Every procedure and library of the open folders. */
    public static List<IFile> files() {
        List<IFile> files = new ArrayList<>();
        try {
            ResourcesPlugin.getWorkspace().getRoot().accept(resource -> {
                if (isProcedureText(resource)) {
                    files.add((IFile) resource);
                }
                return !resource.getName().startsWith(".");
            });
        } catch (CoreException unreadable) {
            ILog.of(Shelf.class).error("The folders cannot be read.", unreadable);
        }
        return files;
    }

    private final class Reading extends Job {
        Reading() {
            super("Reading the library");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            List<IFile> files = files();
            read.keySet().retainAll(files);
            for (IFile file : files) {
                if (monitor.isCanceled()) {
                    return Status.CANCEL_STATUS;
                }
                read(file);
            }
            complete = true;
            listeners.forEach(Runnable::run);
            return Status.OK_STATUS;
        }

        private void read(IFile file) {
            try (java.io.InputStream contents = file.getContents(true)) {
                String content = Encoding.read(contents.readAllBytes());
                read.put(file, LiveTexts.get().services().read(new SourceText(LiveTexts.path(file), content)));
            } catch (CoreException | java.io.IOException unreadable) {
                ILog.of(Shelf.class).warn("The file " + file.getFullPath() + " cannot be read.", unreadable);
                read.remove(file);
            }
        }
    }
}

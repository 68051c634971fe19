/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.IResourceDelta;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.files.Encoding;
import org.faultwright.workbench.files.LargestText;
import org.faultwright.workbench.settings.WorkbenchSettings;

/**
 * Every procedure and library of the open folders as it stands on disk. Heads are read at once, so that titles are there; then comes what was
 * found before and kept; checks of the rest follow in the background, and afterwards only of what changed and what uses it.
 */
public final class FolderDocuments {
    private static final FolderDocuments ONLY = new FolderDocuments();
    private static final String EXTENSION = "procedure";
    private static final String UNREADABLE = "unreadable-text";
    /** At a start, the text that is looked at and its card come first. */
    private static final long MILLISECONDS_FOR_THE_TEXT_IN_FRONT = 4_000;
    private static final long MILLISECONDS_BETWEEN_NEWS = 700;

    private final Map<IFile, ShelfFile> shelved = new ConcurrentHashMap<>();
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    /** Files whose head is to be read; guards the other set too, which a file enters only when its head is known. */
    private final Set<IFile> waiting = new LinkedHashSet<>();
    private final Set<IFile> unchecked = new LinkedHashSet<>();
    private final Job heads = new ReadingHeads();
    private final Job checking = new CheckJob();
    private boolean reading;
    private volatile boolean complete;
    private volatile boolean stopped;
    private volatile boolean begun;

    private FolderDocuments() {
        checking.setSystem(true);
        heads.setSystem(true);
        checking.setPriority(Job.DECORATE);
        ResourcesPlugin.getWorkspace().addResourceChangeListener(this::changed, IResourceChangeEvent.POST_CHANGE);
        WorkbenchSettings.addListener(() -> wait(files()));
        wait(files());
    }

    public static FolderDocuments get() {
        return ONLY;
    }

    /** What is known of a file; absent before its head was read. */
    public Optional<ShelfFile> of(IFile file) {
        return Optional.ofNullable(shelved.get(file));
    }

    /** Every file whose head was read. */
    public Map<IFile, ShelfFile> all() {
        return Map.copyOf(shelved);
    }

    /**
     * How far the checks are.
     *
     * @param checked how many files were checked
     * @param all     how many there are
     * @param running whether the rest is being checked
     */
    public record Progress(int checked, int all, boolean running) {
    }

    public Progress progress() {
        return new Progress((int) shelved.values().stream().filter(ShelfFile::checked).count(), shelved.size(),
                !complete && !stopped);
    }

    /** Checks nothing more until told to; what was found stays. */
    public void stop() {
        stopped = true;
        checking.cancel();
        tell();
    }

    /** Goes on where it was stopped. */
    public void goOn() {
        stopped = false;
        checking.schedule();
        tell();
    }

    /** Whether every file has been checked. */
    public boolean isComplete() {
        return complete;
    }

    /** The listener is called from a reading thread. */
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
            ILog.of(FolderDocuments.class).error("The folders cannot be read.", unreadable);
        }
        return files;
    }

    private void changed(IResourceChangeEvent event) {
        List<IFile> touched = new ArrayList<>();
        try {
            event.getDelta().accept(delta -> {
                boolean content = delta.getKind() != IResourceDelta.CHANGED
                        || (delta.getFlags() & (IResourceDelta.CONTENT | IResourceDelta.REPLACED)) != 0;
                if (content && isProcedureText(delta.getResource())) {
                    touched.add((IFile) delta.getResource());
                }
                return true;
            });
        } catch (CoreException unreadable) {
            ILog.of(FolderDocuments.class).warn("A change in the folders was missed.", unreadable);
        }
        if (!touched.isEmpty()) {
            wait(touched);
        }
    }

    private void wait(Collection<IFile> files) {
        synchronized (waiting) {
            waiting.addAll(files);
            complete = false;
        }
        heads.schedule(files.size() > 1 ? 0 : 100);
    }

    private void tell() {
        listeners.forEach(Runnable::run);
    }

    private final class ReadingHeads extends Job {
        private ReadingHeads() {
            super("Reading titles");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            List<IFile> files;
            synchronized (waiting) {
                files = List.copyOf(waiting);
                waiting.clear();
                reading = true;
            }
            for (IFile file : files) {
                readHead(file);
            }
            Set<IFile> users = usersOf(files);
            synchronized (waiting) {
                unchecked.addAll(files);
                unchecked.addAll(users);
                reading = false;
            }
            tell();
            takeUpKept();
            tell();
            if (!stopped) {
                checking.cancel();
                checking.schedule(begun ? 0 : MILLISECONDS_FOR_THE_TEXT_IN_FRONT);
                begun = true;
            }
            return Status.OK_STATUS;
        }

        /** What was found before, in an earlier start too, is there before the first rule runs. */
        private void takeUpKept() {
            long told = System.currentTimeMillis();
            List<IFile> all;
            synchronized (waiting) {
                all = List.copyOf(unchecked);
            }
            for (IFile file : all) {
                if (stopped) {
                    return;
                }
                if (isKept(file)) {
                    synchronized (waiting) {
                        unchecked.remove(file);
                    }
                }
                if (System.currentTimeMillis() - told > MILLISECONDS_BETWEEN_NEWS) {
                    told = System.currentTimeMillis();
                    tell();
                }
            }
        }

        private boolean isKept(IFile file) {
            if (!file.exists() || file.getLocation() == null || LargestText.refusal(file).isPresent()) {
                return false;
            }
            try {
                SourceText source = source(file);
                Optional<List<Finding>> kept = LiveTexts.get().services().kept(source);
                kept.ifPresent(found -> shelved.put(file, new ShelfFile(FileHead.of(source.content()), found, true)));
                return kept.isPresent();
            } catch (IOException unreadable) {
                return false;
            }
        }

        private void readHead(IFile file) {
            if (!file.exists() || file.getLocation() == null) {
                shelved.remove(file);
                return;
            }
            ShelfFile before = shelved.get(file);
            shelved.put(file, new ShelfFile(head(file), before == null ? List.of() : before.findings(), false));
        }

        /** One that cannot be read has an empty head; that nothing in it was checked is said when its turn comes. */
        private static FileHead head(IFile file) {
            try (InputStream bytes = Files.newInputStream(LiveTexts.onDisk(file))) {
                return FileHead.of(Encoding.read(bytes.readNBytes(FileHead.BYTES)));
            } catch (IOException unreadable) {
                return FileHead.of("");
            }
        }

        /** What uses a library that changed, directly or through another one. */
        private Set<IFile> usersOf(List<IFile> changed) {
            Set<IFile> users = new LinkedHashSet<>();
            ArrayDeque<IFile> libraries = new ArrayDeque<>(changed);
            while (!libraries.isEmpty()) {
                IFile library = libraries.pop();
                String name = library.getName().substring(0, library.getName().length() - EXTENSION.length() - 1);
                shelved.forEach((file, known) -> {
                    if (known.head().uses().contains(name) && users.add(file)) {
                        libraries.push(file);
                    }
                });
            }
            return users;
        }
    }

    private static SourceText source(IFile file) throws IOException {
        return new SourceText(LiveTexts.path(file), Encoding.read(Files.readAllBytes(LiveTexts.onDisk(file))));
    }

    /** A file that no rule has seen never looks like one in which nothing was found. */
    private static ShelfFile unchecked(IFile file, FileHead head, String sentence) {
        SourceRange beginning = new SourceRange(new SourceText(LiveTexts.path(file), ""), 0, 0);
        return new ShelfFile(head, List.of(new Finding(UNREADABLE, Severity.ERROR, beginning, sentence + " Nothing in it was checked.",
                "Put what is no procedure into another folder, or make it one that can be read.", List.of(), List.of())), true);
    }

    private final class CheckJob extends Job {
        private CheckJob() {
            super("Checking procedures");
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            long told = System.currentTimeMillis();
            Optional<IFile> next = next();
            monitor.beginTask(getName(), IProgressMonitor.UNKNOWN);
            while (next.isPresent()) {
                if (monitor.isCanceled()) {
                    synchronized (waiting) {
                        unchecked.add(next.get());
                    }
                    return Status.CANCEL_STATUS;
                }
                monitor.subTask(next.get().getName());
                check(next.get());
                if (System.currentTimeMillis() - told > MILLISECONDS_BETWEEN_NEWS) {
                    told = System.currentTimeMillis();
                    tell();
                }
                next = next();
            }
            synchronized (waiting) {
                complete = waiting.isEmpty() && !reading && unchecked.isEmpty();
            }
            tell();
            LiveTexts.get().services().sweep();
            return Status.OK_STATUS;
        }

        private Optional<IFile> next() {
            synchronized (waiting) {
                Optional<IFile> first = unchecked.stream().findFirst();
                first.ifPresent(unchecked::remove);
                return first;
            }
        }

        private void check(IFile file) {
            ShelfFile known = shelved.get(file);
            if (known == null || !file.exists()) {
                shelved.remove(file);
                return;
            }
            Optional<String> refused = LargestText.refusal(file);
            if (refused.isPresent()) {
                shelved.put(file, unchecked(file, known.head(), refused.get()));
                return;
            }
            try {
                SourceText source = source(file);
                // the whole text may say "uses" further down than its head
                shelved.put(file, new ShelfFile(FileHead.of(source.content()), LiveTexts.get().services().anew(source), true));
            } catch (IOException unreadable) {
                ILog.of(FolderDocuments.class).warn("The file " + file.getFullPath() + " cannot be read.", unreadable);
                shelved.put(file, unchecked(file, known.head(), "\"" + file.getName() + "\" cannot be read: may you read it?"));
            }
        }
    }
}

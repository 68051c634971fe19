/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.IDocument;
import org.faultwright.language.server.EditingServices;
import org.faultwright.language.server.OpenText;
import org.faultwright.workbench.settings.WorkbenchSettings;

/** The texts open in editors, read and checked after each change, away from the window's thread. */
public final class LiveTexts {
    private static final LiveTexts ONLY = new LiveTexts();

    private LocalDate judgedOn = WorkbenchSettings.calibrationDay();
    private EditingServices services = new EditingServices(Optional.of(judgedOn));
    private final Map<IDocument, LiveText> open = new ConcurrentHashMap<>();
    private final List<Consumer<LiveText>> listeners = new CopyOnWriteArrayList<>();
    private final Studying studying = new Studying();

    private LiveTexts() {
        WorkbenchSettings.addListener(this::checkAll);
    }

    public static LiveTexts get() {
        return ONLY;
    }

    /** What reads and checks, by the day on which calibration is judged: a window may be open over midnight. */
    public synchronized EditingServices services() {
        LocalDate day = WorkbenchSettings.calibrationDay();
        if (!day.equals(judgedOn)) {
            judgedOn = day;
            services = new EditingServices(Optional.of(day));
        }
        return services;
    }

    /** Checks every open text anew, away from the window's thread. */
    private void checkAll() {
        Job.createSystem("Checking the open texts", (ICoreRunnable) monitor -> open.keySet().forEach(this::check)).schedule();
    }

    /** Reads and checks the document as it stands, and tells the listeners; called from any thread but the window's. */
    public void check(IDocument document) {
        read(document).ifPresent(live -> {
            tell(live);
            open.values().stream().filter(user -> user.text().uses(live.text()))
                    .forEach(user -> read(user.document()).ifPresent(again -> {
                        tell(again);
                        studying.inAPause(again);
                    }));
            studying.inAPause(live);
        });
    }

    private Optional<LiveText> read(IDocument document) {
        return file(document).map(file -> new LiveText(file, document, services().update(path(file), document.get())));
    }

    private void tell(LiveText live) {
        open.put(live.document(), live);
        listeners.forEach(listener -> listener.accept(live));
    }

    /** Runs the rules that take longer once nobody has written for a moment. */
    private final class Studying extends Job {
        private static final int MILLISECONDS_OF_PAUSE = 700;
        private final Set<IDocument> waiting = ConcurrentHashMap.newKeySet();

        Studying() {
            super("Studying faults and order");
            setSystem(true);
            setPriority(DECORATE);
        }

        void inAPause(LiveText live) {
            waiting.add(live.document());
            cancel();
            schedule(MILLISECONDS_OF_PAUSE);
        }

        @Override
        protected IStatus run(IProgressMonitor monitor) {
            for (IDocument document : List.copyOf(waiting)) {
                if (monitor.isCanceled()) {
                    return Status.CANCEL_STATUS;
                }
                waiting.remove(document);
                of(document).ifPresent(this::study);
            }
            return Status.OK_STATUS;
        }

        private void study(LiveText live) {
            OpenText more = services().withEveryRule(live.text());
            if (open.get(live.document()) == live && !more.findings().equals(live.text().findings())) {
                tell(new LiveText(live.file(), live.document(), more));
            }
        }
    }

    /** The last answer about a document; absent before the first. */
    public Optional<LiveText> of(IDocument document) {
        return Optional.ofNullable(open.get(document));
    }

    /** The last answer about a file, if it is open in an editor. */
    public Optional<LiveText> of(IFile file) {
        return open.values().stream().filter(live -> live.file().equals(file)).findFirst();
    }

    /** An answer about the document as it stands; reads it again where the last one is older. */
    public Optional<LiveText> current(IDocument document) {
        Optional<LiveText> known = of(document);
        if (known.isPresent() && known.get().isCurrent()) {
            return known;
        }
        return read(document);
    }

    /** The document is no longer open. */
    public void close(IDocument document) {
        LiveText last = open.remove(document);
        if (last != null) {
            services().close(path(last.file()));
        }
    }

    /** The listener is called from the checking thread. */
    public void addListener(Consumer<LiveText> listener) {
        listeners.add(listener);
    }

    public void removeListener(Consumer<LiveText> listener) {
        listeners.remove(listener);
    }

    /** Where a file lies on disk. */
    public static String path(IFile file) {
        return file.getLocation() == null ? file.getFullPath().toString() : file.getLocation().toOSString();
    }

    /**
     * Where a file lies, to be read there.
     *
     * @throws NoSuchFileException where its folder was taken off meanwhile
     */
    static Path onDisk(IFile file) throws NoSuchFileException {
        IPath place = file.getLocation();
        if (place == null) {
            throw new NoSuchFileException(file.getFullPath().toString());
        }
        return place.toPath();
    }

    private static Optional<IFile> file(IDocument document) {
        ITextFileBuffer buffer = FileBuffers.getTextFileBufferManager().getTextFileBuffer(document);
        if (buffer == null || buffer.getLocation() == null || buffer.getLocation().segmentCount() < 2) {
            return Optional.empty();
        }
        IFile file = ResourcesPlugin.getWorkspace().getRoot().getFile(buffer.getLocation());
        return file.exists() ? Optional.of(file) : Optional.empty();
    }
}

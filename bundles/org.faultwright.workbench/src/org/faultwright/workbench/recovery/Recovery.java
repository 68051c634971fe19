/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.recovery;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.IFileBuffer;
import org.eclipse.core.filebuffers.IFileBufferListener;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.Platform;
import org.eclipse.jface.text.DocumentEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentListener;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.workbench.files.Encoding;
import org.faultwright.workbench.live.LiveTexts;

/**
 * Keeps a copy of what is typed and not yet saved, at the latest {@value #MILLISECONDS} ms (and the time of writing a file)
 * after a key, in the folder {@code unsaved} of the workspace. A copy goes when its text was saved or given up on purpose; what
 * is there at a start was left by a window that ended without asking.
 */
public final class Recovery {
    static final int MILLISECONDS = 1_000;
    private static final Recovery ONLY = new Recovery(inWorkspace());

    private final Path folder;
    private final Map<IFileBuffer, Watching> watched = new HashMap<>();
    private final Set<ITextFileBuffer> changed = new HashSet<>();
    private boolean waiting;

    private Recovery(Path folder) {
        this.folder = folder;
    }

    Path folder() {
        return folder;
    }

    public static Recovery get() {
        return ONLY;
    }

    private static Path inWorkspace() {
        try {
            return Path.of(Platform.getInstanceLocation().getURL().toURI()).resolve("unsaved");
        } catch (URISyntaxException | IllegalArgumentException strange) {
            return Path.of(Platform.getInstanceLocation().getURL().getPath()).resolve("unsaved");
        }
    }

    /** Keeps copies from now on. Only for the window's thread. */
    public void start() {
        FileBuffers.getTextFileBufferManager().addFileBufferListener(new Following());
        for (IFileBuffer open : FileBuffers.getTextFileBufferManager().getFileBuffers()) {
            watch(open);
        }
    }

    /** Offers what was typed and not saved when the last window ended. */
    public static void ask(Shell shell) {
        if (!shell.isDisposed()) {
            RecoveryDialog.askForAll(shell);
        }
    }

    /** What was typed and not saved when the last window ended, where it differs from the file as it is now. */
    List<UnsavedText> left() {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> copies = Files.list(folder)) {
            return copies.filter(UnsavedText::isCopy).sorted().flatMap(copy -> UnsavedText.read(copy).stream())
                    .distinct().filter(this::differs).toList();
        } catch (IOException unreadable) {
            ILog.of(Recovery.class).warn("The copies of unsaved texts cannot be read.", unreadable);
            return List.of();
        }
    }

    private boolean differs(UnsavedText copy) {
        if (saved(copy).equals(copy.text())) {
            copy.drop(folder);
            return false;
        }
        return true;
    }

    /**
     * Puts the copies that are left aside, under names of their own: what is typed, saved or closed from now on in their files
     * does not touch them until the writer has decided.
     */
    List<UnsavedText> putAside() {
        List<UnsavedText> aside = new ArrayList<>();
        for (UnsavedText text : left()) {
            try {
                text.putAside(folder);
            } catch (IOException refused) {
                ILog.of(Recovery.class).warn("The copy of " + text.file() + " cannot be put aside.", refused);
            }
            aside.add(text);
        }
        return aside;
    }

    /** The text is in the editor of its file now, to be kept as whatever is typed there. */
    void takenUp(UnsavedText text) {
        try {
            text.keep(folder);
            text.dropAside(folder);
        } catch (IOException refused) {
            ILog.of(Recovery.class).warn("The copy of " + text.file() + " stays aside.", refused);
        }
    }

    /** The writer does not want the text. */
    void drop(UnsavedText text) {
        text.drop(folder);
    }

    /** The text as the file has it; empty where there is none. */
    static String saved(UnsavedText copy) {
        try {
            Path file = Path.of(copy.file());
            return Files.exists(file) ? Encoding.read(Files.readAllBytes(file)) : "";
        } catch (IOException unreadable) {
            return "";
        }
    }

    /** The copy is no longer needed. */
    private void forget(String file) {
        try {
            Files.deleteIfExists(folder.resolve(UnsavedText.nameFor(file)));
        } catch (IOException refused) {
            ILog.of(Recovery.class).warn("The copy of " + file + " cannot be deleted.", refused);
        }
    }

    private void watch(IFileBuffer opened) {
        if (opened instanceof ITextFileBuffer buffer && !watched.containsKey(buffer) && file(buffer).isPresent()) {
            Watching watching = new Watching(buffer);
            watched.put(buffer, watching);
            buffer.getDocument().addDocumentListener(watching);
        }
    }

    private void leave(IFileBuffer closed) {
        Watching watching = watched.remove(closed);
        if (watching != null) {
            watching.document.removeDocumentListener(watching);
            changed.remove(closed);
            path(closed).ifPresent(this::forget);
        }
    }

    private void keepSoon(ITextFileBuffer buffer) {
        changed.add(buffer);
        if (!waiting && Display.getCurrent() != null) {
            waiting = true;
            Display.getCurrent().timerExec(MILLISECONDS, this::keep);
        }
    }

    private void keep() {
        waiting = false;
        List<UnsavedText> texts = changed.stream().filter(IFileBuffer::isDirty)
                .flatMap(buffer -> path(buffer).map(path -> new UnsavedText(path, buffer.getDocument().get())).stream()).toList();
        changed.clear();
        org.eclipse.core.runtime.jobs.Job writing = org.eclipse.core.runtime.jobs.Job.createSystem("Keeping what is typed",
                (org.eclipse.core.runtime.ICoreRunnable) monitor -> texts.forEach(this::keep));
        writing.setPriority(org.eclipse.core.runtime.jobs.Job.SHORT);
        writing.schedule();
    }

    private void keep(UnsavedText text) {
        try {
            text.keep(folder);
        } catch (IOException refused) {
            ILog.of(Recovery.class).warn("No copy of the unsaved text of " + text.file() + " could be kept.", refused);
        }
    }

    private static java.util.Optional<IFile> file(IFileBuffer buffer) {
        IPath location = buffer.getLocation();
        return location == null || location.segmentCount() < 2 ? java.util.Optional.empty()
                : java.util.Optional.of(ResourcesPlugin.getWorkspace().getRoot().getFile(location));
    }

    private static java.util.Optional<String> path(IFileBuffer buffer) {
        return file(buffer).map(LiveTexts::path);
    }

    private final class Watching implements IDocumentListener {
        private final ITextFileBuffer buffer;
        private final IDocument document;

        Watching(ITextFileBuffer buffer) {
            this.buffer = buffer;
            this.document = buffer.getDocument();
        }

        @Override
        public void documentAboutToBeChanged(DocumentEvent event) {
            // what counts is the text after the change
        }

        @Override
        public void documentChanged(DocumentEvent event) {
            keepSoon(buffer);
        }
    }

    private final class Following implements IFileBufferListener {
        @Override
        public void bufferCreated(IFileBuffer buffer) {
            watch(buffer);
        }

        @Override
        public void bufferDisposed(IFileBuffer buffer) {
            leave(buffer);
        }

        @Override
        public void dirtyStateChanged(IFileBuffer buffer, boolean dirty) {
            if (!dirty) {
                path(buffer).ifPresent(Recovery.this::forget);
            }
        }

        @Override
        public void bufferContentAboutToBeReplaced(IFileBuffer buffer) {
            // the document tells
        }

        @Override
        public void bufferContentReplaced(IFileBuffer buffer) {
            // the document tells
        }

        @Override
        public void stateChanging(IFileBuffer buffer) {
            // nothing is lost by it
        }

        @Override
        public void stateValidationChanged(IFileBuffer buffer, boolean validated) {
            // nothing is lost by it
        }

        @Override
        public void underlyingFileMoved(IFileBuffer buffer, IPath path) {
            // the copy stays with the old name until the text is saved or closed
        }

        @Override
        public void underlyingFileDeleted(IFileBuffer buffer) {
            if (buffer instanceof ITextFileBuffer text) {
                keepSoon(text);
            }
        }

        @Override
        public void stateChangeFailed(IFileBuffer buffer) {
            // nothing is lost by it
        }
    }
}

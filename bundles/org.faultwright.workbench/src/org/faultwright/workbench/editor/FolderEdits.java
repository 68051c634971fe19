/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.ITextFileBufferManager;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.Status;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.widgets.Display;
import org.faultwright.analysis.Fix;
import org.faultwright.workbench.files.SameEncoding;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/**
 * A change of many files as one: an open one is changed in its editor, in one step that can be taken back, and saved by the writer; the
 * others are saved at once. Either all of them change or none.
 *
 * @param edits by file, each with the text that they were made for
 * @param done  what was done to them, as in "nothing was renamed"
 */
public record FolderEdits(Map<IFile, List<Fix.Edit>> edits, String done) {
    /**
     * From any thread; a job leaves the window its own.
     *
     * @throws CoreException with a sentence for the user when one of the files cannot be written; none of them is changed then
     */
    public void write() throws CoreException {
        List<ITextFileBuffer> connected = new ArrayList<>();
        Map<ITextFileBuffer, String> written = new LinkedHashMap<>();
        try {
            for (Map.Entry<IFile, List<Fix.Edit>> entry : edits.entrySet()) {
                requireWritable(entry.getKey());
                buffers().connect(entry.getKey().getFullPath(), LocationKind.IFILE, new NullProgressMonitor());
                ITextFileBuffer buffer = buffer(entry.getKey());
                connected.add(buffer);
                requireUnchanged(entry, buffer.getDocument());
            }
            // what can be refused comes first, and what only changes an editor last
            for (Map.Entry<IFile, List<Fix.Edit>> entry : edits.entrySet()) {
                ITextFileBuffer buffer = buffer(entry.getKey());
                if (!isInEditor(buffer.getDocument())) {
                    String before = buffer.getDocument().get();
                    apply(entry.getValue(), buffer.getDocument());
                    save(buffer);
                    written.put(buffer, before);
                }
            }
            inTheWindow(() -> changeEditors(written));
        } catch (CoreException refused) {
            putBack(written);
            throw refused;
        } finally {
            for (ITextFileBuffer buffer : connected) {
                buffers().disconnect(buffer.getLocation(), LocationKind.IFILE, new NullProgressMonitor());
            }
        }
    }

    private interface Change {
        void make() throws CoreException;
    }

    /** Editors belong to the window's thread; files need not wait for it. */
    private static void inTheWindow(Change change) throws CoreException {
        CoreException[] refused = {null};
        Display.getDefault().syncExec(() -> {
            try {
                change.make();
            } catch (CoreException one) {
                refused[0] = one;
            }
        });
        if (refused[0] != null) {
            throw refused[0];
        }
    }

    private void changeEditors(Map<ITextFileBuffer, String> written) throws CoreException {
        List<Map.Entry<IFile, List<Fix.Edit>>> open = edits.entrySet().stream().filter(entry -> !written.containsKey(buffer(entry.getKey()))).toList();
        for (Map.Entry<IFile, List<Fix.Edit>> entry : open) {
            requireUnchanged(entry, buffer(entry.getKey()).getDocument());
        }
        for (Map.Entry<IFile, List<Fix.Edit>> entry : open) {
            apply(entry.getValue(), buffer(entry.getKey()).getDocument());
        }
    }

    private static void apply(List<Fix.Edit> edits, IDocument document) throws CoreException {
        try {
            DocumentEdits.apply(edits.stream().map(edit -> new DocumentEdits.Edit(edit.at().offset(), edit.at().length(), edit.replacement()))
                    .toList(), document);
        } catch (BadLocationException changed) {
            throw new CoreException(Status.error("A text changed meanwhile.", changed));
        }
    }

    private void save(ITextFileBuffer buffer) throws CoreException {
        try {
            SameEncoding.commit(buffer, new NullProgressMonitor());
        } catch (CoreException refused) {
            throw new CoreException(Status.error("\"" + buffer.getLocation().lastSegment()
                    + "\" could not be written, so nothing was " + done + ". Is there room in its folder, may you write there, and has"
                    + " its encoding a place for each sign?", refused));
        }
    }

    private static void putBack(Map<ITextFileBuffer, String> written) throws CoreException {
        for (Map.Entry<ITextFileBuffer, String> one : written.entrySet()) {
            one.getKey().getDocument().set(one.getValue());
            try {
                SameEncoding.commit(one.getKey(), new NullProgressMonitor());
            } catch (CoreException refused) {
                throw new CoreException(Status.error("\"" + one.getKey().getLocation().lastSegment()
                        + "\" is changed already and could not be put back. Look through it by hand.", refused));
            }
        }
    }

    private void requireWritable(IFile file) throws CoreException {
        if (file.isReadOnly()) {
            throw new CoreException(Status.error("\"" + file.getName()
                    + "\" is write-protected and would change too, so nothing was " + done + ". Take the write protection off first."));
        }
    }

    private void requireUnchanged(Map.Entry<IFile, List<Fix.Edit>> entry, IDocument document) throws CoreException {
        if (!entry.getValue().get(0).at().source().content().equals(document.get())) {
            throw new CoreException(Status.error("\"" + entry.getKey().getName()
                    + "\" changed meanwhile; nothing was " + done + ". Try again."));
        }
    }

    private static boolean isInEditor(IDocument document) {
        return LiveTexts.get().of(document).map(LiveText::document).isPresent();
    }

    private static ITextFileBuffer buffer(IFile file) {
        return buffers().getTextFileBuffer(file.getFullPath(), LocationKind.IFILE);
    }

    private static ITextFileBufferManager buffers() {
        return FileBuffers.getTextFileBufferManager();
    }
}

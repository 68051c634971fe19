/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
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
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.language.server.EditingServices;
import org.faultwright.language.server.OpenText;
import org.faultwright.language.server.Renaming;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.files.Encoding;
import org.faultwright.workbench.files.SameEncoding;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.Shelf;

/**
 * A new name for something, in every file that says the old one.
 *
 * @param edits by file, each with the text that they were made for
 */
record NewName(Name declared, String newName, Map<IFile, List<Fix.Edit>> edits) {
    private static final EditingServices SERVICES = LiveTexts.get().services();

    /** Looks for the old name in every file on the shelf, as it stands in its editor or else on disk. */
    static NewName of(Name declared, String newName) throws CoreException {
        Map<IFile, List<Fix.Edit>> edits = new LinkedHashMap<>();
        Pattern word = Pattern.compile("(?U)\\b" + Pattern.quote(declared.text()) + "\\b");
        for (IFile file : Shelf.files()) {
            String content = content(file);
            if (word.matcher(content).find()) {
                OpenText text = SERVICES.read(new SourceText(LiveTexts.path(file), content));
                List<Fix.Edit> found = Renaming.edits(text, declared, newName);
                if (!found.isEmpty()) {
                    edits.put(file, found);
                }
            }
        }
        return new NewName(declared, newName, edits);
    }

    private static String content(IFile file) throws CoreException {
        ITextFileBuffer open = buffers().getTextFileBuffer(file.getFullPath(), LocationKind.IFILE);
        if (open != null) {
            return open.getDocument().get();
        }
        try {
            return Encoding.read(Files.readAllBytes(file.getLocation().toPath()));
        } catch (IOException unreadable) {
            throw new CoreException(Status.error("\"" + file.getName() + "\" cannot be read.", unreadable));
        }
    }

    /** What the new name would break in the file that declares it, such as a second step of that name; absent when nothing. */
    Optional<String> refusal() {
        for (List<Fix.Edit> ofFile : edits.values()) {
            SourceText before = ofFile.get(0).at().source();
            if (before.name().equals(declared.at().source().name())) {
                List<String> had = errors(before);
                return errors(new SourceText(before.name(), applied(before.content(), ofFile))).stream()
                        .filter(message -> !had.contains(message.replace(newName, declared.text())) && !had.contains(message))
                        .findFirst();
            }
        }
        return Optional.empty();
    }

    private static List<String> errors(SourceText source) {
        return SERVICES.read(source).findings().stream().filter(finding -> finding.severity() == Severity.ERROR)
                .map(Finding::message).toList();
    }

    private static String applied(String content, List<Fix.Edit> edits) {
        StringBuilder text = new StringBuilder(content);
        edits.stream().sorted((a, b) -> b.at().offset() - a.at().offset())
                .forEach(edit -> text.replace(edit.at().offset(), edit.at().end(), edit.replacement()));
        return text.toString();
    }

    int places() {
        return edits.values().stream().mapToInt(List::size).sum();
    }

    /**
     * Writes the name: into the editors where a file is open, to be saved by the writer; into the file where it is not.
     *
     * @throws CoreException with a sentence for the user when one of the files cannot be written; none of them is renamed then
     */
    void write() throws CoreException {
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
            for (Map.Entry<IFile, List<Fix.Edit>> entry : edits.entrySet()) {
                ITextFileBuffer buffer = buffer(entry.getKey());
                if (!written.containsKey(buffer)) {
                    apply(entry.getValue(), buffer.getDocument());
                }
            }
        } catch (CoreException refused) {
            putBack(written);
            throw refused;
        } finally {
            for (ITextFileBuffer buffer : connected) {
                buffers().disconnect(buffer.getLocation(), LocationKind.IFILE, new NullProgressMonitor());
            }
        }
    }

    private static void apply(List<Fix.Edit> edits, IDocument document) throws CoreException {
        try {
            Edits.apply(edits.stream().map(edit -> new Edits.Edit(edit.at().offset(), edit.at().length(), edit.replacement()))
                    .toList(), document);
        } catch (BadLocationException changed) {
            throw new CoreException(Status.error("A text changed meanwhile.", changed));
        }
    }

    private static void save(ITextFileBuffer buffer) throws CoreException {
        try {
            SameEncoding.commit(buffer, new NullProgressMonitor());
        } catch (CoreException refused) {
            throw new CoreException(Status.error("\"" + buffer.getLocation().lastSegment()
                    + "\" could not be written, so nothing was renamed. Is there room in its folder, may you write there, and has"
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
                        + "\" has the new name already and could not be put back. Rename it there by hand.", refused));
            }
        }
    }

    private static void requireWritable(IFile file) throws CoreException {
        if (file.isReadOnly()) {
            throw new CoreException(Status.error("\"" + file.getName()
                    + "\" is write-protected and says the name too, so nothing was renamed. Take the write protection off first."));
        }
    }

    private static void requireUnchanged(Map.Entry<IFile, List<Fix.Edit>> entry, IDocument document) throws CoreException {
        if (!entry.getValue().get(0).at().source().content().equals(document.get())) {
            throw new CoreException(Status.error("\"" + entry.getKey().getName()
                    + "\" changed meanwhile; nothing was renamed. Try again."));
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

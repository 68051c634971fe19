/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.Status;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.language.server.EditingServices;
import org.faultwright.language.server.OpenText;
import org.faultwright.language.server.Renaming;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.ShelfText;

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
        for (IFile file : FolderDocuments.files()) {
            ShelfText shelved = ShelfText.of(file);
            if (shelved.source().isEmpty()) {
                throw new CoreException(Status.error(shelved.remark().orElseThrow() + " It may say the name too, so nothing was renamed. Put it into another"
                        + " folder first, or make it one that can be read."));
            }
            SourceText source = shelved.source().get();
            if (word.matcher(source.content()).find()) {
                OpenText text = SERVICES.unchecked(source);
                List<Fix.Edit> found = Renaming.edits(text, declared, newName);
                if (!found.isEmpty()) {
                    edits.put(file, found);
                }
            }
        }
        return new NewName(declared, newName, edits);
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
        new FolderEdits(edits, "renamed").write();
    }
}

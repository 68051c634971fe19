/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.eclipse.core.resources.IFile;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.checking.FixRun;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.editor.ChangedLines;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.ShelfText;

/**
 * What the fixes of one rule make of a file.
 *
 * @param fixes   how many of them hold one after the other
 * @param left    how many findings of the rule stay, because no fix of theirs holds
 * @param changed the lines that change
 * @param refused why nothing can be changed there, in a sentence; absent where something can
 */
record FixedFile(IFile file, int fixes, int left, List<ChangedLines> changed, Optional<String> refused) {
    /** Tries the fixes as the command line does. @return absent when it was stopped meanwhile */
    static Optional<FixedFile> of(IFile file, String rule, BooleanSupplier stopped) {
        Optional<SourceText> source = ShelfText.of(file).source();
        if (source.isEmpty()) {
            return Optional.of(new FixedFile(file, 0, 0, List.of(), ShelfText.of(file).remark()));
        }
        if (file.isReadOnly()) {
            return Optional.of(new FixedFile(file, 0, 0, List.of(), Optional.of("\"" + file.getName() + "\" is write-protected.")));
        }
        FixRun run = LiveTexts.get().services().fixing(source.get());
        int fixes = 0;
        while (!stopped.getAsBoolean() && run.next(finding -> finding.rule().equals(rule), 1).isPresent()) {
            fixes++;
        }
        int left = (int) run.own().stream().filter(finding -> finding.rule().equals(rule)).count();
        return stopped.getAsBoolean() ? Optional.empty()
                : Optional.of(new FixedFile(file, fixes, left, ChangedLines.between(source.get(), run.now().content()), Optional.empty()));
    }

    List<Fix.Edit> edits() {
        return changed.stream().map(ChangedLines::edit).toList();
    }
}

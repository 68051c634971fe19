/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.faultwright.language.server.EditingServices;
import org.faultwright.language.server.FoundPlace;
import org.faultwright.language.server.PlacesInText;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.live.FileHead;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.ShelfText;

/**
 * What was found in one file.
 *
 * @param title  what the procedure or library is called
 * @param remark why the file was not looked through, or what is odd about it; absent for most
 */
record FoundInFile(IFile file, String title, List<FoundPlace> places, Optional<String> remark) {
    /** Looks through a file as it stands in its editor, or else on disk. */
    static FoundInFile of(IFile file, SearchQuery looked) {
        ShelfText text = ShelfText.of(file);
        return text.source().map(source -> new FoundInFile(file, FileHead.of(source.content()).title(), places(source, looked), text.remark()))
                .orElseGet(() -> new FoundInFile(file, "", List.of(), text.remark()));
    }

    private static List<FoundPlace> places(SourceText source, SearchQuery looked) {
        if (looked.uses().isEmpty()) {
            return PlacesInText.of(source, looked.words(), looked.among());
        }
        if (!looked.named().matcher(source.content()).find()) {
            return List.of();
        }
        EditingServices services = LiveTexts.get().services();
        return PlacesInText.naming(services.unchecked(source), looked.uses().get());
    }
}

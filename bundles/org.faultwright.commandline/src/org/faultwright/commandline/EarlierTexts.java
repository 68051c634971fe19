/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.faultwright.language.ReleasedTexts;
import org.faultwright.procedure.Procedure;

/** The procedures of an earlier release or folder, for a comparison. */
final class EarlierTexts {
    private EarlierTexts() {
    }

    /** @throws CannotProceed where there is none, or one cannot be read */
    static List<Procedure> in(Path place) {
        if (!Files.exists(place)) {
            throw new CannotProceed("There is no \"" + place + "\" to compare with; name a text, or the folder that the last release was"
                    + " published into.");
        }
        List<Procedure> procedures;
        try {
            procedures = ReleasedTexts.in(place);
        } catch (IOException unreadable) {
            throw new CannotProceed("\"" + place + "\" cannot be read (" + unreadable.getMessage() + "); name one that you may read.");
        }
        if (procedures.isEmpty()) {
            throw new CannotProceed("\"" + place + "\" holds no procedure (a text ending in .procedure.txt or .procedure); name a text, or the"
                    + " folder that the last release was published into.");
        }
        for (Procedure procedure : procedures) {
            if (procedure.steps().isEmpty() && !procedure.problems().isEmpty()) {
                throw new CannotProceed("\"" + procedure.source().name() + "\" cannot be read as a procedure; name an unchanged text, as it"
                        + " was published.");
            }
        }
        return procedures;
    }
}

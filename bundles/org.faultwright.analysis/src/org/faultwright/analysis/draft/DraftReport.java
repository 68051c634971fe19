/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** A draft of the steps, in words, with the change of the text that brings it. */
public final class DraftReport {
    private DraftReport() {
    }

    /**
     * @param reader  reads a changed text with the libraries of the procedure
     * @param checker with every rule
     */
    public static ProposedChange of(Procedure procedure, Function<SourceText, Document> reader, Checker checker) {
        TriedDraft.Draft draft = TriedDraft.of(procedure, reader, checker);
        if (draft.text().isEmpty()) {
            return new ProposedChange("No draft of the steps is made.", draft.remarks(), Optional.empty());
        }
        SourceText source = procedure.source();
        Document drafted = reader.apply(new SourceText(source.name(), draft.text().get()));
        String time = drafted instanceof Procedure with ? TimeStudy.of(with).inAll().expected()
                .map(seconds -> " By the times that are stated, a case takes " + PrintedNumbers.minutes(seconds) + " on average.").orElse("") : "";
        return new ProposedChange("A draft of the steps, checked in full and without an error." + time, draft.remarks(),
                Optional.of(changing(source, Fix.inLinesAs(source.content(), draft.text().get()))));
    }

    /** The one stretch in which the texts differ. */
    private static Fix changing(SourceText source, String after) {
        String before = source.content();
        int shorter = Math.min(before.length(), after.length());
        int same = 0;
        while (same < shorter && before.charAt(same) == after.charAt(same)) {
            same++;
        }
        int tail = 0;
        while (tail < shorter - same && before.charAt(before.length() - 1 - tail) == after.charAt(after.length() - 1 - tail)) {
            tail++;
        }
        return new Fix("Draft the steps", List.of(new Fix.Edit(new SourceRange(source, same, before.length() - tail - same),
                after.substring(same, after.length() - tail))));
    }
}

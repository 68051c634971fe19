/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Fix;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** Adds entries to a list of what steps show and takes them out again, commas and all. */
final class ShowingText {
    private ShowingText() {
    }

    /** Behind the last entry of an example, or as its first; absent where its text is broken. */
    static Optional<Fix.Edit> adding(Example example, String entry) {
        if (!example.shows().isEmpty()) {
            return Optional.of(behind(example.shows(), entry));
        }
        int brace = example.at().text().indexOf('{', Math.max(0, example.title().at().end() - example.at().offset()));
        return brace < 0 ? Optional.empty() : Optional.of(new Fix.Edit(
                new SourceRange(example.at().source(), example.at().offset() + brace + 1, 0), "\n    " + entry));
    }

    /** Behind the last of these entries. */
    static Fix.Edit behind(List<Showing> entries, String entry) {
        SourceRange last = entries.get(entries.size() - 1).at();
        return new Fix.Edit(new SourceRange(last.source(), last.end(), 0), ", " + entry);
    }

    /** One of several entries, with the comma that parts it from the next or, if it is the last, from the one before. */
    static Fix.Edit removing(List<Showing> entries, SourceRange entry) {
        int place = 0;
        while (entries.get(place).at() != entry) {
            place++;
        }
        SourceText source = entry.source();
        int from = entry.offset();
        int to = entry.end();
        if (place + 1 < entries.size()) {
            to = entries.get(place + 1).at().offset();
        } else if (place > 0) {
            from = entries.get(place - 1).at().end();
        }
        return new Fix.Edit(new SourceRange(source, from, to - from), "");
    }
}

/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.ThingKind;

/** What is wrong between the libraries that a text uses, apart from each of them. */
final class UsedLibraries {
    private UsedLibraries() {
    }

    /** Two libraries that declare one name: which is meant depends on the order in which they are found. */
    static void clashes(Subject subject, Findings findings) {
        if (subject.document().uses().isEmpty()) {
            return;
        }
        Map<String, Library> first = new HashMap<>();
        for (Library library : subject.document().libraries()) {
            library.own().byKind().forEach((kind, declared) -> declared
                    .forEach(one -> clash(kind, one, library, first, subject, findings)));
        }
    }

    /** A library that comes to use itself. */
    static void circles(Subject subject, Findings findings) {
        if (subject.document() instanceof Library own && !own.uses().isEmpty()) {
            own.libraries().stream().filter(library -> uses(library, own.name())).findFirst().ifPresent(library -> findings.report(
                    place(library, subject), "The library \"" + own.name() + "\" uses itself by way of \"" + library.name() + "\".",
                    "Take what both need into a third library, and let both use that."));
        }
    }

    private static void clash(ThingKind kind, Declaration one, Library library, Map<String, Library> first, Subject subject, Findings findings) {
        if (one.name().text().isEmpty()) {
            return;
        }
        Library before = first.putIfAbsent(kind + " " + one.name(), library);
        boolean hidden = subject.document().own().byKind().get(kind).stream()
                .anyMatch(own -> own.name().text().equals(one.name().text()));
        if (before != null && before != library && !hidden) {
            findings.report(Severity.WARNING, place(library, subject), "The libraries \"" + before.name() + "\" and \"" + library.name() + "\" both declare the "
                    + kind.word() + " \"" + one.name() + "\"; the one of \"" + before.name() + "\" is meant here.",
                    "Give one of the two another name.");
        }
    }

    private static boolean uses(Library library, Name wanted) {
        return library.uses().stream().anyMatch(use -> use.text().equals(wanted.text()));
    }

    /** Where the text says that it uses the library; where that one is used by another, the first use. */
    private static SourceRange place(Library library, Subject subject) {
        List<Name> uses = subject.document().uses();
        return uses.stream().filter(use -> use.text().equals(library.name().text())).findFirst().orElse(uses.get(0)).at();
    }
}

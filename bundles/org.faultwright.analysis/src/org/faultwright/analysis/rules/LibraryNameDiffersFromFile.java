/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Library;

/** A library is looked up by the name of its file. */
public final class LibraryNameDiffersFromFile implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("library-name-differs-from-file", Severity.ERROR, Group.NAMES,
            "A library has another name than its file, so that nobody can use it.");
    private static final String ENDING = ".procedure";

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        if (!(subject.document() instanceof Library library) || library.name().text().isEmpty()) {
            return;
        }
        String file = fileName(library.source().name());
        String name = library.name().text();
        if (file.endsWith(ENDING) && !file.equals(name + ENDING)) {
            String stem = file.substring(0, file.length() - ENDING.length());
            Fix[] fixes = stem.matches("[\\p{L}_][\\p{L}\\p{N}_]*")
                    ? new Fix[] {Fix.replacing("Name the library " + stem, library.name().at(), stem)} : new Fix[0];
            findings.report(library.name().at(), "The library " + name + " stands in the file " + file + ".",
                    "Name the file " + name + ENDING + ", where \"uses " + name
                    + "\" looks for it, or name the library as its file.",
                    fixes);
        }
    }

    private static String fileName(String path) {
        return path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
    }
}
